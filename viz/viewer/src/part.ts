// One part in the scene: its skin, its edges, the face a cut leaves, the lid where it is half done.
import {
  BufferAttribute,
  BufferGeometry,
  type Plane as ClipPlane,
  Color,
  DoubleSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Texture,
  Vector3,
} from "three";
import { LineMaterial } from "three/addons/lines/LineMaterial.js";
import { LineSegments2 } from "three/addons/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/addons/lines/LineSegmentsGeometry.js";
import { crisp } from "./edges";
import type { Look, Part } from "./model";
import { areaInside, filled, type Loop, type Plane, slice } from "./slice";
import type { Tones } from "./tones";
import type { Mesh as Shape } from "./unpack";

export type Show = "solid" | "ghost" | "none";

/** Pixels for a millimetre of line on paper. */
const LINE = 3.2;

/** A part's objects, moved together when the parts stand apart. */
export class PartView {
  readonly group = new Group();
  readonly low = new Vector3();
  readonly high = new Vector3();
  cut: Loop[] = [];
  show: Show = "solid";
  cutShown = false;
  private readonly middle = new Vector3();
  readonly skin: Mesh<BufferGeometry, MeshLambertMaterial>;
  private readonly edges: LineSegments<BufferGeometry, LineBasicMaterial>;
  private readonly fine: LineSegments<BufferGeometry, LineBasicMaterial>;
  readonly cap: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly rim: LineSegments2;
  readonly lid: Mesh<BufferGeometry, MeshBasicMaterial>;

  /** Two views of one name show the same, if not at the same place. */
  readonly name: string;

  constructor(
    public part: Part,
    readonly look: Look,
    readonly shape: Shape,
    readonly hatch: Texture | null,
  ) {
    this.name = nameOf(part, look);
    this.measure();
    const at = this.middle.toArray();
    this.skin = new Mesh(this.skinGeometry(), skinPaint(look, part.thin));
    const { long, short } = crisp(shape, at);
    this.edges = new LineSegments(lines(long), linePaint());
    this.fine = new LineSegments(lines(short), linePaint());
    this.cap = new Mesh(new BufferGeometry(), capPaint(look, hatch));
    this.lid = new Mesh(new BufferGeometry(), capPaint(look, null));
    this.rim = new LineSegments2(new LineSegmentsGeometry(), rimPaint(part, look));
    this.place();
    this.rim.renderOrder = 2;
    this.group.add(this.skin, this.edges, this.fine, this.cap, this.rim, this.lid);
  }

  private measure(): void {
    const { points } = this.shape;
    this.low.setScalar(Number.POSITIVE_INFINITY);
    this.high.setScalar(Number.NEGATIVE_INFINITY);
    const spot = new Vector3();
    for (let i = 0; i < points.length; i += 3) {
      spot.set(points[i]!, points[i + 1]!, points[i + 2]!);
      this.low.min(spot);
      this.high.max(spot);
    }
    this.middle.addVectors(this.low, this.high).multiplyScalar(0.5);
  }

  private place(): void {
    for (const item of [this.skin, this.edges, this.fine]) item.position.copy(this.middle);
  }

  /** Stand for the same part of another model: of the same shape, perhaps at another place. */
  become(part: Part): void {
    const [from, to] = [this.part.mesh.low, part.mesh.low];
    const way = to.map((value, axis) => value - from[axis]!);
    this.part = part;
    if (way.every((step) => step === 0)) return;
    const { points } = this.shape;
    for (let i = 0; i < points.length; i++) points[i]! += way[i % 3]!;
    this.measure();
    this.place();
  }

