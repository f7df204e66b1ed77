// The picture with its labels and levels as one image, for paper.

const LINE = 1.2;

/** Return the picture as it is shown, labels and all, on white. */
export function onPaper(frame: HTMLElement, canvas: HTMLCanvasElement): string {
  const box = frame.getBoundingClientRect();
  const scale = canvas.width / Math.max(1, box.width);
  const paper = document.createElement("canvas");
  paper.width = canvas.width;
  paper.height = canvas.height;
  const pen = paper.getContext("2d")!;
  pen.drawImage(canvas, 0, 0);
  pen.scale(scale, scale);
  const ink = getComputedStyle(frame).color;
  const ground = getComputedStyle(document.body).backgroundColor;
  for (const strip of frame.querySelectorAll<HTMLElement>(".ground")) fill(pen, strip, box, ground);
  for (const line of frame.querySelectorAll<SVGPolylineElement>("polyline:not(.halo)")) {
    pen.strokeStyle = ink;
    pen.lineWidth = LINE;
    pen.beginPath();
    for (const { x, y } of Array.from(line.points)) pen.lineTo(x, y);
    pen.stroke();
  }
  for (const words of frame.querySelectorAll<HTMLElement>(".label b, .label small, .numeral")) {
    fill(pen, words, box, ground);
    write(pen, words, box, ink);
  }
  for (const words of frame.querySelectorAll<HTMLElement>(".tape > div")) {
    write(pen, words, box, ink);
  }
  return paper.toDataURL("image/png");
}

function fill(
  pen: CanvasRenderingContext2D,
  element: HTMLElement,
  frame: DOMRect,
  tone: string,
): void {
  const at = element.getBoundingClientRect();
  pen.fillStyle = tone;
  pen.fillRect(at.left - frame.left, at.top - frame.top, at.width, at.height);
}

/** Write an element's words in its own type, broken where the page broke them. */
function write(
  pen: CanvasRenderingContext2D,
  element: HTMLElement,
  frame: DOMRect,
  ink: string,
): void {
  const style = getComputedStyle(element);
  pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  pen.fillStyle = ink;
  pen.textBaseline = "alphabetic";
  const at = element.getBoundingClientRect();
  const tall = Number.parseFloat(style.lineHeight) || 1.22 * Number.parseFloat(style.fontSize);
  let line = "";
  let y = at.top - frame.top + 0.78 * tall;
  for (const word of (element.textContent ?? "").split(" ")) {
    const longer = line ? `${line} ${word}` : word;
    if (line && pen.measureText(longer).width > at.width + 2 && at.height > 1.5 * tall) {
      pen.fillText(line, at.left - frame.left + 2, y);
      y += tall;
      line = word;
    } else line = longer;
  }
  pen.fillText(line, at.left - frame.left + 2, y, at.width);
}
