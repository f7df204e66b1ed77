// The plan on which a cut is chosen. Corners travel as metres of the job, y up.

const SVG = "http://www.w3.org/2000/svg";
// Pixels: what is a tap and no drag; how near to a corner a press takes hold of it.
const TAP = 6;
const HOLD = { mouse: 14, pen: 18, touch: 26 };
const END = 7;

export default function (component) {
  const { parentElement, data } = component;
  const chooser = (parentElement.chooser ??= new Chooser(parentElement));
  chooser.take(component, data);
  return () => chooser.leave();
}

class Chooser {
  constructor(root) {
    const find = (name) => root.querySelector(name);
    [this.plan, this.paper, this.over] = [".plan", ".paper", ".over"].map(find);
    [this.names, this.hint] = [".names", ".hint"].map(find);
    this.held = null; // what a pointer holds: where it was pressed, corners, number of the moved
    this.first = null; // the first of two tapped places
    this.over.onpointerdown = (e) => this.press(e);
    this.over.onpointermove = (e) => this.move(e);
    this.over.onpointerup = (e) => this.release(e);
    this.over.onpointercancel = () => this.drop();
    this.key = (e) => e.key === "Escape" && this.drop();
    this.watch = new ResizeObserver(() => this.draw());
    this.begin();
  }

  begin() {
    window.addEventListener("keydown", this.key);
    this.watch.observe(this.plan);
    this.listening = true;
  }

  leave() {
    window.removeEventListener("keydown", this.key);
    this.watch.disconnect();
    this.listening = false;
  }

  take(component, data) {
    if (!this.listening) this.begin();
    this.send = component.setTriggerValue;
    this.data = data;
    this.points = data.points;
    if (this.svg !== data.svg) {
      this.svg = data.svg;
      this.paper.innerHTML = data.svg;
      this.first = null;
      const [wide, tall] = data.size;
      this.plan.style.setProperty("--ratio", wide / tall);
      this.over.setAttribute("viewBox", `0 0 ${wide} ${tall}`);
    }
    if (!this.held) this.draw();
  }

  drop() {
    if (!this.held && !this.first) return;
    this.held = this.first = null;
    this.draw();
  }

  // Places: on the screen, on the picture, on the job.

  get pixel() {
    return this.data.size[0] / (this.over.getBoundingClientRect().width || 1);
  }

  here(event) {
    const box = this.over.getBoundingClientRect();
    const x = (event.clientX - box.left) * this.pixel;
    const y = this.data.size[1] - (event.clientY - box.top) * this.pixel;
    const { origin, perMetre } = this.data;
    return [(x - origin[0]) / perMetre, (y - origin[1]) / perMetre];
  }

  spot([x, y]) {
    const { origin, perMetre, size } = this.data;
    return [origin[0] + x * perMetre, size[1] - origin[1] - y * perMetre];
  }

  // The ends of a line as far as they can be seen: one off the picture lies on its edge.
  tips(points) {
    return [this.seen(points[0], points[1]), this.seen(points.at(-1), points.at(-2))];
  }

  seen(end, next) {
    const [one, two] = [this.spot(end), this.spot(next)];
    const edge = (END + 3) * this.pixel;
    let share = 0;
    for (const axis of [0, 1]) {
      const run = two[axis] - one[axis];
      const [least, most] = [edge, this.data.size[axis] - edge];
      if (run > 0) share = Math.max(share, (least - one[axis]) / run);
      if (run < 0) share = Math.max(share, (most - one[axis]) / run);
    }
    return share < 1 ? end.map((v, axis) => v + share * (next[axis] - v)) : end;
  }

  apart(one, two) {
    const [a, b] = [this.spot(one), this.spot(two)];
    return Math.hypot(a[0] - b[0], a[1] - b[1]) / this.pixel;
  }

  // The pointer.

  press(event) {
    if (this.held || event.button) return;
    event.preventDefault();
    this.over.setPointerCapture(event.pointerId);
    const at = this.here(event);
    const reach = HOLD[event.pointerType] ?? HOLD.mouse;
    const [first, last] = this.points.length > 1 ? this.tips(this.points) : [];
    const grip = (p, n) => (n === 0 ? first : n === this.points.length - 1 ? last : p);
    const near = this.points.map((p, n) => this.apart(grip(p, n), at));
    const corner = near.indexOf(Math.min(...near));
    const grips = !this.first && near.length > 0 && near[corner] <= reach;
    this.held = grips
      ? { at, corner, points: [...this.points], fresh: false }
      : { at, corner: 1, points: [at, at], fresh: true };
  }

  move(event) {
    if (!this.held) return;
    const at = this.here(event);
    this.held.dragged ||= this.apart(this.held.at, at) > TAP;
    if (!this.held.dragged) return;
    this.held.points[this.held.corner] = at;
    this.draw();
  }

