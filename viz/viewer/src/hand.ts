// Mouse, fingers and keys on the picture.
import type { Eye } from "./camera";

export interface Hand {
  moved(): void;
  tapped(x: number, y: number): void;
  left(): void;
  home(): void;
  face(): void;
}

const TAP = 6;
const TURN = 0.35;
const STEP = 7.5;

interface Finger {
  x: number;
  y: number;
}

/** Turn, move and zoom with pointers. One finger turns; two zoom and move. */
export function pointers(canvas: HTMLElement, eye: Eye, hand: Hand): void {
  const down = new Map<number, Finger>();
  let walked = 0;
  const place = (event: PointerEvent | WheelEvent): Finger => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    down.set(event.pointerId, place(event));
    walked = down.size > 1 ? TAP + 1 : 0;
  });
  canvas.addEventListener("pointermove", (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = place(event);
    walked += Math.hypot(now.x - before.x, now.y - before.y);
    if (down.size > 1) pinch(eye, down, event.pointerId, now);
    else drag(eye, before, now, event.buttons > 1 || event.shiftKey);
    down.set(event.pointerId, now);
    if (walked > TAP) hand.moved();
  });
  const up = (event: PointerEvent) => {
    if (!down.delete(event.pointerId) || event.type === "pointercancel") return;
    if (walked <= TAP && event.button === 0) {
      const { x, y } = place(event);
      hand.tapped(x, y);
    }
  };
  canvas.addEventListener("pointerup", up);
  canvas.addEventListener("pointercancel", up);
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      const { x, y } = place(event);
      const lines = event.deltaMode === 1 ? 30 : 1;
      eye.zoom(Math.exp(Math.max(-0.5, Math.min(0.5, event.deltaY * lines * 0.0015))), x, y);
      hand.moved();
    },
    { passive: false },
  );
}

function drag(eye: Eye, before: Finger, now: Finger, move: boolean): void {
  const [dx, dy] = [now.x - before.x, now.y - before.y];
  if (move) eye.pan(dx, dy);
  else eye.put({ round: eye.stand.round - dx * TURN, down: eye.stand.down + dy * TURN });
}

function pinch(eye: Eye, down: Map<number, Finger>, id: number, now: Finger): void {
  const before = down.get(id)!;
  const other = [...down].find(([key]) => key !== id)![1];
  const apart = (a: Finger, b: Finger) => Math.max(10, Math.hypot(a.x - b.x, a.y - b.y));
  const middle = { x: (other.x + now.x) / 2, y: (other.y + now.y) / 2 };
  eye.pan((now.x - before.x) / 2, (now.y - before.y) / 2);
  eye.zoom(apart(before, other) / apart(now, other), middle.x, middle.y);
}

/** Turn, move and zoom with keys. */
export function keys(canvas: HTMLElement, eye: Eye, hand: Hand): void {
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = action(event, eye, hand);
    if (!act) return;
    event.preventDefault();
    act();
    hand.moved();
  });
}

function action(event: KeyboardEvent, eye: Eye, hand: Hand): (() => void) | undefined {
  const { round, down } = eye.stand;
  const move = event.shiftKey;
  const steps: Record<string, () => void> = {
    ArrowLeft: () => (move ? eye.pan(40, 0) : eye.put({ round: round - STEP })),
    ArrowRight: () => (move ? eye.pan(-40, 0) : eye.put({ round: round + STEP })),
    ArrowUp: () => (move ? eye.pan(0, 40) : eye.put({ down: down + STEP })),
    ArrowDown: () => (move ? eye.pan(0, -40) : eye.put({ down: down - STEP })),
    "+": () => eye.zoom(1 / 1.2),
    "=": () => eye.zoom(1 / 1.2),
    "-": () => eye.zoom(1.2),
    Home: () => hand.home(),
    f: () => hand.face(),
    Escape: () => hand.left(),
  };
  return steps[event.key];
}
