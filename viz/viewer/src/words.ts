// The words of the page in the chosen language, and lengths as the design prints them.
import type { Model, Words } from "./model";

/** Speaks one language. */
export class Speech {
  constructor(
    public model: Model,
    public language: string,
  ) {}

  /** The words of a key, with figures in their places. */
  say(key: string, figures: Record<string, string | number> = {}): string {
    const words = this.model.words[this.language]?.[key] ?? key;
    return words.replace(/\{(\w+)\}/g, (_, name: string) => String(figures[name] ?? ""));
  }

  /** Words that come with the model. */
  of(words: Words): string {
    return words[this.language] ?? Object.values(words)[0] ?? "";
  }

  /** A place along a cut's direction: feet and inches to the half inch, or whole millimetres. */
  length(metres: number): string {
    if (this.model.system === "metric") return `${Math.round(metres * 1000)} mm`;
    const halves = Math.round((Math.abs(metres) / 0.0254) * 2);
    const feet = Math.floor(halves / 24);
    const inches = Math.floor((halves % 24) / 2);
    const half = halves % 2 ? " 1/2" : "";
    return `${metres < 0 && halves ? "-" : ""}${feet}'-${inches}${half}"`;
  }
}
