// The picture: scene, camera, labels and tape kept in step with the state.
import { Vector3, WebGLRenderer } from "three";
import { Eye, type Insets } from "./camera";
import { type Hand, keys, pointers } from "./hand";
import { House } from "./house";
import { columnWidth, Labels } from "./labels";
import type { Model } from "./model";
import { type Seen, seen } from "./seen";
import type { State, Store } from "./state";
import { Tape, tapeWidth } from "./tape";
import { look, ROUND_THE_PIPE, type ViewName } from "./views";
import type { Speech } from "./words";

const REST = 130;
const GLIDE = 280;

/** What the rest of the page may ask of the picture. */
export class Viewer implements Hand {
  house: House;
  labels: Labels;
  tape: Tape;
  seen: Seen | null = null;
  readonly eye = new Eye({ round: -120, down: 30, target: new Vector3(), metresPerPixel: 0.02 });
  readonly renderer: WebGLRenderer;
  /** Called when the picture has come to rest. */
  onRest: () => void = () => {};
  private view: ViewName | null = "whole";
  private waiting = 0;
  private resting = 0;

  constructor(
    readonly canvas: HTMLCanvasElement,
    readonly frame: HTMLElement,
    private model: Model,
    private readonly store: Store,
    private readonly speech: Speech,
  ) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
    this.renderer.localClippingEnabled = true;
    this.house = new House(model);
    this.labels = this.newLabels();
    this.tape = new Tape(model.levels, speech);
    this.hang();
    pointers(canvas, this.eye, this);
    keys(canvas, this.eye, this);
    store.listen((changed) => this.changed(changed));
    // A phone takes the graphics away from a page that is out of sight, and gives them back.
    canvas.addEventListener("webglcontextrestored", () => this.draw());
    new ResizeObserver(() => this.resized()).observe(frame);
  }

  private newLabels(): Labels {
    return new Labels(this.model.parts, this.speech, (id) => this.pick(id));
  }

  private hang(): void {
    this.frame.querySelectorAll(".labels, .leaders, .tape, .tape-lines").forEach((e) => {
      e.remove();
    });
    const { labels, tape } = this;
    this.frame.append(tape.over, tape.lines, labels.over, labels.leaders);
  }

  /** Show another state of the model; the camera stays where it is. */
  replace(model: Model): void {
    this.model = model;
    this.house = new House(model, this.house);
    this.labels = this.newLabels();
    this.tape = new Tape(model.levels, this.speech);
    this.hang();
    this.house.update(this.store.state);
    this.draw();
  }

  /** Draw for the first time. */
  start(): void {
    this.house.update(this.store.state);
    this.measure();
    this.stand("whole", false);
    this.paintNow();
    // When the first picture stood, milliseconds after the page was asked for.
    this.frame.dataset.first = String(Math.round(performance.now()));
    this.settle();
  }

  /** Stand at a named place. */
  stand(name: ViewName, glide = true): void {
    const before = { ...this.eye.stand };
    const state = this.store.state;
    const around = name === "below" ? this.around() : new Set<string>();
    if (around.size || state.peeled.size) this.store.set({ peeled: around });
    look(name, this.house, this.eye, this.insets(name));
    this.view = name;
    if (glide) this.glide(before);
    this.draw();
  }

  /** What is taken off to see the pipe from below. */
  private around(): Set<string> {
    const hiding = this.model.parts.filter((part) => ROUND_THE_PIPE.has(part.role));
    return new Set(hiding.map((part) => part.id));
  }

  private glide(before: Eye["stand"]): void {
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return;
    const after = { ...this.eye.stand };
    const turn = ((((after.round - before.round) % 360) + 540) % 360) - 180;
    const began = performance.now();
    let frames = 0;
    const step = () => {
      const spent = performance.now() - began;
      // Where drawing is slow, gliding would only keep people waiting.
      const slow = frames > 0 && spent / frames > 70;
      const share = slow ? 1 : Math.min(1, spent / GLIDE);
      const s = share * share * (3 - 2 * share);
      this.eye.put({
        round: after.round - turn * (1 - s),
        down: before.down + (after.down - before.down) * s,
        target: before.target.clone().lerp(after.target, s),
        metresPerPixel: before.metresPerPixel * (after.metresPerPixel / before.metresPerPixel) ** s,
      });
      frames += 1;
      this.paintNow();
      if (share < 1) requestAnimationFrame(step);
      else this.moved(true);
    };
    step();
  }

  private insets(name: ViewName): Insets {
    const { labels, tape } = this.store.state;
    const beside = labels ? columnWidth(this.eye.width) : 16;
    const level = name === "face" || name === "detail";
    if (tape && level) {
      return { left: tapeWidth(this.eye.width) + 8, right: beside, top: 18, bottom: 22 };
    }
    // Seen from a corner a house leaves the picture's corners free for labels.
    const side = level ? beside : beside * 0.8;
    return { left: side, right: side, top: 18, bottom: 22 };
  }

  private changed(changed: ReadonlySet<keyof State>): void {
    this.speech.language = this.store.state.language;
    const shape = ["cut", "explode", "stage", "later", "hidden", "peeled", "ground"] as const;
    if (shape.some((key) => changed.has(key))) this.house.update(this.store.state, changed);
    this.draw();
  }

  /** Draw soon. */
  draw(): void {
    if (!this.waiting) {
      this.waiting = requestAnimationFrame(() => {
        this.waiting = 0;
        this.paintNow();
      });
    }
    this.frame.dataset.moving = "true";
    window.clearTimeout(this.resting);
    this.resting = window.setTimeout(() => this.settle(), REST);
  }

  /** Draw now. */
  paintNow(): void {
    const { eye } = this;
    eye.update();
    const [right] = eye.axes();
    this.house.paint(this.store.state, eye.stand.metresPerPixel, eye.back(), right);
    this.renderer.render(this.house.scene, eye.camera);
    if (eye.facing && this.store.state.tape) this.tape.show(eye);
    else this.tape.clear();
  }

  /** The picture rests: look what is seen, place the labels. */
  private settle(): void {
    this.seen = seen(this.renderer, this.house.scene, this.eye, this.house.views);
    const { state } = this.store;
    const tape = this.eye.facing && state.tape ? tapeWidth(this.eye.width) : 0;
    const size = { width: this.eye.width, height: this.eye.height, left: tape };
    if (state.labels) this.labels.show(this.seen, size, state.picked);
    else this.labels.clear();
    this.frame.dataset.moving = "false";
    this.frame.dataset.drawn = String(this.house.views.filter((v) => v.show === "solid").length);
    this.onRest();
  }

  private measure(): void {
    const { width, height } = this.frame.getBoundingClientRect();
    // On paper the picture is not laid out; an image of it stands there.
    if (width < 2 || height < 2) return;
    this.eye.width = Math.max(1, width);
    this.eye.height = Math.max(1, height);
    this.renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    this.renderer.setSize(this.eye.width, this.eye.height, false);
  }

  private resized(): void {
    const before = this.eye.width;
    this.measure();
    if (this.view) look(this.view, this.house, this.eye, this.insets(this.view));
    else
      this.eye.put({ metresPerPixel: (this.eye.stand.metresPerPixel * before) / this.eye.width });
    this.draw();
  }

  /** The part at a pixel, by its id. */
  at(x: number, y: number): string | null {
    if (!this.seen) return null;
    const { size, width, part } = this.seen;
    const number = part[Math.floor(y / size) * width + Math.floor(x / size)];
    return number ? (this.model.parts[number - 1]?.id ?? null) : null;
  }

  private pick(id: string): void {
    this.store.set({ picked: this.store.state.picked === id ? null : id });
  }

  moved(rested = false): void {
    if (!rested) this.view = null;
    this.draw();
  }

  tapped(x: number, y: number): void {
    this.store.set({ picked: this.at(x, y) });
  }

  left(): void {
    this.store.set({ picked: null });
  }

  home(): void {
    this.stand("whole");
  }

  face(): void {
    this.stand("face");
  }
}
