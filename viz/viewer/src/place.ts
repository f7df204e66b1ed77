// Places labels in two columns so that none covers another and no leaders cross.

export interface Anchor {
  x: number;
  y: number;
}

/** Where a label goes: its middle's height in the column. */
export interface Placed<T> {
  item: T;
  y: number;
}

/**
 * Spread items along a column: as near to their anchors as their heights allow, in an order that
 * keeps the leaders to `edge` from crossing. What does not fit is left out, the last first.
 */
export function column<T extends Anchor>(
  items: T[],
  edge: number,
  height: number,
  low: number,
  high: number,
): Placed<T>[] {
  const room = Math.max(0, Math.floor((high - low) / height));
  const kept = items.slice(0, room).sort((a, b) => a.y - b.y);
  const heights = spread(
    kept.map((item) => item.y),
    height,
    low + height / 2,
    high - height / 2,
  );
  uncross(kept, heights, edge);
  return kept.map((item, n) => ({ item, y: heights[n]! }));
}

/** Return places at least `gap` apart, in order, within bounds, as near as can be to those asked. */
export function spread(asked: number[], gap: number, low: number, high: number): number[] {
  // Neighbours that push each other move as one block, which stands at its mean.
  const blocks: { sum: number; count: number; start: number }[] = [];
  asked.forEach((want, n) => {
    blocks.push({ sum: want - n * gap, count: 1, start: 0 });
    while (blocks.length > 1 && mean(blocks.at(-2)!) > mean(blocks.at(-1)!)) {
      const last = blocks.pop()!;
      const before = blocks.at(-1)!;
      before.sum += last.sum;
      before.count += last.count;
    }
  });
  const most = high - (asked.length - 1) * gap;
  const found: number[] = [];
  for (const block of blocks) {
    const base = Math.max(low, Math.min(mean(block), most));
    for (let i = 0; i < block.count; i++) found.push(base + found.length * gap);
  }
  return found;
}

function mean({ sum, count }: { sum: number; count: number }): number {
  return sum / count;
}

/** Swap neighbours whose leaders cross until none do; each swap shortens the leaders. */
function uncross(items: Anchor[], heights: number[], edge: number): void {
  for (let round = 0; round < items.length * items.length; round++) {
    let swapped = false;
    for (let i = 0; i < items.length; i++) {
      for (let j = i + 1; j < items.length; j++) {
        if (!crosses(items[i]!, heights[i]!, items[j]!, heights[j]!, edge)) continue;
        [items[i], items[j]] = [items[j]!, items[i]!];
        swapped = true;
      }
    }
    if (!swapped) return;
  }
}

/** Whether the straight leaders of two labels on one edge cross. */
export function crosses(a: Anchor, ya: number, b: Anchor, yb: number, edge: number): boolean {
  const enda = { x: edge, y: ya };
  const endb = { x: edge, y: yb };
  return side(a, enda, b) * side(a, enda, endb) < 0 && side(b, endb, a) * side(b, endb, enda) < 0;
}

/** On which side of the line from p to q a place lies. */
function side(p: Anchor, q: Anchor, place: Anchor): number {
  return (q.x - p.x) * (place.y - p.y) - (q.y - p.y) * (place.x - p.x);
}
