// Hatches as pictures that repeat; what leaves a picture at one edge comes in at the other.
import {
  CanvasTexture,
  LinearMipmapLinearFilter,
  RepeatWrapping,
  SRGBColorSpace,
  type Texture,
} from "three";
import type { Look, Tile } from "./model";

const PIXELS = 512;
/** Pixels of the screen for a millimetre of paper. */
const PER_MM = 3.4;

/** Return a picture of a material's fill with its hatch, and nothing for a plain fill. */
export function painted(look: Look, tile: Tile | undefined): HTMLCanvasElement | null {
  if (!tile?.strokes.length) return null;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = PIXELS;
  const pen = canvas.getContext("2d")!;
  pen.fillStyle = look.fill;
  pen.fillRect(0, 0, PIXELS, PIXELS);
  pen.strokeStyle = look.ink;
  pen.lineCap = "round";
  pen.lineJoin = "round";
  const [wide, high] = tile.size;
  for (const [weight, line] of tile.strokes) {
    pen.lineWidth = (Math.max(weight * 1.25, 0.2) * PIXELS) / wide;
    for (const dx of shifts(line, 0, wide)) {
      for (const dy of shifts(line, 1, high)) stroke(pen, line, tile, dx, dy);
    }
  }
  return canvas;
}

/** By how much a stroke is drawn again beside the picture, because it reaches over an edge. */
function shifts(line: number[], axis: number, size: number): number[] {
  const values = line.filter((_, i) => i % 2 === axis);
  const found = [0];
  if (Math.min(...values) < 0.3) found.push(size);
  if (Math.max(...values) > size - 0.3) found.push(-size);
  return found;
}

function stroke(
  pen: CanvasRenderingContext2D,
  line: number[],
  { size }: Tile,
  dx: number,
  dy: number,
): void {
  pen.beginPath();
  for (let i = 0; i < line.length; i += 2) {
    const x = ((line[i]! + dx) * PIXELS) / size[0];
    const y = PIXELS - ((line[i + 1]! + dy) * PIXELS) / size[1];
    if (i) pen.lineTo(x, y);
    else pen.moveTo(x, y);
  }
  pen.stroke();
}

/** Return the same as a texture in metres of the cut; set its repeat by `repeatMetres`. */
export function hatched(look: Look, tile: Tile | undefined): Texture | null {
  const canvas = painted(look, tile);
  if (!canvas) return null;
  const texture = new CanvasTexture(canvas);
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.anisotropy = 4;
  return texture;
}

/** Metres of a cut for a millimetre of paper at a zoom, in steps, so that hatches do not swim. */
export function metresPerMm(metresPerPixel: number): number {
  return 2 ** Math.round(Math.log2(metresPerPixel * PER_MM));
}
