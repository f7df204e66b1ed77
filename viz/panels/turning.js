// Hangs the viewer's page in a frame, and hands it each model with the shapes kept here.

// Characters of packed shapes to keep; a house has about half a million.
const ROOM = 12e6;

export default function (component) {
  const desk = (globalThis[Symbol.for("bedcourse turning")] ??= new Desk());
  const place = component.parentElement.querySelector(".turning");
  if (place) return desk.hang(place, component.data);
  desk.take(component);
}

class Desk {
  constructor() {
    this.shapes = new Map(); // packed shapes by name, the longest unused first
    this.count = 0; // messages so far: a slow one does not follow a later one
    this.told = null; // the last whole message
    this.theme = ""; // light or dark, as the frame was told
    this.kept = null; // what the visitor has chosen, for a frame made anew
    window.addEventListener("message", (event) => this.hear(event));
  }

  hang(place, { shell, height, words }) {
    place.style.height = `${height}px`;
    this.words = words;
    if (this.place !== place) {
      this.place = place;
      this.ready = this.shown = false;
      this.frame = document.createElement("iframe");
      this.frame.setAttribute("sandbox", "allow-scripts allow-modals");
      place.prepend(this.frame);
      this.say(words.building);
      const frame = this.frame;
      const bytes = Uint8Array.from(atob(shell), (letter) => letter.charCodeAt(0));
      unpacked(bytes).then((text) => {
        frame.srcdoc = text;
      });
    } else if (this.theme !== theme(place)) {
      this.post();
    }
    this.frame.title = words.title;
    return () => {
      if (this.place === place && !place.isConnected) this.place = this.frame = null;
    };
  }

  async take(component) {
    if (same(component.data, this.data)) return;
    const number = ++this.count;
    this.data = component.data;
    const told = JSON.parse(await unpacked(component.data));
    this.keep(told.model.shapes);
    if (number !== this.count) return;
    const names = [...new Set(told.model.parts.map((part) => part.mesh.shape))];
    const missing = names.filter((name) => !this.shapes.has(name));
    if (missing.length) {
      this.data = null; // the answer may be the very same
      component.setTriggerValue("missing", missing);
      return;
    }
    const wanted = Object.fromEntries(names.map((name) => [name, this.shapes.get(name)]));
    this.keep(wanted);
    this.told = { model: { ...told.model, shapes: wanted }, language: told.language };
    this.post();
  }

  keep(shapes) {
    for (const [name, text] of Object.entries(shapes)) {
      this.shapes.delete(name);
      this.shapes.set(name, text);
    }
    let full = [...this.shapes.values()].reduce((sum, text) => sum + text.length, 0);
    for (const [name, text] of this.shapes) {
      if (full <= ROOM) break;
      this.shapes.delete(name);
      full -= text.length;
    }
  }

  post() {
    if (!this.told || !this.ready || !this.place) return;
    const { model, language } = this.told;
    const recall = this.shown ? undefined : this.kept;
    this.theme = theme(this.place);
    const dress = { language, theme: this.theme };
    this.frame.contentWindow.postMessage({ bedcourse: "load", model, dress, recall }, "*");
  }

  hear(event) {
    const said = event.data?.bedcourse;
    if (!said || !this.frame || event.source !== this.frame.contentWindow) return;
    if (said.kept) this.kept = said.kept;
    if (said.failed) this.say(this.words.cannot);
    if (said.shown !== undefined) {
      this.shown = true;
      this.say("");
    }
    if (said.ready) {
      this.ready = true;
      this.post();
    }
  }

  say(words) {
    const line = this.place.querySelector("p");
    line.hidden = !words;
    if (words) line.textContent = words;
  }
}

// Whether the page around the frame is light or dark, by the ground it stands on.
function theme(place) {
  const brush = document.createElement("canvas").getContext("2d");
  if (!brush) return "auto";
  brush.fillStyle = "#fff";
  brush.fillStyle = getComputedStyle(place).getPropertyValue("--st-background-color").trim();
  const tone = Number.parseInt(brush.fillStyle.slice(1), 16);
  const bright = 0.3 * (tone >> 16) + 0.6 * ((tone >> 8) & 255) + 0.1 * (tone & 255);
  return bright < 110 ? "dark" : "light";
}

function same(one, other) {
  return one === other || (one.length === other?.length && one.every((byte, n) => byte === other[n]));
}

function unpacked(bytes) {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Response(stream).text();
}
