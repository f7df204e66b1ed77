// The build as a stack of courses, the first at the bottom; and what the crew does in one.
import { el } from "./dom";
import { button, choice, section } from "./fields";
import type { Model, Stage, Words } from "./model";
import type { Store } from "./state";
import { swatch } from "./swatch";
import type { Speech } from "./words";

/** Return the controls of the build. */
export function buildPanel(model: Model, store: Store, speech: Speech): HTMLElement {
  const count = model.stages.length;
  const { stage, later } = store.state;
  const go = (to: number) => store.set({ stage: Math.max(-1, Math.min(count, to)) });
  const steps = el(
    "div",
    { class: "steps" },
    button("◀", () => go(stage - 1), { "aria-label": speech.say("back"), id: "stage-back" }),
    el("output", { class: "where" }, title(model, stage, speech)),
    button("▶", () => go(stage + 1), { "aria-label": speech.say("next"), id: "stage-next" }),
  );
  const later_ = choice(
    speech.say("later"),
    "later",
    [
      ["ghost", speech.say("ghosted")],
      ["hidden", speech.say("hidden")],
    ],
    later,
    (value) => store.set({ later: value as "ghost" | "hidden" }),
  );
  const said = model.stages[stage];
  return section(
    speech.say("build"),
    "build",
    steps,
    stack(model, stage, go, speech),
    said ? card(said, speech) : null,
    later_,
  );
}

function title(model: Model, stage: number, speech: Speech): string {
  if (stage < 0) return speech.say("standing");
  const found = model.stages[stage];
  if (!found) return speech.say("all_built");
  const where = speech.say("stage_of", { number: stage + 1, count: model.stages.length });
  return `${where}: ${speech.of(found.title)}`;
}

function stack(model: Model, stage: number, go: (to: number) => void, speech: Speech): HTMLElement {
  const courses = model.stages.map((found, number) => {
    const patch = el("i", { "aria-hidden": "true" });
    swatch(patch, model, found.look);
    const state = number < stage ? "done" : number === stage ? "now" : "later";
    const made = button("", () => go(number), { class: state });
    if (state === "now") made.setAttribute("aria-current", "step");
    made.append(patch, el("span", {}, `${number + 1}  ${speech.of(found.title)}`));
    return el("li", {}, made);
  });
  const end = (words: string, to: number, name: string) => {
    const made = button("", () => go(to), { class: stage === to ? "now" : name });
    if (stage === to) made.setAttribute("aria-current", "step");
    made.append(el("b", { "aria-hidden": "true" }), el("span", {}, words));
    return made;
  };
  const whole = end(speech.say("all_built"), model.stages.length, "later");
  const stands = end(speech.say("standing"), -1, "done");
  const list = el("ol", { class: "courses", reversed: true, "aria-label": speech.say("build") });
  list.append(el("li", {}, whole), ...courses.reverse(), el("li", {}, stands));
  return list;
}

function card(stage: Stage, speech: Speech): HTMLElement {
  const list = (words: Words[], name: string) =>
    words.length
      ? el("ul", { class: name }, ...words.map((line) => el("li", {}, speech.of(line))))
      : null;
  const shots = stage.shots.map(({ name, level, rod }) =>
    el(
      "tr",
      {},
      el("th", { scope: "row" }, speech.of(name)),
      el("td", {}, speech.of(level)),
      el("td", {}, speech.of(rod)),
    ),
  );
  return el(
    "div",
    { class: "card", "aria-live": "polite" },
    list(stage.lines, "do"),
    shots.length ? el("table", {}, el("tbody", {}, ...shots)) : null,
    stage.holds.length ? el("h3", {}, speech.say("hold")) : null,
    list(stage.holds, "holds"),
    stage.cautions.length ? el("h3", {}, speech.say("caution")) : null,
    list(stage.cautions, "warns"),
  );
}
