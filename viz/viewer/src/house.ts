// The house in the scene: all parts, as the state says.
import {
  Plane as ClipPlane,
  Color,
  DirectionalLight,
  HemisphereLight,
  Scene,
  type Texture,
  Vector3,
} from "three";
import { type Box, type Direction, directions, planeOf } from "./cutting";
import type { Look, Model, Part, Tile } from "./model";
import { boxCorners, nameOf, PartView, type Show } from "./part";
import { level, type Plane } from "./slice";
import type { State } from "./state";
import { hatched, metresPerMm } from "./tiles";
import { shown, tones } from "./tones";
import { unpacked } from "./unpack";

const HOLE = "ground/excavation";

interface Hatch {
  texture: Texture | null;
  tile: Tile | undefined;
}

/** All parts of a model; say `update` when the state changes. */
export class House {
  readonly scene = new Scene();
  readonly views: PartView[];
  readonly choices: Direction[];
  readonly box: Box;
  plane: Plane | null = null;
  private readonly hatches = new Map<string, Hatch>();
  private readonly sun = new DirectionalLight("#fffaf0", 1.75);

  /** `before`: the house shown until now; what is the same in both is taken over from it. */
  constructor(
    readonly model: Model,
    before?: House,
  ) {
    const old = new Map(before?.views.map((view) => [view.name, view]));
    this.views = model.parts.map((part) => this.viewOf(part, old, before));
    before?.leave(this);
    for (const view of this.views) this.scene.add(view.group);
    this.box = this.bounds();
    this.choices = directions(model, this.box);
    const sky = new HemisphereLight("#ffffff", "#d6d0c4", 1.9);
    sky.position.set(0, 0, 1);
    this.scene.add(sky, this.sun, this.sun.target);
  }

  private viewOf(part: Part, old: ReadonlyMap<string, PartView>, before?: House): PartView {
    const look = this.model.looks[part.look]!;
    const { texture } = this.hatch(look, before);
    const found = old.get(nameOf(part, look));
    if (!found) return new PartView(part, look, unpacked(part.mesh, this.packed(part)), texture);
    found.become(part);
    return found;
  }

  private packed(part: Part): string {
    const found = this.model.shapes[part.mesh.shape];
    if (found === undefined) throw new Error(`the shape of ${part.id} is missing`);
    return found;
  }

  private hatch(look: Look, before?: House): Hatch {
    const name = JSON.stringify(look);
    const tile = this.model.tiles[look.hatch];
    const found = this.hatches.get(name) ??
      before?.hatches.get(name) ?? { texture: hatched(look, tile), tile };
    this.hatches.set(name, found);
    return found;
  }

  private bounds(): Box {
    const work = this.views.filter((view) => !view.part.earth);
    const low = new Vector3().setScalar(Number.POSITIVE_INFINITY);
    const high = new Vector3().setScalar(Number.NEGATIVE_INFINITY);
    for (const view of work) {
      low.min(view.low);
      high.max(view.high);
    }
    return { low: low.toArray(), high: high.toArray() };
  }

  /** Follow the state. `changed`: what of it; all if not given. */
  update(state: State, changed?: ReadonlySet<keyof State>): void {
    if (!changed || changed.has("cut")) this.cut(state);
    const drop = state.explode;
    for (const view of this.views) view.group.position.z = drop * view.part.lift;
    for (const view of this.views) this.appear(view, state);
  }

  private cut(state: State): void {
    this.plane = planeOf(state.cut, this.choices, this.box);
    for (const view of this.views) view.slice(this.plane);
  }

  private appear(view: PartView, state: State): void {
    const { part } = view;
    const partly = part.partTop !== null && state.stage >= part.from && state.stage < part.whole;
    const clips = this.plane ? [clip(this.plane)] : [];
    const top = part.partTop === null ? null : part.partTop;
    const lower =
      top === null ? null : new ClipPlane(new Vector3(0, 0, -1), top + view.group.position.z);
    view.upTo(partly && top !== null ? level(top) : null);
    const cutShown = this.cutShown(part, state);
    view.appear(this.showOf(part, state), cutShown, partly, clips, lower);
  }

  /** How a part is shown. */
  showOf(part: Part, state: State): Show {
    if (state.hidden.has(part.id) || state.peeled.has(part.id)) return "none";
    if (part.from > state.stage) {
      return state.later === "ghost" && !part.earth && !part.only_cut ? "ghost" : "none";
    }
    if (part.only_cut) return this.groundShown(state) ? "solid" : "none";
    if (part.earth && state.stage !== part.from) {
      return state.ground === "whole" && state.explode === 0 ? "solid" : "none";
    }
    return "solid";
  }

  /** The ground round the hole is the work while it is dug; later it is shown when asked for. */
  private groundShown(state: State): boolean {
    const digging = this.model.stages[state.stage]?.parts.includes(HOLE) ?? false;
    return state.explode === 0 && (state.ground === "whole" || (digging && state.ground === "cut"));
  }

  private cutShown(part: Part, state: State): boolean {
    if (state.hidden.has(part.id) || state.peeled.has(part.id)) return false;
    if (part.from > state.stage) return false;
    return !part.earth || (state.ground !== "none" && state.explode === 0);
  }

  /** Paint for a way of showing and a zoom. */
  paint(state: State, metresPerPixel: number, toViewer: Vector3, right: Vector3): void {
    const way = tones(shown(state.theme));
    this.scene.background = new Color(way.paper);
    for (const view of this.views) {
      view.tint(way, view.part.id === state.picked, metresPerPixel);
    }
    const mm = metresPerMm(metresPerPixel);
    for (const { texture, tile } of this.hatches.values()) {
      if (texture && tile) texture.repeat.set(1 / (mm * tile.size[0]), 1 / (mm * tile.size[1]));
    }
    // The light stands over the viewer's left shoulder.
    this.sun.position
      .copy(toViewer)
      .addScaledVector(right, -0.7)
      .add(new Vector3(0, 0, 0.75));
  }

  /** Corners of the boxes of the parts that are shown and asked for. */
  corners(asked: (view: PartView) => boolean = () => true): Vector3[] {
    const found = this.views.filter((view) => view.show === "solid" && asked(view));
    return found.length ? found.flatMap((view) => view.corners()) : this.everything();
  }

  /** The box of the whole work. */
  everything(): Vector3[] {
    return boxCorners(new Vector3(...this.box.low), new Vector3(...this.box.high));
  }

  /** The areas of the cut faces by part, square metres. */
  areas(): Record<string, number> {
    const cut = this.views.filter((view) => view.cut.length);
    return Object.fromEntries(cut.map((view) => [view.part.id, view.area]));
  }

  /** Free what the graphics card holds, but for what the next house has taken over. */
  private leave(next: House): void {
    const kept = new Set(next.views);
    for (const view of this.views) if (!kept.has(view)) view.dispose();
    for (const [name, hatch] of this.hatches) {
      if (next.hatches.get(name) !== hatch) hatch.texture?.dispose();
    }
  }
}

function clip({ normal, at }: Plane): ClipPlane {
  return new ClipPlane(new Vector3(...normal).negate(), at);
}
