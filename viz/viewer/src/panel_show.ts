// How the page is shown: language, tones, the ground; and the row of views under the picture.
import { el } from "./dom";
import { button, choice, section, toggle } from "./fields";
import type { Model } from "./model";
import type { Ground, Store, Theme } from "./state";
import type { Viewer } from "./viewer";
import type { ViewName } from "./views";
import type { Speech } from "./words";

const VIEWS: ViewName[] = ["whole", "face", "detail", "below"];

/** Return the row of views, switches and zoom. */
export function viewRow(model: Model, store: Store, speech: Speech, viewer: Viewer): HTMLElement {
  const { labels, tape } = store.state;
  const names = VIEWS.filter((name) => name !== "below" || model.low);
  const views = names.map((name) =>
    button(speech.say(`view_${name}`), () => viewer.stand(name), { id: `view-${name}` }),
  );
  const zoom = (words: string, name: string, factor: number) =>
    button(
      words,
      () => {
        viewer.eye.zoom(factor);
        viewer.moved();
      },
      { "aria-label": speech.say(name), id: name.replace("_", "-") },
    );
  return el(
    "div",
    { class: "views", role: "group", "aria-label": speech.say("views") },
    ...views,
    toggle(speech.say("labels"), labels, () => store.set({ labels: !labels })),
    toggle(speech.say("levels"), tape, () => store.set({ tape: !tape })),
    zoom("+", "zoom_in", 1 / 1.25),
    zoom("−", "zoom_out", 1.25),
  );
}

/** Return the choices of language, tones and ground. */
export function showPanel(model: Model, store: Store, speech: Speech): HTMLElement {
  const { language, theme, ground } = store.state;
  const said = (names: string[], lead: string) =>
    names.map((name) => [name, speech.say(`${lead}_${name}`)] as const);
  return section(
    speech.say("page"),
    "page",
    choice(
      speech.say("language"),
      "language",
      model.languages.map(({ code, name }) => [code, name] as const),
      language,
      (value) => store.set({ language: value }),
    ),
    choice(
      speech.say("theme"),
      "theme",
      said(["auto", "light", "dark", "contrast"], "theme"),
      theme,
      (value) => store.set({ theme: value as Theme }),
    ),
    choice(
      speech.say("ground"),
      "ground",
      said(["cut", "whole", "none"], "ground"),
      ground,
      (value) => store.set({ ground: value as Ground }),
    ),
    button(speech.say("print"), () => window.print(), { id: "print" }),
    el("p", { class: "hint" }, speech.say("keys")),
  );
}
