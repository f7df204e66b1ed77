// The plan to be edited. Places travel as metres of the job, y up; one message for each edit.

const SVG = "http://www.w3.org/2000/svg";
// Pixels: what is a tap and no drag; how near a neighbour's level or plumb line catches.
const TAP = 4;
const CATCH = 7;
const DOT = 10;
const PLUS = 8;
const SHORTEST_WITH_PLUS = 58;
const PAUSE = 450; // ms after the last arrow key before the move is told
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const INCH = 0.0254;
const SAME = 1e-3;

export default function (component) {
  const { parentElement, data } = component;
  const planner = (parentElement.planner ??= new Planner(parentElement));
  planner.take(component, data);
  return () => planner.leave();
}

class Planner {
  constructor(root) {
    const find = (name) => root.querySelector(name);
    this.root = root;
    [this.plan, this.draft, this.fields] = [".plan", ".draft", ".sides"].map(find);
    [this.removal, this.hint] = [".remove", ".hint"].map(find);
    this.shown = new Map(); // drawn elements by their key
    this.inputs = new Map(); // fields by their side
    this.held = null; // what a pointer holds
    this.chosen = null; // kind and number of what the keys move
    this.wish = null; // a move that was told, or is about to be, and is not yet in the text
    this.draft.onpointerdown = (e) => this.press(e);
    this.draft.onpointermove = (e) => this.move(e);
    this.draft.onpointerup = (e) => this.release(e);
    this.draft.onpointercancel = () => this.drop();
    // A finger on a handle drags it; elsewhere on the plan it scrolls the page.
    const hold = (e) => grip(e.target) && e.preventDefault();
    this.draft.addEventListener("touchstart", hold, { passive: false });
    this.draft.onkeydown = (e) => this.key(e);
    this.draft.addEventListener("focusin", (e) => this.choose(grip(e.target)));
    this.draft.addEventListener("focusout", () => this.tell());
    this.removal.onclick = () => this.remove();
    this.watch = new ResizeObserver(() => this.held || this.draw());
    this.listen();
  }

  listen() {
    this.watch.observe(this.plan);
    this.listening = true;
  }

  leave() {
    clearTimeout(this.pause);
    this.watch.disconnect();
    this.listening = false;
  }

  take(component, data) {
    if (!this.listening) this.listen();
    this.send = component.setTriggerValue;
    const answered = !this.data || this.data.heard !== data.heard || this.data.area !== data.area;
    if (this.data && this.data.area !== data.area) this.chosen = this.held = null;
    this.data = data;
    if (answered && !this.waiting) this.wish = null;
    if (answered) this.drafts = new Map(data.refused ? [[data.refused.side, data.refused.words]] : []);
    if (this.held) return;
    this.draw();
    if (answered && this.wanted) {
      this.shown.get(this.wanted)?.focus();
      this.wanted = null;
    }
  }

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

  // The pointer.

  press(event) {
    const found = grip(event.target);
    if (this.held || event.button || !found) return;
    event.preventDefault();
    this.tell();
    this.draft.setPointerCapture(event.pointerId);
    this.held = { ...found, from: [event.clientX, event.clientY], start: this.here(event) };
    this.shown.get(keyOf(found))?.focus({ preventScroll: true });
    this.choose(found);
  }

  move(event) {
    const held = this.held;
    if (!held || held.kind === "add") return;
    const far = Math.hypot(event.clientX - held.from[0], event.clientY - held.from[1]);
    held.dragged ||= far > TAP;
    if (!held.dragged) return;
    const [at, origin] = [this.here(event), this.origin(held)];
    const wanted = origin.map((v, axis) => v + at[axis] - held.start[axis]);
    this.wish = { kind: held.kind, number: held.number, at: this.snapped(held, wanted) };
    this.draw();
  }

  release(event) {
    const held = this.held;
    if (!held) return;
    this.held = null;
    this.guides = [];
    const on = grip(this.root.elementFromPoint?.(event.clientX, event.clientY) ?? event.target);
    if (held.kind === "add" && on && keyOf(on) === keyOf(held)) this.add(held.number);
    if (held.dragged) {
      this.waiting = true;
      this.tell();
    }
    this.draw();
  }

  drop() {
    this.held = this.wish = null;
    this.waiting = false;
    this.guides = [];
    clearTimeout(this.pause);
    this.draw();
  }

  // A moved thing keeps to the step; a neighbour's level or plumb line, or a corner of another
  // area, catches it first.
  snapped(held, at) {
    const { step } = this.data;
    const near = CATCH / this.frame.scale;
    this.guides = [];
    if (held.kind === "corner") {
      const other = this.catching().find((p) => apart(p, at) < near);
      if (other) return other;
    }
    return at.map((v, axis) => {
      const line = this.beside(held).find((p) => Math.abs(p[axis] - v) < near);
      if (!line) return Math.round(v / step) * step;
      this.guides.push([line, axis]);
      return line[axis];
    });
  }

