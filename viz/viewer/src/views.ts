// The places to look from: whole, at the cut, at footing and drain, from below.
import { Vector3 } from "three";
import type { Eye, Insets } from "./camera";
import type { House } from "./house";
import type { PartView } from "./part";
import type { Plane } from "./slice";

export type ViewName = "whole" | "face" | "detail" | "below";

// Round the drain's place: how wide the picture from below is, and what of the floor a detail shows.
const BELOW_M = 1.5;
const INTO_HOUSE_M = 1.3;
const BESIDE_M = 0.25;
const NARROW = 760;
const OVER_M = 0.4;

/** Roles that hide the pipe from below. */
export const ROUND_THE_PIPE: ReadonlySet<string> = new Set([
  "drain stone",
  "wrap",
  "wall stone",
  "backfill",
  "grading",
  "pit stone",
]);

/** Stand at a named place. */
export function look(name: ViewName, house: House, eye: Eye, insets: Insets): void {
  if (name === "below" && house.model.low) {
    below(house, eye, insets);
    return;
  }
  const round = facing(house.plane);
  if (name === "whole" || round === null) {
    const from = round === null ? -120 : round - 28;
    const box = house.corners((view) => !view.part.earth);
    eye.fit(box, { round: from, down: 30 }, insets);
    return;
  }
  const plane = house.plane!;
  const into = eye.width < NARROW ? INTO_HOUSE_M / 2 : INTO_HOUSE_M;
  const flat = name === "detail" ? detail(house, into) : whole(house);
  const points = flat.map(([a, z]) => spot(plane, a, z));
  eye.fit(points, { round, down: 0 }, insets);
}

/** The direction of the plan a cut is looked at from, degrees. */
export function facing(plane: Plane | null): number | null {
  if (!plane) return null;
  return (Math.atan2(plane.normal[1], plane.normal[0]) * 180) / Math.PI;
}

type Flat = [number, number];

function corners(views: PartView[]): Flat[] {
  return views.flatMap((view) =>
    view.cut.flatMap(({ line }) => {
      const found: Flat[] = [];
      for (let i = 0; i < line.length; i += 2) found.push([line[i]!, line[i + 1]!]);
      return found;
    }),
  );
}

function whole(house: House): Flat[] {
  const work = house.views.filter((view) => !view.part.earth && view.cut.length);
  const found = corners(work);
  return found.length ? box(found, 0.3, 0.3, 0.3) : house.everything().map((p) => [p.x, p.z]);
}

/** The window at the cut's outermost drain: footing, drain, and the floor's layers beside. */
function detail(house: House, into: number): Flat[] {
  const cut = house.views.filter((view) => view.cut.length);
  const drains = cut.filter((view) => view.part.role === "drain stone");
  const beds = drains.flatMap((view) => view.cut.filter((loop) => loop.area > 0.01));
  const bed = beds.sort((a, b) => Math.min(...across(a.line)) - Math.min(...across(b.line)))[0];
  if (!bed) return whole(house);
  const xs = across(bed.line);
  const zs = bed.line.filter((_, i) => i % 2);
  const work = corners(cut.filter((view) => !view.part.earth)).map(([x]) => x);
  const inward = Math.max(...work) - Math.max(...xs) > Math.min(...xs) - Math.min(...work);
  const left = Math.min(...xs) - (inward ? BESIDE_M : into);
  const right = Math.max(...xs) + (inward ? into : BESIDE_M);
  const low = Math.min(...zs) - 0.12;
  const high = Math.max(...zs) + OVER_M;
  return [
    [left, low],
    [right, high],
  ];
}

function across(line: number[]): number[] {
  return line.filter((_, i) => i % 2 === 0);
}

function box(flat: Flat[], beside: number, under: number, over: number): Flat[] {
  const xs = flat.map(([x]) => x);
  const zs = flat.map(([, z]) => z);
  return [
    [Math.min(...xs) - beside, Math.min(...zs) - under],
    [Math.max(...xs) + beside, Math.max(...zs) + over],
  ];
}

function spot({ normal, at, u }: Plane, a: number, z: number): Vector3 {
  return new Vector3(at * normal[0] + a * u[0], at * normal[1] + a * u[1], z);
}

function below(house: House, eye: Eye, insets: Insets): void {
  const { at, away } = house.model.low!;
  const round = (Math.atan2(away[1], away[0]) * 180) / Math.PI + 24;
  const here = new Vector3(...at);
  const box = [-0.5, 0.5].flatMap((x) =>
    [-0.5, 0.5].map((y) => here.clone().add(new Vector3(x * BELOW_M, y * BELOW_M, 0))),
  );
  eye.fit(box, { round, down: -34 }, insets);
}
