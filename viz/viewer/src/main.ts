// Starts the page: reads the model, builds picture and controls, listens to a page around it.
import "./look.css";
import { dressed, hear, recall, type Told, tell, telling } from "./around";
import { Controls } from "./controls";
import { asNamed } from "./cutting";
import { el } from "./dom";
import type { Model } from "./model";
import { onPaper } from "./paper";
import { type State, Store } from "./state";
import { shown } from "./tones";
import { Viewer } from "./viewer";
import { Speech } from "./words";

const FORMAT = 2;

/** Start with the page's own model, or wait for one from the page around this one. */
function start(): void {
  let load: ((told: Told) => void) | null = null;
  const own = document.getElementById("model")?.textContent;
  if (own) load = begun({ model: JSON.parse(own) as Model });
  hear((told) => {
    if (told.model.format !== FORMAT) {
      throw new Error(`format ${told.model.format} is not known here`);
    }
    if (load) load(told);
    else load = begun(told);
    tell({ shown: told.model.name });
  });
  tell({ ready: FORMAT });
}

/** Show the first model; return how to show the next. */
function begun({ model, dress = {}, recall: kept }: Told): (told: Told) => void {
  const picture = document.getElementById("picture")!;
  const desk = document.getElementById("desk")!;
  const canvas = el("canvas", { tabindex: 0, role: "application" });
  picture.append(canvas);
  desk.hidden = false;
  const known = model.languages.map(({ code }) => code);
  const language = known.find((code) => navigator.language.startsWith(code)) ?? known[0]!;
  const store = new Store({ ...opening(model, language), ...dressed(dress, known) });
  const speech = new Speech(model, store.state.language);
  let viewer: Viewer;
  try {
    viewer = new Viewer(canvas, picture, model, store, speech);
  } catch (fault) {
    canvas.remove();
    desk.hidden = true;
    throw fault;
  }
  const still = document.getElementById("still");
  if (still) still.hidden = true;
  const [first] = model.cuts;
  if (first) store.set({ cut: asNamed(first, viewer.house.choices, viewer.house.box) });
  viewer.start();
  wear(store, canvas, speech, viewer);
  const beside = document.getElementById("controls")!;
  const under = document.getElementById("under")!;
  const controls = new Controls(model, store, speech, viewer, beside, under);
  printing(viewer);
  if (kept) recall(kept, store, viewer);
  telling(store, viewer);
  const load = ({ model: next, dress: worn = {} }: Told) => {
    const { stage } = store.state;
    const done = stage === speech.model.stages.length;
    speech.model = next;
    // What was all built stays so, whatever stages there are now.
    const last = next.stages.length;
    store.set({ stage: done ? last : Math.min(stage, last), ...dressed(worn, known) });
    viewer.replace(next);
    controls.replace(next);
  };
  Object.assign(window, {
    bedcourse: { store, viewer, load: (next: Model) => load({ model: next }) },
  });
  return load;
}

/** What is chosen before anybody has chosen. */
function opening(model: Model, language: string): State {
  return {
    language,
    theme: "auto",
    hidden: new Set(),
    peeled: new Set(),
    ground: "cut",
    cut: { along: "none", at: 0, turn: 0, flip: false },
    explode: 0,
    stage: model.stages.length,
    later: "ghost",
    picked: null,
    labels: true,
    tape: true,
  };
}

/** Keep the page's own language, tones and names at the state. */
function wear(store: Store, canvas: HTMLElement, speech: Speech, viewer: Viewer): void {
  const follow = () => {
    document.documentElement.lang = store.state.language;
    document.documentElement.dataset.theme = shown(store.state.theme);
    canvas.setAttribute("aria-label", speech.say("canvas"));
  };
  follow();
  store.listen(follow);
  for (const wish of ["(prefers-color-scheme: dark)", "(prefers-contrast: more)"]) {
    matchMedia(wish).addEventListener("change", () => {
      follow();
      viewer.draw();
    });
  }
}

/** A picture of the picture, for paper. */
function printing(viewer: Viewer): void {
  const printed = document.getElementById("printed") as HTMLImageElement;
  window.addEventListener("beforeprint", () => {
    viewer.paintNow();
    printed.src = onPaper(viewer.frame, viewer.canvas);
  });
}

start();
