// Labels in columns beside the picture, with leaders; on a narrow picture numbers and a key.
import { anchors, type Found } from "./anchors";
import { el, svg } from "./dom";
import type { Part } from "./model";
import { column, type Placed } from "./place";
import type { Seen } from "./seen";
import type { Speech } from "./words";

export interface Frame {
  width: number;
  height: number;
  /** Pixels kept free at the left, for the level tape. */
  left: number;
}

const ROW = 52;
const WIDE = 190;
const LONGEST = 27;
const NARROW_ROW = 25;
const NARROW = 26;
const NARROWEST_WIDE = 760;
const ELBOW = 16;

/** Whether a picture of a width is labelled by numbers. */
export function numbered(width: number): boolean {
  return width < NARROWEST_WIDE;
}

/** Pixels that the labels take at either side. */
export function columnWidth(width: number): number {
  return numbered(width) ? NARROW + 14 : WIDE + 34;
}

/** A long name without what follows its first comma: figures stand in the line below. */
function short(name: string): string {
  return name.length > LONGEST ? name.split(",")[0]! : name;
}

/** Draws the labels over the picture. */
export class Labels {
  readonly over = el("div", { class: "labels" });
  readonly key = el("ol", { class: "key" });
  readonly leaders = svg("svg", { class: "leaders", "aria-hidden": "true" });

  constructor(
    private readonly parts: Part[],
    private readonly speech: Speech,
    private readonly pick: (id: string) => void,
  ) {}

  /** Take all labels away. */
  clear(): void {
    this.over.replaceChildren();
    this.key.replaceChildren();
    this.leaders.replaceChildren();
  }

  /** Label what is seen. */
  show(seen: Seen, frame: Frame, picked: string | null): void {
    this.clear();
    const few = numbered(frame.width);
    const beside = few ? NARROW + 8 + ELBOW : WIDE + 8 + ELBOW;
    const within = [frame.left || beside, frame.width - beside - 4] as const;
    // Beside the tape there is room for one column.
    const sides = frame.left ? (["right"] as const) : (["left", "right"] as const);
    const found = this.once(anchors(seen, this.parts.length, sides.length === 1, within));
    const row = few ? NARROW_ROW : ROW;
    const reach = few ? NARROW : WIDE;
    const edges = { left: frame.left + reach + 8, right: frame.width - reach - 8 };
    if (frame.left) {
      const ground = el("div", { class: "ground" });
      ground.style.width = `${beside}px`;
      this.over.append(ground);
    }
    let number = 0;
    for (const side of sides) {
      const mine = found.filter((item) => item.side === side);
      const edge = edges[side] + (side === "left" ? ELBOW : -ELBOW);
      const placed = column(mine, edge, row, 6, frame.height - 6);
      for (const place of placed) {
        number += 1;
        this.leader(place, edges[side], edge);
        const at = side === "left" ? frame.left + 6 : frame.width - reach - 6;
        if (few) this.numeral(number, place, at, picked);
        else this.label(place, at, picked);
      }
    }
    this.key.hidden = !few;
  }

  /** One label for all that is called the same. */
  private once(found: Found[]): Found[] {
    const seen = new Set<string>();
    return found.filter(({ part }) => {
      const { name, size } = this.parts[part]!;
      const words = `${this.speech.of(name)}|${this.speech.of(size)}`;
      return !seen.has(words) && seen.add(words);
    });
  }

  private leader({ item, y }: Placed<Found>, from: number, edge: number): void {
    const line = `${from},${y} ${edge},${y} ${item.x},${item.y}`;
    this.leaders.append(
      svg("polyline", { points: line, class: "halo" }),
      svg("polyline", { points: line }),
      svg("circle", { cx: item.x, cy: item.y, r: 3 }),
    );
  }

  private label({ item, y }: Placed<Found>, x: number, picked: string | null): void {
    const part = this.parts[item.part]!;
    const made = this.button(part, `label ${item.side}`, picked);
    made.append(
      el("b", {}, short(this.speech.of(part.name))),
      el("small", {}, this.speech.of(part.size)),
    );
    Object.assign(made.style, { left: `${x}px`, top: `${y - ROW / 2 + 1}px`, width: `${WIDE}px` });
    made.style.height = `${ROW - 2}px`;
    this.over.append(made);
  }

  private numeral(
    number: number,
    { item, y }: Placed<Found>,
    x: number,
    picked: string | null,
  ): void {
    const part = this.parts[item.part]!;
    const words = this.speech.of(part.name);
    const made = this.button(part, "label numeral", picked);
    made.setAttribute("aria-label", `${number}: ${words}`);
    made.append(String(number));
    Object.assign(made.style, { left: `${x}px`, top: `${y - 12}px` });
    this.over.append(made);
    const small = this.speech.of(part.size);
    this.key.append(
      el(
        "li",
        {},
        el("b", {}, String(number)),
        ` ${words}`,
        small ? el("small", {}, ` ${small}`) : null,
      ),
    );
  }

  private button(part: Part, name: string, picked: string | null): HTMLButtonElement {
    const made = el("button", { type: "button", class: name, onclick: () => this.pick(part.id) });
    made.setAttribute("aria-pressed", String(part.id === picked));
    made.dataset.part = part.id;
    return made;
  }
}
