// Hatches as pictures that repeat; scattered ones by mirroring, so that strokes run on.
import {
  CanvasTexture,
  LinearMipmapLinearFilter,
  MirroredRepeatWrapping,
  RepeatWrapping,
  SRGBColorSpace,
  type Texture,
} from "three";
import type { Look, Tile } from "./model";

const PIXELS = 256;
/** Pixels of the screen for a millimetre of paper. */
export const PER_MM = 3.4;

/** Return a material's fill with its hatch; one repeat is `tile.size` millimetres of paper. */
export function hatched(look: Look, tile: Tile | undefined): Texture | null {
  if (!tile?.strokes.length) return null;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = PIXELS;
  const pen = canvas.getContext("2d")!;
  const scale = PIXELS / tile.size;
  pen.fillStyle = look.fill;
  pen.fillRect(0, 0, PIXELS, PIXELS);
  pen.strokeStyle = look.ink;
  pen.lineCap = "round";
  pen.lineJoin = "round";
  for (const [weight, line] of tile.strokes) {
    pen.lineWidth = Math.max(weight * 1.25, 0.2) * scale;
    pen.beginPath();
    for (let i = 0; i < line.length; i += 2) {
      const x = line[i]! * scale;
      const y = PIXELS - line[i + 1]! * scale;
      if (i) pen.lineTo(x, y);
      else pen.moveTo(x, y);
    }
    pen.stroke();
  }
  const texture = new CanvasTexture(canvas);
  texture.wrapS = texture.wrapT = tile.mirror ? MirroredRepeatWrapping : RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.anisotropy = 4;
  return texture;
}

/** Metres one repeat of a hatch covers at a zoom, in steps, so that it does not swim. */
export function repeatMetres(metresPerPixel: number, tile: Tile): number {
  const metresPerMm = 2 ** Math.round(Math.log2(metresPerPixel * PER_MM));
  return tile.size * metresPerMm;
}
