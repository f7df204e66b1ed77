// Fields of the controls: a slider, a choice, a switch.
import { el } from "./dom";

/** A labelled slider with its value in words beside it. */
export class Slider {
  readonly root: HTMLElement;
  private readonly input: HTMLInputElement;
  private readonly shown = el("output", {});

  constructor(
    name: string,
    id: string,
    reach: { low: number; high: number; step: number },
    private readonly inWords: (value: number) => string,
    act: (value: number) => void,
  ) {
    this.input = el("input", { type: "range", id, min: reach.low, max: reach.high });
    this.input.step = String(reach.step);
    this.input.addEventListener("input", () => {
      const value = Number(this.input.value);
      this.say(value);
      act(value);
    });
    this.shown.setAttribute("for", id);
    this.root = el(
      "div",
      { class: "field" },
      el("label", { for: id }, name),
      this.shown,
      this.input,
    );
  }

  private say(value: number): void {
    const words = this.inWords(value);
    this.shown.textContent = words;
    this.input.setAttribute("aria-valuetext", words);
  }

  /** Show a value. */
  set(value: number, off = false): void {
    this.input.value = String(value);
    this.input.disabled = off;
    this.say(value);
    if (off) this.shown.textContent = "";
  }
}

/** A labelled choice of one. */
export function choice(
  name: string,
  id: string,
  options: readonly (readonly [string, string])[],
  chosen: string,
  act: (value: string) => void,
): HTMLElement {
  const select = el("select", { id });
  for (const [value, words] of options) {
    select.append(el("option", { value, selected: value === chosen }, words));
  }
  select.addEventListener("change", () => act(select.value));
  return el("div", { class: "field" }, el("label", { for: id }, name), select);
}

/** A button that does something. */
export function button(
  words: string,
  act: () => void,
  more: Record<string, string | boolean> = {},
): HTMLButtonElement {
  return el("button", { type: "button", ...more, onclick: act }, words);
}

/** A button that is on or off. */
export function toggle(words: string, on: boolean, act: () => void): HTMLButtonElement {
  return button(words, act, { "aria-pressed": String(on), class: "toggle" });
}

/** A part of the controls under a heading. */
export function section(name: string, id: string, ...inside: (Node | null)[]): HTMLElement {
  const heading = el("h2", { id: `${id}-head` }, name);
  const made = el("section", { id, "aria-labelledby": `${id}-head` }, heading);
  made.append(...inside.filter((node): node is Node => node !== null));
  return made;
}
