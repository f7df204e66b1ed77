// The controls beside the picture, made anew where the state asks for it; focus stays in place.

import type { Model } from "./model";
import { buildPanel } from "./panel_build";
import { CutPanel } from "./panel_cut";
import { partCard, partsPanel } from "./panel_parts";
import { showPanel, viewRow } from "./panel_show";
import type { State, Store } from "./state";
import type { Viewer } from "./viewer";
import type { Speech } from "./words";

type Key = keyof State;

/** Build all controls and keep them at the state. */
export class Controls {
  private cut?: CutPanel;
  private readonly made: { keys: Key[]; root: HTMLElement; make: () => HTMLElement }[];

  constructor(
    private model: Model,
    private readonly store: Store,
    private readonly speech: Speech,
    private readonly viewer: Viewer,
    private readonly beside: HTMLElement,
    private readonly under: HTMLElement,
  ) {
    this.made = [
      this.panel(["picked"], () => partCard(this.model, store, speech)),
      this.panel(["stage", "later"], () => buildPanel(this.model, store, speech)),
      this.panel([], () => this.newCut()),
      this.panel(["hidden", "picked"], () => partsPanel(this.model, store, speech)),
      this.panel(["theme", "ground"], () => showPanel(this.model, store, speech)),
      this.panel(["labels", "tape"], () => viewRow(this.model, store, speech, viewer)),
    ];
    this.hang();
    store.listen((changed) => this.follow(changed));
  }

  private panel(keys: Key[], make: () => HTMLElement) {
    return { keys: [...keys, "language" as Key], root: make(), make };
  }

  private newCut(): HTMLElement {
    const face = () => this.viewer.stand("face");
    const before = this.cut?.sliders;
    this.cut = new CutPanel(this.model, this.viewer.house, this.store, this.speech, face);
    before?.replaceWith(this.cut.sliders);
    return this.cut.root;
  }

  private hang(): void {
    const roots = this.made.map(({ root }) => root);
    this.under.replaceChildren(this.cut!.sliders, roots.pop()!, this.viewer.labels.key);
    this.beside.replaceChildren(...roots);
  }

  private follow(changed: ReadonlySet<Key>): void {
    const old = changed.has("cut") && this.along !== this.store.state.cut.along;
    for (const panel of this.made) {
      const isCut = panel.root.id === "cut";
      if (!panel.keys.some((key) => changed.has(key)) && !(isCut && old)) continue;
      remade(panel);
    }
    this.along = this.store.state.cut.along;
    this.cut?.follow(this.store.state);
  }

  private along = "";

  /** Make everything anew for another model. */
  replace(model: Model): void {
    this.model = model;
    for (const panel of this.made) remade(panel);
    this.hang();
  }
}

/** Put a new panel in the old one's place, with the focus and the scrolling where they were. */
function remade(panel: { root: HTMLElement; make: () => HTMLElement }): void {
  const all = (root: HTMLElement) => [
    ...root.querySelectorAll<HTMLElement>("button, input, select"),
  ];
  const focus = all(panel.root).indexOf(document.activeElement as HTMLElement);
  const name = (document.activeElement as HTMLElement | null)?.id;
  const fresh = panel.make();
  panel.root.replaceWith(fresh);
  panel.root = fresh;
  if (focus < 0) return;
  const same = name ? fresh.querySelector<HTMLElement>(`#${CSS.escape(name)}`) : null;
  (same ?? all(fresh)[focus] ?? all(fresh)[0])?.focus({ preventScroll: true });
}
