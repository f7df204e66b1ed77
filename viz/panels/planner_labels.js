// The fields with the sides' lengths, and what is said under the plan.

class Labels extends Drawing {
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
    this.walls = sides.map((n) => this.ends(n).map((p) => this.spot(p)));
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
        const walls = this.walls.reduce((sum, wall) => sum + covered(wall, place), 0);
        const cost = this.overlap(place) + 40 * walls + 20 * Math.hypot(place.x - x, place.y - y);
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

// How much of a wall, pixels, a box would cover.
function covered([[ax, ay], [bx, by]], { x, y, wide, tall }) {
  let [start, end] = [0, 1];
  for (const [from, run, middle, half] of [[ax, bx - ax, x, wide / 2], [ay, by - ay, y, tall / 2]]) {
    if (Math.abs(run) < 1e-9) {
      if (Math.abs(from - middle) > half) return 0;
      continue;
    }
    const cuts = [(middle - half - from) / run, (middle + half - from) / run];
    start = Math.max(start, Math.min(...cuts));
    end = Math.min(end, Math.max(...cuts));
  }
  return Math.max(0, end - start) * Math.hypot(bx - ax, by - ay);
}