  release(event) {
    if (!this.held) return;
    const { points, corner, dragged, fresh, at } = this.held;
    this.held = null;
    if (dragged) {
      points[corner] = this.here(event);
      this.say(points, corner, fresh);
    } else if (fresh && this.first) {
      this.say([this.first, at], 1, true);
    } else if (fresh) {
      this.first = at;
    }
    this.draw();
  }

  say(points, moved, fresh) {
    this.first = null;
    this.points = points;
    this.send("drawn", { points, moved, fresh });
  }

  // Drawing.

  draw() {
    if (!this.data) return;
    const shown = this.held?.dragged ? this.held.points : this.first ? [this.first] : this.points;
    const made = [];
    for (const cut of this.data.cuts) {
      if (cut.name !== this.data.chosen) made.push(this.path("named", cut.points));
    }
    if (shown.length > 1) {
      const [first, last] = this.tips(shown);
      made.push(this.path("halo", shown), this.path("line", shown));
      made.push(this.arrow(first, shown[1], first), this.arrow(shown.at(-2), last, last));
      made.push(...shown.slice(1, -1).map((p) => this.corner(p, true)));
      made.push(this.corner(first), this.corner(last));
    } else {
      made.push(...shown.map((p) => this.corner(p)));
    }
    this.over.replaceChildren(...made);
    this.over.classList.toggle("held", Boolean(this.held));
    const { words } = this.data;
    this.hint.textContent = this.first ? words.second : words.hint;
    this.paper.setAttribute("aria-label", words.plan);
    this.label();
  }

  path(kind, points) {
    const spots = points.map((p) => this.spot(p).join(","));
    return element("polyline", { class: kind, points: spots.join(" ") });
  }

  corner(point, inner) {
    const [cx, cy] = this.spot(point);
    const r = (inner ? END - 2 : END) * this.pixel;
    return element("circle", { class: inner ? "end jog" : "end", cx, cy, r });
  }

  // The way one looks: to the left of the way from the first place to the last.
  arrow(one, two, at) {
    const [[ax, ay], [bx, by], [x, y]] = [one, two, at].map((p) => this.spot(p));
    const far = Math.hypot(bx - ax, by - ay) || 1;
    const [ux, uy] = [((bx - ax) / far) * this.pixel, ((by - ay) / far) * this.pixel];
    const place = (along, left) => `${x + along * ux + left * uy},${y + along * uy - left * ux}`;
    const points = [place(-END, END), place(END, END), place(0, END + 11)].join(" ");
    return element("polygon", { class: "arrow", points });
  }

  // Names stand near the first end of their cut, or near its last where another name stands.
  label() {
    const taken = [];
    const buttons = this.data.cuts.map((cut) => {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = cut.title;
      button.setAttribute("aria-pressed", cut.name === this.data.chosen);
      button.onclick = () => this.send("named", cut.name);
      return button;
    });
    const had = [...this.names.children].indexOf(this.names.getRootNode().activeElement);
    this.names.replaceChildren(...buttons);
    buttons[had]?.focus();
    buttons.forEach((button, n) => {
      const { offsetWidth: wide, offsetHeight: tall } = button;
      const ways = [this.data.cuts[n].points, [...this.data.cuts[n].points].reverse()];
      const places = ways.map(([a, b]) => this.inward(a, b, wide, tall));
      const free = places.find((p) => taken.every((t) => clear(t, p))) ?? places[0];
      taken.push(free);
      button.style.left = `${free.x}px`;
      button.style.top = `${free.y}px`;
    });
  }

  // Beside a line that runs across, on one that runs up, clear of the end that can be held.
  inward(a, b, wide, tall) {
    const tip = this.seen(a, b);
    const [[ax, ay], [bx, by]] = [tip, b].map((p) => this.spot(p).map((v) => v / this.pixel));
    const far = Math.hypot(bx - ax, by - ay) || 1;
    const [ux, uy] = [(bx - ax) / far, (by - ay) / far];
    const within = (v, room, size) => Math.min(Math.max(v, size / 2 + 3), room - size / 2 - 3);
    const [x, y] = Math.abs(ux) > Math.abs(uy)
      ? [ax + ux * (END + 6 + wide / 2), ay - END - 2 - tall / 2]
      : [ax + ux * (END + 5 + tall / 2), ay + uy * (END + 5 + tall / 2)];
    const [width, height] = this.data.size.map((v) => v / this.pixel);
    return { x: within(x, width, wide), y: within(y, height, tall), wide, tall };
  }
}

function clear(one, two) {
  return (
    Math.abs(one.x - two.x) > (one.wide + two.wide) / 2 + 2 ||
    Math.abs(one.y - two.y) > (one.tall + two.tall) / 2 + 2
  );
}

function element(kind, attributes) {
  const made = document.createElementNS(SVG, kind);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
