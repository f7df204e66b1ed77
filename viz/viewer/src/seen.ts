// Which part each pixel shows: drawn once in numbers instead of colours.
import {
  Color,
  MeshBasicMaterial,
  type Object3D,
  type Scene,
  type WebGLRenderer,
  WebGLRenderTarget,
} from "three";
import type { Eye } from "./camera";
import type { PartView } from "./part";

/** A coarse picture of part numbers: 0 is nothing, n + 1 is part n; `cut` where it is a cut face. */
export interface Seen {
  width: number;
  height: number;
  /** Pixels of the page for one of these. */
  size: number;
  part: Uint16Array;
  cut: Uint8Array;
}

const MOST = 260_000;

/** Return what is seen. */
export function seen(renderer: WebGLRenderer, scene: Scene, eye: Eye, views: PartView[]): Seen {
  const size = Math.max(1, Math.ceil(Math.sqrt((eye.width * eye.height) / MOST)));
  const width = Math.max(1, Math.floor(eye.width / size));
  const height = Math.max(1, Math.floor(eye.height / size));
  const target = new WebGLRenderTarget(width, height, { samples: 0 });
  const restore = numbered(scene, views);
  const background = scene.background;
  scene.background = new Color(0);
  renderer.setRenderTarget(target);
  renderer.render(scene, eye.camera);
  const raw = new Uint8Array(4 * width * height);
  renderer.readRenderTargetPixels(target, 0, 0, width, height, raw);
  renderer.setRenderTarget(null);
  scene.background = background;
  restore();
  target.dispose();
  return read(raw, width, height, size);
}

function read(raw: Uint8Array, width: number, height: number, size: number): Seen {
  const part = new Uint16Array(width * height);
  const cut = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from = 4 * ((height - 1 - y) * width + x);
      part[y * width + x] = raw[from]! + 256 * raw[from + 2]!;
      cut[y * width + x] = raw[from + 1]! > 127 ? 1 : 0;
    }
  }
  return { width, height, size, part, cut };
}

/** A sheet is thinner than a pixel where it is cut: its heavy line stands for it. */
function thinLines(views: PartView[], kept: Set<Object3D>): (() => void)[] {
  return views.flatMap((view, number) => {
    if (!view.part.thin || !view.rim.visible) return [];
    kept.add(view.rim);
    const before = view.rim.material.color.clone();
    view.rim.material.color.copy(toneOf(number, true));
    return [() => view.rim.material.color.copy(before)];
  });
}

/** A part's number as a colour: red holds the low byte, blue the high one; green says cut face. */
function toneOf(number: number, cut: boolean): Color {
  const whole = number + 1;
  return new Color().setRGB((whole % 256) / 255, cut ? 1 : 0, Math.floor(whole / 256) / 255);
}

/** Paint parts in numbers, lines not at all; return how to undo it. */
function numbered(scene: Scene, views: PartView[]): () => void {
  const undo: (() => void)[] = [];
  const faces = new Set<Object3D>();
  views.forEach((view, number) => {
    if (view.show === "ghost") return;
    for (const item of [view.skin, view.cap, view.lid]) {
      faces.add(item);
      const before = item.material;
      const colour = toneOf(number, item === view.cap);
      const paint = new MeshBasicMaterial({ color: colour, side: before.side });
      paint.clippingPlanes = before.clippingPlanes;
      paint.polygonOffset = before.polygonOffset;
      paint.polygonOffsetFactor = before.polygonOffsetFactor;
      paint.polygonOffsetUnits = before.polygonOffsetUnits;
      (item as { material: unknown }).material = paint;
      undo.push(() => {
        (item as { material: unknown }).material = before;
        paint.dispose();
      });
    }
  });
  undo.push(...thinLines(views, faces));
  scene.traverse((item) => {
    const drawn = "isMesh" in item || "isLine" in item;
    if (!drawn || faces.has(item) || !item.visible) return;
    item.visible = false;
    undo.push(() => {
      item.visible = true;
    });
  });
  return () => {
    for (const step of undo) step();
  };
}
