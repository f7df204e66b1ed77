// The crisp edges of a closed mesh: where two faces meet at an angle.
import type { Mesh } from "./unpack";

const SHARP = Math.cos((28 * Math.PI) / 180);
// Shorter ones, as of drilled holes, are drawn close by alone.
const SHORT = 0.03;

export interface Edges {
  long: Float32Array;
  short: Float32Array;
}

/** Return the crisp edges as pairs of points about a middle, the short ones apart. */
export function crisp(mesh: Mesh, middle: readonly number[]): Edges {
  const normals = faceNormals(mesh);
  const { points, faces } = mesh;
  const count = points.length / 3;
  const seen = new Map<number, number>();
  const long: number[] = [];
  const short: number[] = [];
  for (let i = 0; i < faces.length; i++) {
    const a = faces[i]!;
    const b = faces[i % 3 === 2 ? i - 2 : i + 1]!;
    const key = a < b ? a * count + b : b * count + a;
    const other = seen.get(key);
    if (other === undefined) {
      seen.set(key, Math.floor(i / 3));
      continue;
    }
    seen.delete(key);
    if (dot(normals, other, Math.floor(i / 3)) > SHARP) continue;
    const ends = [a, b].flatMap((n) => [0, 1, 2].map((k) => points[3 * n + k]! - middle[k]!));
    (lengthOf(ends) < SHORT ? short : long).push(...ends);
  }
  return { long: new Float32Array(long), short: new Float32Array(short) };
}

function lengthOf(ends: number[]): number {
  return Math.hypot(ends[3]! - ends[0]!, ends[4]! - ends[1]!, ends[5]! - ends[2]!);
}

function dot(normals: Float32Array, one: number, other: number): number {
  const i = 3 * one;
  const j = 3 * other;
  return (
    normals[i]! * normals[j]! +
    normals[i + 1]! * normals[j + 1]! +
    normals[i + 2]! * normals[j + 2]!
  );
}

function faceNormals({ points, faces }: Mesh): Float32Array {
  const normals = new Float32Array(faces.length);
  for (let i = 0; i < faces.length; i += 3) {
    const a = 3 * faces[i]!;
    const b = 3 * faces[i + 1]!;
    const c = 3 * faces[i + 2]!;
    const ux = points[b]! - points[a]!;
    const uy = points[b + 1]! - points[a + 1]!;
    const uz = points[b + 2]! - points[a + 2]!;
    const vx = points[c]! - points[a]!;
    const vy = points[c + 1]! - points[a + 1]!;
    const vz = points[c + 2]! - points[a + 2]!;
    const x = uy * vz - uz * vy;
    const y = uz * vx - ux * vz;
    const z = ux * vy - uy * vx;
    const size = Math.hypot(x, y, z) || 1;
    normals.set([x / size, y / size, z / size], i);
  }
  return normals;
}