  beside({ kind, number }) {
    if (kind === "corner") {
      const count = this.corners.length;
      return [number - 1, number + 1].map((n) => this.corners[(n + count) % count]).filter(Boolean);
    }
    return this.piers.filter((p, n) => p.at && !(kind === "pier" && n === number)).map((p) => p.at);
  }

  catching() {
    const from = this.corners[this.held.number];
    const others = this.data.areas.filter((_, n) => n !== this.data.area);
    return others.flatMap((a) => a.corners).filter((p) => p && apart(p, from) >= SAME);
  }

  // The keyboard.

  key(event) {
    const found = grip(event.target);
    if (!found) return;
    const act = this.action(event, found);
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  }

  action(event, found) {
    const { key } = event;
    if (key === "Escape") return () => (this.held || this.wish ? this.drop() : this.forget(event));
    if (found.kind === "add") return key === "Enter" || key === " " ? () => this.add(found.number) : null;
    if (key in KEYS) return () => this.nudge(found, KEYS[key], event.shiftKey);
    if (found.kind !== "corner") return null;
    return key === "Delete" || key === "Backspace" ? () => this.remove() : null;
  }

  forget(event) {
    this.chosen = null;
    event.target.closest("[data-grip]").blur();
    this.draw();
  }

  nudge({ kind, number }, way, far) {
    const step = this.data.step * (far ? (this.data.metric ? 10 : 12) : 1);
    const at = this.place(kind, number).map((v, axis) => v + way[axis] * step);
    this.wish = { kind, number, at };
    this.waiting = true;
    clearTimeout(this.pause);
    this.pause = setTimeout(() => this.tell(), PAUSE);
    this.draw();
  }

  // Telling what was done: once, when it is done.

  tell() {
    clearTimeout(this.pause);
    if (!this.waiting || !this.wish || this.held) return;
    this.waiting = false;
    const { kind, number, at } = this.wish;
    const from = this.origin({ kind, number });
    if (!from || apart(from, at) < 1e-6) this.wish = null;
    else this.edit({ kind, number, at });
  }

  edit(what) {
    this.send("edited", { area: this.data.area, ...what });
  }

  add(side) {
    const [a, b] = this.ends(side);
    const { step } = this.data;
    const share = (axis) => (a[axis] + b[axis]) / 2;
    const level = [0, 1].map((axis) => Math.abs(a[axis] - b[axis]) < SAME);
    const at = [0, 1].map((axis) => (level[axis] ? a[axis] : share(axis)));
    if (level[0] || level[1]) at.forEach((v, axis) => level[axis] || (at[axis] = Math.round(v / step) * step));
    this.wanted = `corner:${side + 1}`;
    this.edit({ kind: "add", number: side, at });
  }

  remove() {
    if (this.chosen?.kind !== "corner") return;
    const { number } = this.chosen;
    this.drop();
    this.chosen = null;
    this.wanted = `corner:${Math.max(number - 1, 0)}`;
    this.edit({ kind: "remove", number });
  }

  typed(side, input) {
    const words = input.value.trim();
    if (!words || words === this.data.sides[side]) {
      this.drafts.delete(side);
      this.draw();
      return;
    }
    this.drafts.set(side, words);
    this.edit({ kind: "length", number: side, words });
  }

  choose(found) {
    if (!found || found.kind === "add") return;
    this.chosen = { kind: found.kind, number: found.number };
    this.draw();
  }

  ends(side) {
    return [side, (side + 1) % this.corners.length].map((n) => this.place("corner", n));
  }

