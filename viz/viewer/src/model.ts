// What a page holds about one design: written by page.py, read by everything here.

/** Words by the code of the language. */
export type Words = Record<string, string>;
export type Pair = [number, number];
export type Spot = [number, number, number];

/** How a material is shown; the project's one table. Weights in mm of paper. */
export interface Look {
  fill: string;
  solid: string;
  ink: string;
  hatch: string;
  line: number;
  thin: number;
  dash: number[];
}

/** A piece of a hatch that repeats: mm wide and high; strokes are weight in mm and x, y, x, y, ... in mm. */
export interface Tile {
  size: Pair;
  strokes: [number, number[]][];
}

/** A part. Levels in metres against TOF; `lift` is how far it rises when all stands apart. */
export interface Part {
  id: string;
  role: string;
  look: number;
  name: Words;
  full: Words;
  size: Words;
  material: Words;
  volume: Words;
  level: [string, string];
  elevation: [Words, Words];
  lift: number;
  from: number;
  whole: number;
  partTop: number | null;
  earth: boolean;
  only_cut: boolean;
  thin: boolean;
  mesh: MeshHead;
}

/** A part's mesh: the name of its shape, its counts, and per axis origin and step, metres. */
export interface MeshHead {
  shape: string;
  vertices: number;
  faces: number;
  low: Spot;
  step: Spot;
}

export interface Stage {
  title: Words;
  look: number;
  parts: string[];
  lines: Words[];
  shots: { name: Words; level: Words; rod: Words }[];
  holds: Words[];
  cautions: Words[];
}

export interface Level {
  name: Words;
  z: number;
  text: string;
  main: boolean;
}

export interface NamedCut {
  name: Words;
  start: Pair;
  end: Pair;
}

export interface Side {
  name: Words;
  start: Pair;
  end: Pair;
}

export interface Model {
  format: number;
  name: string;
  system: "ft-in" | "metric";
  languages: { code: string; name: string }[];
  words: Record<string, Record<string, string>>;
  looks: Look[];
  tiles: Record<string, Tile>;
  parts: Part[];
  stages: Stage[];
  levels: Level[];
  cuts: NamedCut[];
  sides: Side[];
  low: { at: Spot; away: Pair } | null;
  /** Packed shapes by their names, which tell their content. */
  shapes: Record<string, string>;
}
