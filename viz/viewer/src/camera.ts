// A parallel camera that stands round a target: where it looks from, and what of it fits.
import { OrthographicCamera, Vector3 } from "three";

/** Where the viewer stands: degrees round (from +x, counter-clockwise) and down; zoom. */
export interface Stand {
  round: number;
  down: number;
  target: Vector3;
  metresPerPixel: number;
}

export interface Insets {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const AWAY = 120;
const NEAREST = 0.0001;
const FARTHEST = 0.5;

/** The camera; `width` and `height` of the picture in pixels of the page. */
export class Eye {
  readonly camera = new OrthographicCamera(-1, 1, 1, -1, 1, 2 * AWAY);
  width = 1;
  height = 1;
  constructor(public stand: Stand) {
    this.camera.up.set(0, 0, 1);
  }

  /** Stand somewhere, within bounds. */
  put(change: Partial<Stand>): void {
    const next = { ...this.stand, ...change };
    next.down = Math.min(89.9, Math.max(-89.9, next.down));
    next.metresPerPixel = Math.min(FARTHEST, Math.max(NEAREST, next.metresPerPixel));
    this.stand = next;
    this.update();
  }

  /** Bring the camera up to date with stand and size. */
  update(): void {
    const { target, metresPerPixel } = this.stand;
    const w = (this.width * metresPerPixel) / 2;
    const h = (this.height * metresPerPixel) / 2;
    Object.assign(this.camera, { left: -w, right: w, top: h, bottom: -h });
    this.camera.position.copy(target).addScaledVector(this.back(), AWAY);
    this.camera.lookAt(target);
    this.camera.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
  }

  /** The unit direction from the target to the viewer. */
  back(): Vector3 {
    const a = (this.stand.round * Math.PI) / 180;
    const d = (this.stand.down * Math.PI) / 180;
    return new Vector3(Math.cos(a) * Math.cos(d), Math.sin(a) * Math.cos(d), Math.sin(d));
  }

  /** The unit directions to the right and up on the picture. */
  axes(): [Vector3, Vector3] {
    const a = (this.stand.round * Math.PI) / 180;
    const right = new Vector3(-Math.sin(a), Math.cos(a), 0);
    return [right, new Vector3().crossVectors(this.back(), right)];
  }

  /** Whether the viewer looks level. */
  get facing(): boolean {
    return Math.abs(this.stand.down) < 0.5;
  }

  /** Pixels from the picture's upper left corner. */
  pixel(point: Vector3): [number, number] {
    const [right, up] = this.axes();
    const from = point.clone().sub(this.stand.target);
    const scale = 1 / this.stand.metresPerPixel;
    return [this.width / 2 + from.dot(right) * scale, this.height / 2 - from.dot(up) * scale];
  }

  /** Move the target so that the picture moves by so many pixels. */
  pan(dx: number, dy: number): void {
    const [right, up] = this.axes();
    const { target, metresPerPixel } = this.stand;
    const moved = target.clone().addScaledVector(right, -dx * metresPerPixel);
    this.put({ target: moved.addScaledVector(up, dy * metresPerPixel) });
  }

  /** Zoom by a factor; what lies at a pixel stays there. */
  zoom(factor: number, x = this.width / 2, y = this.height / 2): void {
    const before = this.stand.metresPerPixel;
    this.put({ metresPerPixel: before * factor });
    const moved = this.stand.metresPerPixel / before - 1;
    this.pan((x - this.width / 2) * moved, (y - this.height / 2) * moved);
  }

  /** Stand so that points fill the picture within insets. */
  fit(points: Vector3[], stand: { round: number; down: number }, insets: Insets): void {
    this.put(stand);
    const [right, up] = this.axes();
    const xs = points.map((p) => p.dot(right));
    const ys = points.map((p) => p.dot(up));
    const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
    const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
    const wide = Math.max(60, this.width - insets.left - insets.right);
    const tall = Math.max(60, this.height - insets.top - insets.bottom);
    const metresPerPixel = Math.max((x1 - x0) / wide, (y1 - y0) / tall, NEAREST);
    const depth = points.reduce((sum, p) => sum + p.dot(this.back()), 0) / points.length;
    const x = (x0 + x1) / 2 + ((insets.right - insets.left) / 2) * metresPerPixel;
    const y = (y0 + y1) / 2 + ((insets.top - insets.bottom) / 2) * metresPerPixel;
    const target = right
      .multiplyScalar(x)
      .addScaledVector(up, y)
      .addScaledVector(this.back(), depth);
    this.put({ target, metresPerPixel });
  }
}
