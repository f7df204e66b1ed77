// The cut: which way it moves, where it stands; and the pulling apart.
import { asNamed, type Direction } from "./cutting";
import { el } from "./dom";
import { button, choice, Slider, section } from "./fields";
import type { House } from "./house";
import type { Model } from "./model";
import type { State, Store } from "./state";
import type { Speech } from "./words";

/** The controls of the cut; `follow` keeps the sliders at the state. */
export class CutPanel {
  readonly root: HTMLElement;
  /** The two that are moved most, for right under the picture. */
  readonly sliders: HTMLElement;
  private readonly at: Slider;
  private readonly turn: Slider;
  private readonly apart: Slider;

  constructor(
    private readonly model: Model,
    private readonly house: House,
    private readonly store: Store,
    private readonly speech: Speech,
    faced: () => void,
  ) {
    const { cut } = store.state;
    const reach = this.direction(cut.along);
    this.at = new Slider(
      speech.say("cut_at"),
      "cut-at",
      { low: reach?.low ?? 0, high: reach?.high ?? 1, step: 0.0127 },
      (value) => speech.length(value),
      (at) => store.set({ cut: { ...store.state.cut, at } }),
    );
    this.turn = new Slider(
      speech.say("turned"),
      "cut-turn",
      { low: -90, high: 90, step: 5 },
      (value) => `${Math.round(value)}°`,
      (turn) => store.set({ cut: { ...store.state.cut, turn } }),
    );
    this.apart = new Slider(
      speech.say("apart"),
      "apart",
      { low: 0, high: 1, step: 0.02 },
      (value) => `${Math.round(value * 100)} %`,
      (explode) => store.set({ explode }),
    );
    const flip = button(
      speech.say("flip"),
      () => store.set({ cut: { ...store.state.cut, flip: !store.state.cut.flip } }),
      { id: "cut-flip" },
    );
    flip.disabled = !reach;
    this.root = section(
      speech.say("cut"),
      "cut",
      this.named(faced),
      this.along(),
      this.turn.root,
      flip,
    );
    this.sliders = el("div", { class: "sliders" }, this.at.root, this.apart.root);
    this.follow(store.state);
  }

  private direction(key: string): Direction | undefined {
    return this.house.choices.find((choice) => choice.key === key);
  }

  private named(faced: () => void): HTMLElement {
    const made = this.model.cuts.map((cut) =>
      button(this.speech.of(cut.name), () => {
        this.store.set({ cut: asNamed(cut, this.house.choices, this.house.box) });
        faced();
      }),
    );
    return el(
      "div",
      { class: "row", role: "group", "aria-label": this.speech.say("named") },
      ...made,
    );
  }

  private along(): HTMLElement {
    const { speech, model, store } = this;
    const sides = model.sides.map(
      (side, n) => [`side ${n}`, speech.say("along_side", { side: speech.of(side.name) })] as const,
    );
    const options = [
      ["none", speech.say("no_cut")] as const,
      ["x", speech.say("along_x")] as const,
      ["y", speech.say("along_y")] as const,
      ...sides,
    ];
    return choice(speech.say("along"), "cut-along", options, store.state.cut.along, (along) => {
      const reach = this.direction(along);
      const at = reach ? (reach.low + reach.high) / 2 : 0;
      store.set({ cut: { along, at, turn: 0, flip: store.state.cut.flip } });
    });
  }

  /** Show the state. */
  follow(state: State): void {
    const off = state.cut.along === "none";
    this.at.set(state.cut.at, off);
    this.turn.set(state.cut.turn, off);
    this.apart.set(state.explode);
  }
}
