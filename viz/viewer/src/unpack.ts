// Reads a packed mesh: base64, deflated, columns of differences as variable-length numbers.
import { unzlibSync } from "fflate";
import type { MeshHead } from "./model";

/** A closed mesh: corners x, y, z in metres, three corners a face, outward. */
export interface Mesh {
  points: Float64Array;
  faces: Uint32Array;
}

/** Return a part's mesh from its packed shape. */
export function unpacked(head: MeshHead, packed: string): Mesh {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const reader = new Reader(unzlibSync(bytes));
  const { vertices, faces, low, step } = head;
  const points = new Float64Array(3 * vertices);
  for (let axis = 0; axis < 3; axis++) {
    let value = 0;
    for (let i = 0; i < vertices; i++) {
      value += reader.next();
      points[3 * i + axis] = low[axis]! + value * step[axis]!;
    }
  }
  const corners = new Uint32Array(3 * faces);
  let corner = 0;
  for (let i = 0; i < corners.length; i++) {
    corner += reader.next();
    corners[i] = corner;
  }
  return { points, faces: corners };
}

class Reader {
  private at = 0;
  constructor(private readonly bytes: Uint8Array) {}

  /** The next signed number: seven bits a byte, the lowest bit is the sign. */
  next(): number {
    let value = 0;
    let scale = 1;
    for (;;) {
      const byte = this.bytes[this.at++]!;
      value += (byte & 127) * scale;
      if (byte < 128) break;
      scale *= 128;
    }
    return value % 2 ? -(value + 1) / 2 : value / 2;
  }
}
