// The level tape: every level against TOF, standing beside the picture where the viewer looks level.
import { Vector3 } from "three";
import type { Eye } from "./camera";
import { el, svg } from "./dom";
import type { Level } from "./model";
import { spread } from "./place";
import type { Speech } from "./words";

const ROW = 17;
const WIDE = 250;
const NARROW = 156;

/** Pixels the tape takes. */
export function tapeWidth(width: number): number {
  return width < 760 ? NARROW : WIDE;
}

/** Draws the tape. */
export class Tape {
  readonly over = el("div", { class: "tape" });
  readonly lines = svg("svg", { class: "tape-lines", "aria-hidden": "true" });

  constructor(
    private readonly levels: Level[],
    private readonly speech: Speech,
  ) {}

  /** Take the tape away. */
  clear(): void {
    this.over.replaceChildren();
    this.lines.replaceChildren();
  }

  /** Stand beside the picture, each level at its height. */
  show(eye: Eye): void {
    this.clear();
    const wide = tapeWidth(eye.width);
    const ground = el("p", { class: "ground" });
    ground.style.width = `${wide}px`;
    this.over.append(ground);
    const rows = this.levels
      .map((level) => ({ level, y: this.height(eye, level.z) }))
      .filter(({ y }) => y > 8 && y < eye.height - 8)
      .sort((a, b) => Number(b.level.main) - Number(a.level.main))
      .slice(0, Math.floor((eye.height - 16) / ROW))
      .sort((a, b) => a.y - b.y);
    const places = spread(
      rows.map(({ y }) => y),
      ROW,
      12,
      eye.height - 12,
    );
    rows.forEach(({ level, y }, n) => {
      this.row(level, y, places[n]!, wide, eye.width);
    });
  }

  private height(eye: Eye, z: number): number {
    const { target } = eye.stand;
    return eye.pixel(new Vector3(target.x, target.y, z))[1];
  }

  private row(level: Level, y: number, at: number, wide: number, right: number): void {
    const name = this.speech.of(level.name);
    const made = el(
      "div",
      { class: level.main ? "main" : "" },
      el("b", {}, level.text),
      ` ${name}`,
    );
    Object.assign(made.style, { top: `${at - ROW / 2}px`, width: `${wide - 22}px` });
    made.title = name;
    this.over.append(made);
    const line = `${wide - 20},${at} ${wide - 14},${at} ${wide - 4},${y} ${wide + 6},${y}`;
    this.lines.append(svg("polyline", { points: line }));
    if (level.main) {
      this.lines.append(svg("line", { x1: wide + 6, x2: right, y1: y, y2: y, class: "across" }));
    }
  }
}
