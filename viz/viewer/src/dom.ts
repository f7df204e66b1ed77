// Small helpers for the page's elements.

type Child = Node | string | null | undefined;
type Values = Record<string, string | number | boolean | ((event: Event) => void)>;

/** Make an element: attributes, listeners as `onclick`, children. */
export function el<K extends keyof HTMLElementTagNameMap>(
  name: K,
  values: Values = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(values)) {
    if (typeof value === "function") made.addEventListener(key.slice(2), value);
    else if (value === true) made.setAttribute(key, "");
    else if (value !== false) made.setAttribute(key, String(value));
  }
  made.append(...children.filter((child): child is Node | string => child != null));
  return made;
}

/** Make an element of a drawing. */
export function svg(name: string, values: Record<string, string | number>): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(values)) made.setAttribute(key, String(value));
  return made;
}
