// What the plan editor draws. Places are metres of the job, y up; the screen's are pixels, y down.
// Elements are kept by their keys, so that what has the focus keeps it.

const SVG = "http://www.w3.org/2000/svg";
const DOT = 10;
const PLUS = 8;
const SHORTEST_WITH_PLUS = 58;
const INCH = 0.0254;
const SAME = 1e-3;

class Drawing {
  say(name, values = {}) {
    return this.data.words[name].replace(/\{(\w+)\}/g, (_, key) => values[key] ?? "");
  }

  // What is drawn: the text's places, with the one that is being moved.

  get corners() {
    return this.data.areas[this.data.area].corners;
  }

  get piers() {
    return this.data.areas[this.data.area].piers;
  }

  origin({ kind, number }) {
    if (kind === "corner") return this.corners[number];
    return kind === "pier" ? this.piers[number]?.at : this.data.pit?.at;
  }

  place(kind, number) {
    const wish = this.wish;
    if (wish && wish.kind === kind && wish.number === number) return wish.at;
    return this.origin({ kind, number });
  }

  ring(area) {
    const home = area === this.data.area;
    const wish = this.wish?.kind === "corner" ? this.wish : null;
    const from = wish && this.corners[wish.number];
    return this.data.areas[area].corners.map((corner, n) => {
      if (home) return this.place("corner", n);
      return from && corner && apart(from, corner) < SAME ? wish.at : corner;
    });
  }

  // The frame: the chosen area with room for its labels around it.

  fit() {
    const wide = this.plan.clientWidth || 600;
    const places = [...this.corners, ...this.piers.map((p) => p.at)].filter(Boolean);
    if (places.length === 0) places.push([0, 0], [10, 10]);
    const [xs, ys] = [0, 1].map((axis) => places.map((p) => p[axis]));
    const [west, east] = [Math.min(...xs), Math.max(...xs)];
    const [south, north] = [Math.min(...ys), Math.max(...ys)];
    const [beside, over] = [wide < 520 ? 72 : 96, 46];
    const tallest = Math.min(Math.max(wide * 0.85, 280), 560);
    const across = (wide - 2 * beside) / Math.max(east - west, 0.5);
    const up = (tallest - 2 * over) / Math.max(north - south, 0.5);
    const scale = Math.min(across, up);
    const tall = (north - south) * scale + 2 * over;
    const left = (wide - (east - west) * scale) / 2;
    this.frame = { wide, tall, scale, left, west, north, over };
    this.draft.setAttribute("viewBox", `0 0 ${wide} ${tall}`);
    this.draft.setAttribute("height", tall);
  }

  spot([x, y]) {
    const { scale, left, west, north, over } = this.frame;
    return [left + (x - west) * scale, over + (north - y) * scale];
  }

  here(event) {
    const { scale, left, west, north, over } = this.frame;
    const box = this.draft.getBoundingClientRect();
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    return [west + (x - left) / scale, north - (y - over) / scale];
  }

  draw() {
    if (!this.data) return;
    if (!this.held) this.fit();
    this.fresh = new Set();
    this.boxes = [];
    this.plan.setAttribute("aria-label", this.say("plan", { area: this.data.areas[this.data.area].name }));
    this.plan.classList.toggle("held", Boolean(this.held?.dragged));
    this.data.areas.forEach((area, n) => n === this.data.area || this.other(area, n));
    this.room();
    this.scaleBar();
    this.north();
    if (this.data.pit?.at) this.spotGrip("pit", 0, this.data.pit);
    this.piers.forEach((pier, n) => pier.at && this.spotGrip("pier", n, pier));
    this.drawGuides();
    const ring = this.ring(this.data.area);
    ring.forEach((at, n) => at && this.adding(n));
    ring.forEach((at, n) => at && this.cornerGrip(n, at));
    for (const [key, element] of this.shown) {
      if (!this.fresh.has(key)) {
        element.remove();
        this.shown.delete(key);
      }
    }
    this.label();
    this.tellState();
  }

