// The spot on the picture each part is pointed at, and on which side its label goes.
import type { Seen } from "./seen";

export interface Found {
  part: number;
  x: number;
  y: number;
  weight: number;
  cut: boolean;
  side: "left" | "right";
}

const LEAST = 14;
// Of a surface, not a cut face, more must be seen.
const LEAST_SEEN = 40;

/**
 * Return a spot for every part that is seen, in pixels of the page, the most seen first.
 * within: the band of the picture to point into. strict: into nothing else, all at the right.
 */
export function anchors(
  seen: Seen,
  parts: number,
  strict: boolean,
  within: readonly [number, number],
): Found[] {
  const pixels: number[][] = Array.from({ length: parts }, () => []);
  const cut: number[][] = Array.from({ length: parts }, () => []);
  seen.part.forEach((number, at) => {
    if (!number || number > parts) return;
    pixels[number - 1]!.push(at);
    if (seen.cut[at]) cut[number - 1]!.push(at);
  });
  const found: Found[] = [];
  for (let part = 0; part < parts; part++) {
    const faces = cut[part]!;
    const chosen = faces.length >= LEAST ? faces : pixels[part]!;
    if (chosen !== faces && chosen.length < LEAST_SEEN) continue;
    const near = chosen.filter((at) => inBand(seen, at, within));
    const best = near.length >= LEAST ? near : strict ? [] : chosen;
    if (best.length >= LEAST) found.push(pointed(seen, part, best, chosen === faces));
  }
  if (strict) for (const item of found) item.side = "right";
  else sided(found);
  for (const item of found) {
    const own = item.cut ? cut[item.part]! : pixels[item.part]!;
    const near = own.filter((at) => inBand(seen, at, within));
    move(seen, item, near.length >= LEAST ? near : own);
  }
  return found.sort((a, b) => Number(b.cut) - Number(a.cut) || b.weight - a.weight);
}

function inBand(seen: Seen, at: number, within: readonly [number, number]): boolean {
  const x = (at % seen.width) * seen.size;
  return x >= within[0] && x <= within[1];
}

function pointed(seen: Seen, part: number, pixels: number[], cut: boolean): Found {
  const x = pixels.reduce((sum, at) => sum + (at % seen.width), 0) / pixels.length;
  const y = pixels.reduce((sum, at) => sum + Math.floor(at / seen.width), 0) / pixels.length;
  return { part, x, y, weight: pixels.length, cut, side: "left" };
}

/** Halve the parts by where they lie. */
function sided(found: Found[]): void {
  const order = [...found].sort((a, b) => a.x - b.x);
  order.forEach((item, n) => {
    item.side = n < order.length / 2 ? "left" : "right";
  });
}

/** Point at the part's inside, towards its column. */
function move(seen: Seen, item: Found, pixels: number[]): void {
  const inside = pixels.filter((at) => surrounded(seen, at));
  const from = inside.length ? inside : pixels;
  const order = from.map((at) => at % seen.width).sort((a, b) => a - b);
  const share = item.side === "left" ? 0.2 : 0.8;
  const x = order[Math.floor(share * (order.length - 1))]!;
  const near = from.filter((at) => Math.abs((at % seen.width) - x) <= 2);
  near.sort((a, b) => a - b);
  const at = near[near.length >> 1]!;
  item.x = ((at % seen.width) + 0.5) * seen.size;
  item.y = (Math.floor(at / seen.width) + 0.5) * seen.size;
}

function surrounded(seen: Seen, at: number): boolean {
  const own = seen.part[at];
  const x = at % seen.width;
  if (x < 1 || x >= seen.width - 1) return false;
  return [at - 1, at + 1, at - seen.width, at + seen.width].every((n) => seen.part[n] === own);
}
