// What this page and a page around it say to each other, as `{bedcourse: ...}`.
//
// In: "load" with a model; `dress` the language and tones of the page around it; `recall` what
// was kept, for a page made anew. Out: `ready`, `shown`, `failed`, `picked`, `kept`.
import { Vector3 } from "three";
import type { Model } from "./model";
import type { State, Store, Theme } from "./state";
import type { Viewer } from "./viewer";

export interface Dress {
  language?: string;
  theme?: Theme;
}

/** A visitor's choices and where he stands. */
export interface Kept {
  state: State;
  stand: { round: number; down: number; metresPerPixel: number; target: number[] };
}

export interface Told {
  model: Model;
  dress?: Dress;
  recall?: Kept;
}

/** Whether there is a page around this one. */
export const inside = window.parent !== window;

/** Tell the page around this one. */
export function tell(what: object): void {
  if (inside) window.parent.postMessage({ bedcourse: what }, "*");
}

/** Hear the models a page around this one sends. */
export function hear(load: (told: Told) => void): void {
  if (!inside) return;
  window.addEventListener("message", (event: MessageEvent) => {
    if (event.source !== window.parent || event.data?.bedcourse !== "load") return;
    try {
      load(event.data as Told);
    } catch (fault) {
      tell({ failed: String(fault) });
      throw fault;
    }
  });
}

/** Tell what is picked, and when all rests what is chosen. */
export function telling(store: Store, viewer: Viewer): void {
  store.listen((changed) => {
    if (changed.has("picked")) tell({ picked: store.state.picked });
  });
  viewer.onRest = () => {
    const { round, down, metresPerPixel, target } = viewer.eye.stand;
    const stand = { round, down, metresPerPixel, target: target.toArray() };
    tell({ kept: { state: store.state, stand } satisfies Kept });
  };
}

/** Choose and stand again as was kept. */
export function recall(kept: Kept, store: Store, viewer: Viewer): void {
  store.set(kept.state);
  const [x, y, z] = kept.stand.target;
  viewer.eye.put({ ...kept.stand, target: new Vector3(x, y, z) });
  viewer.moved();
}

let worn: Dress = {};

/** Follow the page around this one where its language or tones have changed. */
export function dressed(dress: Dress, known: string[]): Partial<State> {
  const change: Partial<State> = {};
  const { language, theme } = dress;
  if (language && language !== worn.language && known.includes(language))
    change.language = language;
  if (theme && theme !== worn.theme) change.theme = theme;
  worn = dress;
  return change;
}