  put(key, home, kind, attributes, words) {
    let element = this.shown.get(key);
    if (!element) {
      element = document.createElementNS(SVG, kind);
      this.shown.set(key, element);
      (typeof home === "string" ? this.draft.querySelector(`.${home}`) : home).append(element);
    }
    for (const [name, value] of Object.entries(attributes)) {
      if (element.getAttribute(name) !== String(value)) element.setAttribute(name, value);
    }
    if (words !== undefined && element.textContent !== words) element.textContent = words;
    this.fresh.add(key);
    return element;
  }

  other(area, n) {
    const places = this.ring(n).filter(Boolean).map((p) => this.spot(p));
    if (places.length < 2) return;
    this.put(`other:${n}`, "others", "polygon", { points: places.join(" ") });
    const { wide, tall } = this.frame;
    const [xs, ys] = [0, 1].map((axis) => places.map((p) => p[axis]));
    const x = (Math.max(Math.min(...xs), 0) + Math.min(Math.max(...xs), wide)) / 2;
    const y = (Math.max(Math.min(...ys), 0) + Math.min(Math.max(...ys), tall)) / 2;
    if (x > 30 && x < wide - 30 && y > 12 && y < tall - 12) {
      this.put(`name:${n}`, "signs", "text", { x, y }, area.name);
    }
  }

  room() {
    const ring = this.ring(this.data.area);
    const points = ring.filter(Boolean).map((p) => this.spot(p)).join(" ");
    const open = ring.some((p) => !p) ? "open" : "";
    this.put("room", "room", "polygon", { points, class: open });
  }

  scaleBar() {
    const { scale, tall } = this.frame;
    const unit = this.data.metric ? 1 : 12 * INCH;
    const count = [1, 2, 5, 10, 20, 50, 100].find((n) => n * unit * scale >= 44) ?? 200;
    const [x, y, end] = [10, tall - 9, 10 + count * unit * scale];
    this.put("bar", "signs", "line", { x1: x, y1: y, x2: end, y2: y });
    this.put("bar0", "signs", "line", { x1: x, y1: y - 4, x2: x, y2: y + 4 });
    this.put("bar1", "signs", "line", { x1: end, y1: y - 4, x2: end, y2: y + 4 });
    const words = `${count} ${this.data.metric ? "m" : "ft"}`;
    this.put("bar words", "signs", "text", { x: end + 18, y }, words);
    this.boxes.push({ x: (x + end) / 2 + 14, y, wide: end - x + 40, tall: 14 });
  }

  north() {
    const { wide, tall } = this.frame;
    const turn = (this.data.north * Math.PI) / 180;
    const [x, y, dx, dy] = [wide - 22, tall - 24, Math.sin(turn), -Math.cos(turn)];
    const [tip, tail] = [[x + 11 * dx, y + 11 * dy], [x - 11 * dx, y - 11 * dy]];
    const wing = (side) => [tip[0] - 7 * dx - side * 4 * dy, tip[1] - 7 * dy + side * 4 * dx];
    this.put("north", "signs", "line", { x1: tail[0], y1: tail[1], x2: tip[0], y2: tip[1] });
    this.put("north tip", "signs", "path", { d: `M${wing(1)}L${tip}L${wing(-1)}Z` });
    const at = { x: x + 18 * dx, y: y + 18 * dy };
    this.put("north word", "signs", "text", at, this.say("north"));
    this.boxes.push({ x, y, wide: 40, tall: 44 });
  }

  spotGrip(kind, number, spot) {
    const at = this.place(kind, number);
    const [x, y] = this.spot(at);
    const [wide, tall] = spot.size.map((v) => Math.max(v * this.frame.scale, 12));
    const name = kind === "pit" ? this.say("pit name") : spot.name;
    const g = this.grip(kind, number, "spots", this.say(kind, { name, ...this.words(at) }));
    const key = keyOf({ kind, number });
    const r = Math.max(wide, tall) / 2;
    this.put(`${key} hit`, g, "circle", { class: "hit", cx: x, cy: y, r: Math.max(r, hand()) });
    this.put(`${key} ring`, g, "circle", { class: "ring", cx: x, cy: y, r: r * 1.42 + 3 });
    if (kind === "pit") this.put(`${key} dot`, g, "circle", { class: "dot", cx: x, cy: y, r });
    else {
      const box = { x: x - wide / 2, y: y - tall / 2, width: wide, height: tall };
      this.put(`${key} dot`, g, "rect", { class: "dot", ...box });
    }
    this.put(`${key} name`, g, "text", { x, y: y + tall / 2 + 9 }, name);
    this.boxes.push({ x, y: y + 6, wide, tall: tall + 14 });
  }

