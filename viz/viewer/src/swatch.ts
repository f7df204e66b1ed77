// A patch of a material as it looks where it is cut: fill and hatch.
import type { Model } from "./model";
import { painted } from "./tiles";

const made = new Map<string, string>();

/** Paint an element's background with a material of the table. */
export function swatch(element: HTMLElement, model: Model, look: number): void {
  const found = model.looks[look]!;
  element.style.backgroundColor = found.fill;
  element.style.borderColor = found.ink;
  const tile = model.tiles[found.hatch];
  const name = `${found.fill} ${found.hatch}`;
  if (!made.has(name)) {
    made.set(name, painted(found, tile)?.toDataURL() ?? "");
  }
  const picture = made.get(name);
  if (picture && tile) {
    element.style.backgroundImage = `url(${picture})`;
    element.style.backgroundSize = tile.size.map((mm) => `${mm * 2.6}px`).join(" ");
  }
}
