// The parts by name, in groups, each to be hidden or chosen; and the figures of the chosen one.
import { el } from "./dom";
import { button, choice, section } from "./fields";
import type { Model, Part } from "./model";
import type { Store } from "./state";
import { swatch } from "./swatch";
import type { Speech } from "./words";

type Grouping = "stage" | "role";
let grouping: Grouping = "stage";

/** Return the figures of the chosen part. */
export function partCard(model: Model, store: Store, speech: Speech): HTMLElement {
  const part = model.parts.find(({ id }) => id === store.state.picked);
  if (!part) return section(speech.say("part"), "part", el("p", {}, speech.say("tap")));
  const patch = el("i", { class: "patch", "aria-hidden": "true" });
  swatch(patch, model, part.look);
  const hide = button(speech.say("hide"), () => {
    store.set({ hidden: new Set([...store.state.hidden, part.id]), picked: null });
  });
  const made = section(
    speech.of(part.full),
    "part",
    patch,
    figures(part, speech),
    el(
      "div",
      { class: "row" },
      hide,
      button(speech.say("close"), () => store.set({ picked: null }), { id: "part-close" }),
    ),
  );
  made.setAttribute("aria-live", "polite");
  return made;
}

function elevations({ elevation }: Part, speech: Speech): string {
  return speech.say("span", { low: speech.of(elevation[0]), high: speech.of(elevation[1]) });
}

function figures(part: Part, speech: Speech): HTMLElement {
  const rows: [string, string][] = [
    ["size", speech.of(part.size)],
    ["material", speech.of(part.material)],
    ["volume", speech.of(part.volume)],
    ["from_tof", speech.say("span", { low: part.level[0], high: part.level[1] })],
    ["elevation", elevations(part, speech)],
  ];
  const list = el("dl", {});
  for (const [key, words] of rows) {
    if (words) list.append(el("dt", {}, speech.say(key)), el("dd", {}, words));
  }
  return list;
}

/** Return the list of all parts. */
export function partsPanel(model: Model, store: Store, speech: Speech): HTMLElement {
  const body = el("div", {});
  const draw = () => body.replaceChildren(...groups(model, store, speech));
  const by = choice(
    speech.say("group_by"),
    "group-by",
    [
      ["stage", speech.say("by_stage")],
      ["role", speech.say("by_role")],
    ],
    grouping,
    (value) => {
      grouping = value as Grouping;
      draw();
    },
  );
  const all = el(
    "div",
    { class: "row" },
    button(speech.say("all_on"), () => store.set({ hidden: new Set(), peeled: new Set() })),
    button(speech.say("all_off"), () => {
      store.set({ hidden: new Set(model.parts.map(({ id }) => id)) });
    }),
  );
  draw();
  return section(speech.say("parts"), "parts", by, all, body);
}

function groups(model: Model, store: Store, speech: Speech): HTMLElement[] {
  const found = new Map<string, Part[]>();
  for (const part of model.parts) {
    const name =
      grouping === "stage" ? stageName(model, part, speech) : speech.say(`role.${part.role}`);
    found.set(name, [...(found.get(name) ?? []), part]);
  }
  const order = [...found];
  if (grouping === "stage") order.sort(([, a], [, b]) => a[0]!.from - b[0]!.from);
  return order.map(([name, parts], number) => group(name, parts, number, store, speech));
}

function stageName(model: Model, part: Part, speech: Speech): string {
  if (part.only_cut) return speech.say("ground");
  const stage = model.stages[part.from];
  return stage ? `${part.from + 1}  ${speech.of(stage.title)}` : speech.say("standing");
}

function group(
  name: string,
  parts: Part[],
  number: number,
  store: Store,
  speech: Speech,
): HTMLElement {
  const { hidden } = store.state;
  const ids = parts.map(({ id }) => id);
  const on = ids.filter((id) => !hidden.has(id)).length;
  const head = check(`group-${number}`, name, on > 0, (shown) => switched(store, ids, shown));
  head.querySelector("input")!.indeterminate = on > 0 && on < ids.length;
  const rows = parts.map((part) => {
    const words = [speech.of(part.full), speech.of(part.size)].filter(Boolean).join(", ");
    const box = el("input", {
      type: "checkbox",
      "aria-label": speech.say("show", { part: words }),
    });
    box.checked = !hidden.has(part.id);
    box.dataset.part = part.id;
    box.addEventListener("change", () => switched(store, [part.id], box.checked));
    const choose = button("", () => store.set({ picked: part.id }), { class: "plain" });
    choose.dataset.choose = part.id;
    choose.setAttribute("aria-pressed", String(store.state.picked === part.id));
    choose.append(
      el("span", {}, speech.of(part.full)),
      el("small", {}, ` ${speech.of(part.size)}`),
    );
    return el("li", {}, box, choose);
  });
  return el("div", { class: "group" }, head, el("ul", {}, ...rows));
}

function check(id: string, words: string, on: boolean, act: (on: boolean) => void): HTMLElement {
  const box = el("input", { type: "checkbox", id });
  box.checked = on;
  box.addEventListener("change", () => act(box.checked));
  return el("div", { class: "group-head" }, box, el("label", { for: id }, words));
}

function switched(store: Store, ids: string[], shown: boolean): void {
  const hidden = new Set(store.state.hidden);
  for (const id of ids) {
    if (shown) hidden.delete(id);
    else hidden.add(id);
  }
  store.set({ hidden });
}
