// The plan to be edited: pointer and keys. One message for each edit, when it is done.

// Pixels: what is a tap and no drag; how near a neighbour's level or plumb line catches.
const TAP = 4;
const CATCH = 7;
const PAUSE = 450; // ms after the last arrow key before the move is told
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

export default function (component) {
  const { parentElement, data } = component;
  const planner = (parentElement.planner ??= new Planner(parentElement));
  planner.take(component, data);
  return () => planner.leave();
}

class Planner extends Labels {
  constructor(root) {
    super();
    const find = (name) => root.querySelector(name);
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
    // Another outline than the one a corner was chosen on.
    const count = (from) => from?.areas[from.area].corners.length;
    if (!answered && count(this.data) !== count(data)) this.chosen = null;
    this.data = data;
    if (this.chosen && !this.origin(this.chosen)) this.chosen = null;
    if (answered && !this.waiting) this.wish = null;
    if (answered) this.drafts = new Map(data.refused ? [[data.refused.side, data.refused.words]] : []);
    if (this.held) return;
    this.draw();
    if (answered && this.wanted) {
      this.shown.get(this.wanted)?.focus();
      this.wanted = null;
    }
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
    const on = grip(this.draft.getRootNode().elementFromPoint(event.clientX, event.clientY));
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
}
