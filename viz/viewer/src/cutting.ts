// Directions a cut may be moved along, and the plane it makes.
import type { Model, NamedCut, Pair } from "./model";
import { type Plane, upright } from "./slice";
import type { CutState } from "./state";

/** A way to move a cut: its unit direction on the plan, where it counts from, how far it goes. */
export interface Direction {
  key: string;
  way: Pair;
  zero: number;
  low: number;
  high: number;
}

export type Box = { low: [number, number, number]; high: [number, number, number] };

/** Return every direction a model's cuts may take. */
export function directions(model: Model, box: Box): Direction[] {
  const found = [direction("x", [1, 0], 0, box), direction("y", [0, 1], 0, box)];
  model.sides.forEach((side, number) => {
    const way = unit(side.start, side.end);
    found.push(direction(`side ${number}`, way, dot(side.start, way), box));
  });
  return found;
}

function direction(key: string, way: Pair, zero: number, box: Box): Direction {
  const reach = [box.low, box.high].flatMap(([x]) =>
    [box.low, box.high].map(([, y]) => x * way[0] + y * way[1]),
  );
  return { key, way, zero, low: Math.min(...reach) - zero, high: Math.max(...reach) - zero };
}

/** Return the plane of a cut; its normal looks at the viewer, what lies before it is cut away. */
export function planeOf(cut: CutState, choices: Direction[], box: Box): Plane | null {
  const found = choices.find((choice) => choice.key === cut.along);
  if (!found) return null;
  const [x, y] = turned(found.way, cut.turn);
  const sign = cut.flip ? -1 : 1;
  // A turned cut turns about the place on the middle line at which it stood.
  const middle: Pair = [(box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2];
  const back = cut.at + found.zero - dot(middle, found.way);
  const through: Pair = [middle[0] + back * found.way[0], middle[1] + back * found.way[1]];
  return upright(sign * x, sign * y, sign * dot(through, [x, y]));
}

/** Return the state that shows a named cut as its drawing does, its start on the left hand. */
export function asNamed(cut: NamedCut, choices: Direction[], box: Box): CutState {
  const [ax, ay] = unit(cut.start, cut.end);
  const normal: Pair = [ay, -ax];
  const straight = choices.find((c) => Math.abs(dot(c.way, normal)) > 1 - 1e-9);
  const nearest = [...choices].sort(
    (a, b) => Math.abs(dot(b.way, normal)) - Math.abs(dot(a.way, normal)),
  );
  const base = straight ?? nearest[0]!;
  const along = dot(base.way, normal);
  const flip = along < 0;
  const sign = flip ? -1 : 1;
  const turn = straight
    ? 0
    : (Math.atan2(cross(base.way, normal) * sign, along * sign) * 180) / Math.PI;
  const [x, y] = turned(base.way, turn);
  const middle: Pair = [(box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2];
  const apart = dot(cut.start, [x, y]) - dot(middle, [x, y]);
  // Along the base direction from the middle, so that the turned plane passes the cut's start.
  const back = apart / dot(base.way, [x, y]);
  return { along: base.key, at: dot(middle, base.way) + back - base.zero, turn, flip };
}

function turned([x, y]: Pair, degrees: number): Pair {
  if (!degrees) return [x, y];
  const a = (degrees * Math.PI) / 180;
  return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a[0]! * b[0]! + a[1]! * b[1]!;
}

function cross(a: Pair, b: Pair): number {
  return a[0] * b[1] - a[1] * b[0];
}

function unit(a: Pair, b: Pair): Pair {
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
}
