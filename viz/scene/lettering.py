"""Words and leaders drawn onto a finished picture with Pillow."""

from collections.abc import Iterable
from functools import cache

from PIL import Image, ImageDraw, ImageFont

from viz.drawing.fonts import font_file
from viz.scene.callouts import Callout
from viz.scene.palette import INK, PAPER
from viz.scene.view import Size

SOFT = (84, 88, 90)
EDGE = 0.6  # from the picture's edge to the words, and from the words to the leader, letters
Row = tuple[str, bool]
Font = ImageFont.FreeTypeFont | ImageFont.ImageFont


def letter_height(size: Size) -> int:
    """Height of letters that can still be read when the picture is as wide as a phone, pixels."""
    return max(13, round(min(size[0] / 46, size[1] / 28)))


def room(height: float, lines: int) -> float:
    """The height one label of so many lines takes in its column, pixels."""
    return height * (1.25 * lines + 0.5)


def rows(text: str, height: int, limit: float) -> tuple[Row, ...]:
    """A label's lines, bold the name, plain what follows a line break, none wider than limit.

    A single word wider than the limit stands alone.
    """
    found: list[Row] = []
    for number, line in enumerate(text.split("\n")):
        bold = number == 0
        words = line.split()
        while words:
            count = max(
                (n for n in range(1, len(words) + 1) if _wide(words[:n], bold, height) <= limit),
                default=1,
            )
            found.append((" ".join(words[:count]), bold))
            words = words[count:]
    return tuple(found)


def width(labels: Iterable[tuple[Row, ...]], height: int) -> float:
    """The width of a column that holds the labels and the start of their leaders, pixels."""
    widest = max(
        (_wide([line], bold, height) for label in labels for line, bold in label), default=0.0
    )
    return widest + (2 * EDGE + 1.4) * height


def lettered(image: Image.Image, callouts: Iterable[Callout], height: int) -> Image.Image:
    """The picture with leaders and words on it."""
    pen = ImageDraw.Draw(image)
    placed = list(callouts)
    for callout in placed:
        _leader(pen, callout, image.size, height)
    for callout in placed:
        _words(pen, callout, image.size, height)
    return image


@cache
def _font(height: int, bold: bool) -> Font:
    """The project's own letters, or Pillow's where they are not there."""
    file = font_file(bold)
    return (
        ImageFont.truetype(str(file), height) if file.is_file() else ImageFont.load_default(height)
    )


def _wide(words: list[str], bold: bool, height: int) -> float:
    return float(_font(height, bold).getlength(" ".join(words)))


def _leader(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    thick = max(1, round(height / 16))
    reach = max(_wide([line], bold, height) for line, bold in callout.rows)
    rim = reach + 2 * EDGE * height
    x = rim if callout.side == "left" else size[0] - rim
    pen.line([(x, callout.middle), callout.spot], fill=PAPER, width=thick * 3)
    pen.line([(x, callout.middle), callout.spot], fill=INK, width=thick)
    dot, (a, b) = height * 0.17, callout.spot
    pen.ellipse([a - dot, b - dot, a + dot, b + dot], fill=INK, outline=PAPER, width=thick)


def _words(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    on_left = callout.side == "left"
    x = EDGE * height if on_left else size[0] - EDGE * height
    for number, (line, bold) in enumerate(callout.rows):
        y = callout.middle + (number - (len(callout.rows) - 1) / 2) * height * 1.25
        tone = INK if bold else SOFT
        pen.text((x, y), line, tone, _font(height, bold), anchor="lm" if on_left else "rm")
