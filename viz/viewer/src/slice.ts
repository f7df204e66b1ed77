// A plane through a closed mesh: exact loops, their area, and triangles to fill them.
import { ShapeUtils, Vector2 } from "three";
import type { Mesh } from "./unpack";

/** A plane by its unit normal and distance from the origin, and two axes in it. */
export interface Plane {
  normal: readonly [number, number, number];
  at: number;
  u: readonly [number, number, number];
  v: readonly [number, number, number];
}

/** The upright plane that a viewer faces who looks against a direction of the plan. */
export function upright(nx: number, ny: number, at: number): Plane {
  return { normal: [nx, ny, 0], at, u: [-ny, nx, 0], v: [0, 0, 1] };
}

/** The level plane seen from above. */
export function level(at: number): Plane {
  return { normal: [0, 0, 1], at, u: [1, 0, 0], v: [0, 1, 0] };
}

/** One closed line in the plane: u, v, u, v, ...; area is negative for a hole. */
export interface Loop {
  line: number[];
  area: number;
}

const IN_PLANE = 1e-9;

/** Return the loops a plane leaves in a mesh. Points in the plane count as behind it. */
export function slice(mesh: Mesh, plane: Plane): Loop[] {
  const { points, faces } = mesh;
  const [nx, ny, nz] = plane.normal;
  const count = points.length / 3;
  const away = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    away[i] = plane.at - points[3 * i]! * nx - points[3 * i + 1]! * ny - points[3 * i + 2]! * nz;
  }
  const leaving = new Map<number, number>();
  const entering: number[] = [];
  const ends: number[] = [];
  for (let i = 0; i < faces.length; i += 3) {
    crossing(faces, i, away, count, leaving, entering, ends);
  }
  return chained(points, away, plane, leaving, entering, ends);
}

/** Note the two edges by which the plane passes a face: where it leaves, where it enters. */
function crossing(
  faces: Uint32Array,
  i: number,
  away: Float64Array,
  count: number,
  leaving: Map<number, number>,
  entering: number[],
  ends: number[],
): void {
  const a = faces[i]!;
  const b = faces[i + 1]!;
  const c = faces[i + 2]!;
  const fa = away[a]! >= -IN_PLANE;
  const fb = away[b]! >= -IN_PLANE;
  const fc = away[c]! >= -IN_PLANE;
  if (fa === fb && fb === fc) return;
  const number = entering.length;
  let from = 0;
  let to = 0;
  let enter = 0;
  for (const [p, q, fp, fq] of [
    [a, b, fa, fb],
    [b, c, fb, fc],
    [c, a, fc, fa],
  ] as const) {
    if (fp && !fq) [from, to] = [p, q];
    else if (!fp && fq) enter = q * count + p;
  }
  leaving.set(from * count + to, number);
  entering.push(enter);
  ends.push(from, to);
}

function chained(
  points: Float64Array,
  away: Float64Array,
  plane: Plane,
  leaving: Map<number, number>,
  entering: number[],
  ends: number[],
): Loop[] {
  const seen = new Uint8Array(entering.length);
  const loops: Loop[] = [];
  for (let first = 0; first < entering.length; first++) {
    if (seen[first]) continue;
    const line: number[] = [];
    for (let here = first; !seen[here]; here = leaving.get(entering[here]!) ?? first) {
      seen[here] = 1;
      line.push(...placed(points, away, plane, ends[2 * here]!, ends[2 * here + 1]!));
    }
    // Met in the order of the faces, outer loops run clockwise to the viewer.
    const area = -areaOf(line);
    if (Math.abs(area) > 1e-12) loops.push({ line, area });
  }
  return loops;
}

function placed(
  points: Float64Array,
  away: Float64Array,
  { u, v }: Plane,
  i: number,
  j: number,
): [number, number] {
  const share = away[i]! / (away[i]! - away[j]!);
  let a = 0;
  let b = 0;
  for (let k = 0; k < 3; k++) {
    const p = points[3 * i + k]!;
    const value = p + share * (points[3 * j + k]! - p);
    a += value * u[k]!;
    b += value * v[k]!;
  }
  return [a, b];
}

function areaOf(line: number[]): number {
  let twice = 0;
  const n = line.length;
  const u0 = line[0]!;
  const v0 = line[1]!;
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n;
    twice += (line[i]! - u0) * (line[j + 1]! - v0) - (line[j]! - u0) * (line[i + 1]! - v0);
  }
  return twice / 2;
}

/** The area inside loops, square metres. */
export function areaInside(loops: Loop[]): number {
  return loops.reduce((sum, loop) => sum + loop.area, 0);
}

/** Triangles that fill loops: u, v of three corners each. */
export function filled(loops: Loop[]): number[] {
  const outer = loops.filter((loop) => loop.area > 0).sort((a, b) => a.area - b.area);
  const holes = new Map<Loop, Loop[]>(outer.map((loop) => [loop, []]));
  for (const hole of loops.filter((loop) => loop.area < 0)) {
    const around = outer.find((loop) => loop.area > -hole.area && holds(loop.line, hole.line));
    if (around) holes.get(around)!.push(hole);
  }
  return outer.flatMap((loop) => triangles(loop, holes.get(loop)!));
}

function triangles(outer: Loop, holes: Loop[]): number[] {
  const rings = [outer, ...holes].map((loop) => vectors(loop.line));
  const all = rings.flat();
  const found = ShapeUtils.triangulateShape(rings[0]!, rings.slice(1));
  return found.flatMap((corners) => corners.flatMap((n) => [all[n]!.x, all[n]!.y]));
}

function vectors(line: number[]): Vector2[] {
  const found: Vector2[] = [];
  for (let i = 0; i < line.length; i += 2) found.push(new Vector2(line[i], line[i + 1]));
  return found;
}

/** Whether most corners of a hole lie inside a loop; corners on its line may say either. */
function holds(loop: number[], hole: number[]): boolean {
  let inside = 0;
  for (let i = 0; i < hole.length; i += 2)
    inside += contains(loop, hole[i]!, hole[i + 1]!) ? 1 : -1;
  return inside > 0;
}

function contains(line: number[], x: number, y: number): boolean {
  let odd = false;
  const n = line.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    const above = line[i + 1]! > y;
    if (above === line[j + 1]! > y) continue;
    const across = (line[j]! - line[i]!) * ((y - line[i + 1]!) / (line[j + 1]! - line[i + 1]!));
    if (x < line[i]! + across) odd = !odd;
  }
  return odd;
}