  grip(kind, number, home, words) {
    const chosen = this.chosen?.kind === kind && this.chosen.number === number;
    return this.put(keyOf({ kind, number }), home, "g", {
      class: `grip ${kind}${chosen ? " chosen" : ""}`,
      "data-grip": keyOf({ kind, number }),
      tabindex: 0,
      role: "button",
      "aria-pressed": chosen,
      "aria-label": words,
    });
  }

  cornerGrip(number, at) {
    const [cx, cy] = this.spot(at);
    const words = this.say("corner", { n: number + 1, ...this.words(at) });
    const g = this.grip("corner", number, "corners", words);
    const key = keyOf({ kind: "corner", number });
    this.put(`${key} hit`, g, "circle", { class: "hit", cx, cy, r: hand() });
    this.put(`${key} ring`, g, "circle", { class: "ring", cx, cy, r: DOT + 4 });
    this.put(`${key} dot`, g, "circle", { class: "dot", cx, cy, r: DOT });
    this.put(`${key} name`, g, "text", { x: cx, y: cy }, String(number + 1));
    this.boxes.push({ x: cx, y: cy, wide: 2 * DOT, tall: 2 * DOT });
  }

  adding(side) {
    const [a, b] = this.ends(side);
    if (!a || !b) return;
    const [[ax, ay], [bx, by]] = [a, b].map((p) => this.spot(p));
    if (Math.hypot(bx - ax, by - ay) < SHORTEST_WITH_PLUS || this.held?.dragged) return;
    const [cx, cy] = [(ax + bx) / 2, (ay + by) / 2];
    const spots = this.ring(this.data.area).filter(Boolean).map((p) => this.spot(p));
    if (spots.some((spot) => apart(spot, [cx, cy]) < DOT + PLUS + 4)) return;
    const key = keyOf({ kind: "add", number: side });
    const g = this.put(key, "adds", "g", {
      class: "add", "data-grip": key, tabindex: 0, role: "button",
      "aria-label": this.say("add", { n: side + 1 }),
    });
    this.put(`${key} hit`, g, "circle", { class: "hit", cx, cy, r: Math.min(hand(), 14) });
    this.put(`${key} ring`, g, "circle", { class: "ring", cx, cy, r: PLUS + 3 });
    this.put(`${key} dot`, g, "circle", { class: "dot", cx, cy, r: PLUS });
    this.put(`${key} sign`, g, "path", { d: `M${cx - 4},${cy}h8M${cx},${cy - 4}v8` });
    this.boxes.push({ x: cx, y: cy, wide: 2 * PLUS, tall: 2 * PLUS });
  }

  drawGuides() {
    const { wide, tall } = this.frame;
    (this.guides ?? []).forEach(([place, axis], n) => {
      const [x, y] = this.spot(place);
      const ends = axis ? { x1: 0, y1: y, x2: wide, y2: y } : { x1: x, y1: 0, x2: x, y2: tall };
      this.put(`guide:${n}`, "guides", "line", ends);
    });
  }
}

function keyOf({ kind, number }) {
  return `${kind}:${number}`;
}

function grip(target) {
  const found = target?.closest?.("[data-grip]")?.dataset.grip.split(":");
  return found ? { kind: found[0], number: Number(found[1]) } : null;
}

// How near a press takes hold: a finger needs more room than a mouse.
function hand() {
  return window.matchMedia("(pointer: coarse)").matches ? 20 : 14;
}

function apart(one, two) {
  return Math.hypot(one[0] - two[0], one[1] - two[1]);
}

// Twice the area of a ring on the screen; its sign says which way it runs.
function turning(ring) {
  return ring.reduce((sum, [x, y], n) => {
    const [tx, ty] = ring[(n + 1) % ring.length];
    return sum + x * ty - tx * y;
  }, 0);
}