  // Drawing. Elements are kept by their keys, so that what has the focus keeps it.

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
    this.named = { n, x, y, name: area.name };
    if (x > 30 && x < wide - 30 && y > 12 && y < tall - 12) {
      this.put(`name:${n}`, "others", "text", { x, y }, area.name);
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
    this.put("bar", "others", "line", { x1: x, y1: y, x2: end, y2: y });
    this.put("bar0", "others", "line", { x1: x, y1: y - 4, x2: x, y2: y + 4 });
    this.put("bar1", "others", "line", { x1: end, y1: y - 4, x2: end, y2: y + 4 });
    const words = `${count} ${this.data.metric ? "m" : "ft"}`;
    this.put("bar words", "others", "text", { x: end + 18, y }, words);
    this.boxes.push({ x: (x + end) / 2 + 14, y, wide: end - x + 40, tall: 14 });
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

  // Fields with the sides' lengths stand outside their sides, in the first place that is free.
  label() {
    const ring = this.ring(this.data.area);
    const out = turning(ring.filter(Boolean).map((p) => this.spot(p))) > 0 ? 1 : -1;
    const sides = ring.map((_, n) => n).filter((n) => this.ends(n).every(Boolean));
    for (const [n, input] of this.inputs) {
      if (!sides.includes(n)) {
        input.remove();
        this.inputs.delete(n);
      }
    }
    for (const n of sides) this.labelSide(n, out);
  }

  labelSide(n, out) {
    const input = this.inputs.get(n) ?? this.input(n);
    const [a, b] = this.ends(n);
    const focused = input.getRootNode().activeElement === input;
    const draft = this.drafts.get(n);
    const moving = this.wish?.kind === "corner";
    const length = moving ? this.length(apart(a, b)) : this.data.sides[n];
    if (!focused && input.value !== (draft ?? length)) input.value = draft ?? length;
    input.setAttribute("aria-label", this.say("side", { n: n + 1 }));
    input.setAttribute("aria-invalid", this.data.refused?.side === n && draft !== undefined);
    const wide = Math.max(input.value.length, 5) * 7.2 + 12;
    const tall = input.offsetHeight || 24;
    const place = this.free(this.spot(a), this.spot(b), out, { wide, tall });
    this.boxes.push({ ...place, wide, tall });
    Object.assign(input.style, { left: `${place.x}px`, top: `${place.y}px`, width: `${wide}px` });
  }

  free([ax, ay], [bx, by], out, { wide, tall }) {
    const far = Math.hypot(bx - ax, by - ay) || 1;
    const [nx, ny] = [(out * (by - ay)) / far, (-out * (bx - ax)) / far];
    const off = 11 + (Math.abs(nx) * wide + Math.abs(ny) * tall) / 2;
    let best = null;
    for (const way of [1, -1]) {
      for (const share of [0.5, 0.38, 0.62, 0.26, 0.74, 0.12, 0.88]) {
        const x = ax + share * (bx - ax) + way * off * nx;
        const y = ay + share * (by - ay) + way * off * ny;
        const place = this.within({ x, y, wide, tall });
        const cost = this.overlap(place) + Math.hypot(place.x - x, place.y - y) * 20;
        if (!best || cost < best.cost - 1) best = { ...place, cost };
        if (cost === 0) return place;
      }
    }
    return best;
  }

  within(box) {
    const keep = (v, size, room) => Math.min(Math.max(v, size / 2 + 2), room - size / 2 - 2);
    const { wide, tall } = this.frame;
    return { ...box, x: keep(box.x, box.wide, wide), y: keep(box.y, box.tall, tall) };
  }

  overlap(one) {
    const shared = (axis, size) => (two) =>
      Math.max(0, (one[size] + two[size]) / 2 + 1 - Math.abs(one[axis] - two[axis]));
    const [across, up] = [shared("x", "wide"), shared("y", "tall")];
    return this.boxes.reduce((sum, two) => sum + across(two) * up(two), 0);
  }

  input(side) {
    const input = document.createElement("input");
    input.type = "text";
    input.maxLength = 40;
    input.autocomplete = "off";
    input.spellcheck = false;
    input.onfocus = () => input.select();
    input.onkeydown = (event) => {
      event.stopPropagation();
      if (event.key === "Enter") input.blur();
      if (event.key === "Escape") {
        this.drafts.delete(side);
        input.value = this.data.sides[side];
        input.blur();
      }
    };
    input.onblur = () => this.typed(side, input);
    this.inputs.set(side, input);
    this.fields.append(input);
    return input;
  }

  tellState() {
    const { chosen } = this;
    const corner = chosen?.kind === "corner" && this.corners[chosen.number] ? chosen.number : null;
    const enough = this.corners.length > 3;
    this.removal.disabled = corner === null || !enough;
    this.removal.textContent =
      corner === null ? this.say("remove none") : this.say("remove", { n: corner + 1 });
    this.hint.textContent = this.state(chosen);
  }

  state(chosen) {
    const lost = this.corners.findIndex((c) => !c);
    const at = chosen && this.place(chosen.kind, chosen.number);
    if (!at) return lost >= 0 ? this.say("unread", { n: lost + 1 }) : this.say("hint");
    const name = chosen.kind === "pier" ? this.piers[chosen.number].name : "";
    const where = this.say(chosen.kind, { n: chosen.number + 1, name, ...this.words(at) });
    const step = this.length(this.data.step);
    return `${where}. ${this.say(chosen.kind === "corner" ? "chosen" : "moving", { step })}`;
  }

  words([x, y]) {
    return { x: this.length(x), y: this.length(y) };
  }

  // A length in the design's own units, as the tables print it.
  length(metres) {
    if (this.data.metric) return `${Math.round(metres * 10000) / 10} mm`;
    const count = Math.round((Math.abs(metres) / INCH) * 16);
    const sign = metres < 0 && count ? "-" : "";
    const feet = Math.floor(count / 192);
    const [whole, part] = [Math.floor((count % 192) / 16), count % 16];
    let [over, under] = [part, 16];
    while (over && over % 2 === 0) [over, under] = [over / 2, under / 2];
    const inches = part ? (feet || whole ? `${whole} ${over}/${under}` : `${over}/${under}`) : whole;
    return feet ? `${sign}${feet}'-${inches}"` : `${sign}${inches}"`;
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
