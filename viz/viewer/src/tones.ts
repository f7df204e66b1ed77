// The few tones around the materials, for each way of showing.
import type { Theme } from "./state";

export interface Tones {
  paper: string;
  ink: string;
  inkShare: number;
  pick: string;
}

const TONES: Record<"light" | "dark" | "contrast" | "darkContrast", Tones> = {
  light: { paper: "#f7f7f4", ink: "#26282a", inkShare: 0.8, pick: "#b4532a" },
  dark: { paper: "#1d2022", ink: "#0b0c0d", inkShare: 0.9, pick: "#ffb454" },
  contrast: { paper: "#ffffff", ink: "#000000", inkShare: 1, pick: "#c00000" },
  darkContrast: { paper: "#000000", ink: "#000000", inkShare: 1, pick: "#ffff00" },
};

export type Shown = keyof typeof TONES;

/** Return the way of showing that a choice, or without one the system, asks for. */
export function shown(theme: Theme): Shown {
  const dark = matchMedia("(prefers-color-scheme: dark)").matches;
  const more = matchMedia("(prefers-contrast: more)").matches;
  if (theme === "auto")
    return more ? (dark ? "darkContrast" : "contrast") : dark ? "dark" : "light";
  return theme;
}

/** Return the tones of a way of showing. */
export function tones(way: Shown): Tones {
  return TONES[way];
}