  /** Positions about the part's own middle: 32-bit numbers then keep a thin sheet's thickness. */
  private skinGeometry(): BufferGeometry {
    const { points, faces } = this.shape;
    const at = this.middle.toArray();
    const near = new Float32Array(points.length);
    for (let i = 0; i < points.length; i++) near[i] = points[i]! - at[i % 3]!;
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(near, 3));
    geometry.setIndex(new BufferAttribute(faces, 1));
    return geometry;
  }

  /** Cut the part; without a plane, make it whole. */
  slice(plane: Plane | null): void {
    this.cut = plane && this.met(plane) ? slice(this.shape, plane) : [];
    fill(this.cap, this.cut, plane, true);
    const ends = plane ? this.outline(plane) : [];
    const shown = ends.length > 0;
    if (shown) {
      this.rim.geometry.dispose();
      this.rim.geometry = new LineSegmentsGeometry().setPositions(new Float32Array(ends));
      this.rim.computeLineDistances();
    }
    this.rim.userData.full = shown;
  }

  /** The area of the cut face, square metres. */
  get area(): number {
    return areaInside(this.cut);
  }

  private met(plane: Plane): boolean {
    const [nx, ny, nz] = plane.normal;
    const half = new Vector3().subVectors(this.high, this.low).multiplyScalar(0.5);
    const reach = half.x * Math.abs(nx) + half.y * Math.abs(ny) + half.z * Math.abs(nz);
    return Math.abs(this.middle.dot(new Vector3(nx, ny, nz)) - plane.at) <= reach + 1e-9;
  }

  private outline(plane: Plane): number[] {
    // Of a thin wrap the outer line alone is drawn: two would fill the gaps of its dashes.
    const loops = this.part.thin ? this.cut.filter((loop) => loop.area > 0) : this.cut;
    return loops.flatMap(({ line }) => {
      const found: number[] = [];
      for (let i = 0; i < line.length; i += 2) {
        const j = (i + 2) % line.length;
        found.push(...spot(plane, line[i]!, line[i + 1]!), ...spot(plane, line[j]!, line[j + 1]!));
      }
      return found;
    });
  }

  /** Show the part built up to a level alone, or whole. */
  upTo(plane: Plane | null): void {
    fill(this.lid, plane ? slice(this.shape, plane) : [], plane, false);
  }

  /** Set what is shown of the part. */
  appear(
    show: Show,
    cutShown: boolean,
    partly: boolean,
    clips: ClipPlane[],
    level: ClipPlane | null,
  ): void {
    this.show = show;
    this.cutShown = cutShown && show !== "ghost";
    const skin = show !== "none";
    this.skin.visible = this.edges.visible = this.fine.visible = skin;
    this.cap.visible = this.cutShown && this.cut.length > 0;
    this.rim.visible = this.cutShown && Boolean(this.rim.userData.full);
    this.lid.visible = partly && show === "solid";
    const ghost = show === "ghost";
    // Whether paint covers is part of its program.
    this.skin.material.needsUpdate = this.skin.material.transparent !== ghost;
    this.skin.material.transparent = ghost;
    this.skin.material.opacity = ghost ? 0.1 : 1;
    this.skin.material.depthWrite = !ghost;
    const upper = partly && level ? [level] : [];
    for (const item of [this.skin, this.edges, this.fine]) {
      item.material.clippingPlanes = [...clips, ...upper];
    }
    this.cap.material.clippingPlanes = this.rim.material.clippingPlanes = upper;
    this.lid.material.clippingPlanes = clips;
  }

  /** Paint the lines, and the whole part where it is picked. */
  tint(tones: Tones, picked: boolean, metresPerPixel: number): void {
    const ghost = this.show === "ghost";
    for (const item of [this.edges, this.fine]) {
      item.material.color = new Color(picked ? tones.pick : tones.ink);
      item.material.opacity = ghost ? 0.28 : tones.inkShare;
    }
    this.fine.visible = this.edges.visible && metresPerPixel < 0.004;
    this.skin.material.emissive = new Color(picked ? tones.pick : "#000000");
    this.skin.material.emissiveIntensity = picked ? 0.35 : 0;
    this.cap.material.color = new Color(
      picked ? mixed(tones.pick) : this.hatch ? "#fff" : this.look.fill,
    );
  }

  /** Corners of the part's box, lifted as it stands. */
  corners(): Vector3[] {
    return boxCorners(this.low, this.high).map((p) => p.add(this.group.position));
  }

  /** Free what the graphics card holds. */
  dispose(): void {
    for (const item of [this.skin, this.edges, this.fine, this.cap, this.lid, this.rim]) {
      item.geometry.dispose();
      item.material.dispose();
    }
  }
}

/** A name for all that a part's view is made from, but for where it stands. */
export function nameOf(part: Part, look: Look): string {
  return JSON.stringify([part.id, part.mesh.shape, part.thin, look]);
}

/** The eight corners of a box. */
export function boxCorners(low: Vector3, high: Vector3): Vector3[] {
  return [low.x, high.x].flatMap((x) =>
    [low.y, high.y].flatMap((y) => [low.z, high.z].map((z) => new Vector3(x, y, z))),
  );
}

function mixed(code: string): Color {
  return new Color(code).lerp(new Color("#ffffff"), 0.55);
}

function spot({ normal, at, u, v }: Plane, a: number, b: number): [number, number, number] {
  const [x, y, z] = [0, 1, 2].map((k) => at * normal[k]! + a * u[k]! + b * v[k]!);
  return [x!, y!, z!];
}

function fill(mesh: Mesh, loops: Loop[], plane: Plane | null, hatched: boolean): void {
  mesh.geometry.dispose();
  mesh.geometry = new BufferGeometry();
  if (!plane || !loops.length) return;
  const flat = filled(loops);
  const places = new Float32Array((flat.length / 2) * 3);
  for (let i = 0; i < flat.length / 2; i++) {
    places.set(spot(plane, flat[2 * i]!, flat[2 * i + 1]!), 3 * i);
  }
  mesh.geometry.setAttribute("position", new BufferAttribute(places, 3));
  if (hatched) mesh.geometry.setAttribute("uv", new BufferAttribute(new Float32Array(flat), 2));
}

function lines(points: Float32Array): BufferGeometry {
  return new BufferGeometry().setAttribute("position", new BufferAttribute(points, 3));
}

/** Faces stand back a little from their edges; a sheet less, so that it covers what it lies on. */
function skinPaint(look: Look, thin: boolean): MeshLambertMaterial {
  return new MeshLambertMaterial({
    color: look.solid,
    flatShading: true,
    polygonOffset: true,
    polygonOffsetFactor: thin ? 0.75 : 1,
    polygonOffsetUnits: 1,
  });
}

function linePaint(): LineBasicMaterial {
  return new LineBasicMaterial({ transparent: true });
}

function capPaint(look: Look, hatch: Texture | null): MeshBasicMaterial {
  return new MeshBasicMaterial({
    color: hatch ? "#fff" : look.fill,
    map: hatch,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -1,
  });
}

function rimPaint(part: Part, look: Look): LineMaterial {
  const weight = part.thin ? look.thin : look.line;
  const dashed = part.thin && look.dash.length > 0;
  const paint = new LineMaterial({
    color: new Color(part.thin ? look.solid : "#26282a").getHex(),
    linewidth: Math.max(1.2, weight * LINE),
    dashed,
    clipping: true,
  });
  paint.polygonOffset = true;
  paint.polygonOffsetFactor = paint.polygonOffsetUnits = -4;
  return paint;
}
