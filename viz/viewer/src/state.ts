// What a visitor has chosen, and who wants to know when it changes.

export type Theme = "auto" | "light" | "dark" | "contrast";
export type Ground = "cut" | "whole" | "none";

/** Where the house is cut. `along` names a direction; `at` counts in metres from its origin. */
export interface CutState {
  along: string;
  at: number;
  turn: number;
  flip: boolean;
}

export interface State {
  language: string;
  theme: Theme;
  hidden: ReadonlySet<string>;
  peeled: ReadonlySet<string>;
  ground: Ground;
  cut: CutState;
  explode: number;
  stage: number;
  later: "ghost" | "hidden";
  picked: string | null;
  labels: boolean;
  tape: boolean;
}

type Listener = (changed: ReadonlySet<keyof State>) => void;

/** Holds the state; tells listeners which of it has changed. */
export class Store {
  private readonly listeners: Listener[] = [];
  constructor(public state: State) {}

  /** Change some of the state. */
  set(change: Partial<State>): void {
    const keys = (Object.keys(change) as (keyof State)[]).filter(
      (key) => change[key] !== this.state[key],
    );
    if (!keys.length) return;
    this.state = { ...this.state, ...change };
    const changed = new Set(keys);
    for (const listener of this.listeners) listener(changed);
  }

  /** Be told of changes. */
  listen(listener: Listener): void {
    this.listeners.push(listener);
  }
}
