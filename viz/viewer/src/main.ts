// Starts the page: reads the model, builds picture and controls, listens to a page around it.
import "./look.css";
import { Controls } from "./controls";
import { asNamed } from "./cutting";
import { el } from "./dom";
import type { Model } from "./model";
import { onPaper } from "./paper";
import { Store } from "./state";
import { shown } from "./tones";
import { Viewer } from "./viewer";
import { Speech } from "./words";

const FORMAT = 1;

function start(): void {
  const text = document.getElementById("model")!.textContent!;
  const model = JSON.parse(text) as Model;
  const picture = document.getElementById("picture")!;
  const canvas = el("canvas", { tabindex: 0, role: "application" });
  picture.append(canvas);
  document.getElementById("desk")!.hidden = false;
  const known = model.languages.map(({ code }) => code);
  const language = known.find((code) => navigator.language.startsWith(code)) ?? known[0]!;
  const speech = new Speech(model, language);
  const store = new Store({
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
  });
  let viewer: Viewer;
  try {
    viewer = new Viewer(canvas, picture, model, store, speech);
  } catch (fault) {
    document.getElementById("desk")!.hidden = true;
    throw fault;
  }
  document.getElementById("still")!.hidden = true;
  const [first] = model.cuts;
  if (first) store.set({ cut: asNamed(first, viewer.house.choices, viewer.house.box) });
  viewer.start();
  dress(store, canvas, speech, viewer);
  const beside = document.getElementById("controls")!;
  const under = document.getElementById("under")!;
  const controls = new Controls(model, store, speech, viewer, beside, under);
  printing(viewer);
  const load = (next: Model) => {
    if (next.format !== FORMAT) throw new Error(`format ${next.format} is not known here`);
    const { stage } = store.state;
    const done = stage === speech.model.stages.length;
    speech.model = next;
    // What was all built stays so, whatever stages there are now.
    const last = next.stages.length;
    store.set({ stage: done ? last : Math.min(stage, last) });
    viewer.replace(next);
    controls.replace(next);
  };
  listen(load, store);
  Object.assign(window, { bedcourse: { store, viewer, load } });
}

/** Keep the page's own language, tones and names at the state. */
function dress(store: Store, canvas: HTMLElement, speech: Speech, viewer: Viewer): void {
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

/** Hear a page around this one: `{bedcourse: "load", model}`; tell it what is picked. */
function listen(load: (model: Model) => void, store: Store): void {
  if (window.parent === window) return;
  window.addEventListener("message", (event: MessageEvent) => {
    if (event.source !== window.parent || event.data?.bedcourse !== "load") return;
    load(event.data.model as Model);
  });
  const tell = (what: object) => window.parent.postMessage({ bedcourse: what }, "*");
  store.listen((changed) => {
    if (changed.has("picked")) tell({ picked: store.state.picked });
  });
  tell({ ready: FORMAT });
}

start();
