"""Words and leaders drawn onto a finished picture with Pillow."""

import math
from collections.abc import Iterable
from functools import cache, lru_cache

from PIL import Image, ImageDraw, ImageFont

from viz.drawing.fonts import font_file, unbroken
from viz.scene.callouts import Callout, Spot
from viz.scene.palette import INK, PAPER
from viz.scene.view import Size

SOFT = (84, 88, 90)
EDGE = 0.5  # from the picture's edge to the words, and from the words to the leader, letters
RUN = 0.7  # the level start of the widest label's leader, letters
CLEAR = 1.1  # from where leaders turn to the picture, letters
LINE = 1.25  # from one line to the next, letters
PAD = 0.25  # above and below a label, letters
SMALLEST = 16  # pixels
TITLE = 1.5  # letters of a title, as many times as high
Row = tuple[str, bool]
Font = ImageFont.FreeTypeFont | ImageFont.ImageFont


def letter_height(size: Size) -> int:
    """Height of letters that can still be read when the picture is as wide as a phone, pixels."""
    return max(SMALLEST, round(math.sqrt(size[0] * size[1]) / 57))


def room(height: float, lines: int) -> float:
    """The height one label of so many lines takes in its column, pixels."""
    return height * (LINE * lines + 2 * PAD)


def drop(height: float) -> float:
    """From a label's upper edge to the middle of its first line, pixels."""
    return height * (PAD + LINE / 2)


def rows(text: str, height: int, limit: float) -> tuple[Row, ...]:
    """A label's lines, bold the name, plain what follows a line break, none wider than limit.

    A single word wider than the limit stands alone.
    """
    found: list[Row] = []
    for number, line in enumerate(text.split("\n")):
        bold = number == 0
        found += [(piece, bold) for piece in _evened(line, bold, height, limit)]
    return tuple(found)


def _evened(line: str, bold: bool, height: int, limit: float) -> list[str]:
    """A line broken into as few pieces as the limit asks, about as long as each other."""
    few = len(_broken(line, bold, height, limit))
    tried = (_broken(line, bold, height, limit * tenths / 10) for tenths in range(4, 11))
    return next(pieces for pieces in tried if len(pieces) == few)


def _broken(line: str, bold: bool, height: int, limit: float) -> list[str]:
    """A line broken at words, each piece as long as the limit allows."""
    found, words = [], unbroken(line)
    while words:
        count = max(
            (
                n
                for n in range(1, len(words) + 1)
                if _wide(" ".join(words[:n]), bold, height) <= limit
            ),
            default=1,
        )
        found.append(" ".join(words[:count]))
        words = words[count:]
    return found


def bend(labels: Iterable[tuple[Row, ...]], height: int) -> float:
    """From the picture's edge to where a column's leaders turn, past its widest label, pixels."""
    widest = max(
        (_wide(line, bold, height) for label in labels for line, bold in label), default=0.0
    )
    return widest + (2 * EDGE + RUN) * height


def width(labels: Iterable[tuple[Row, ...]], height: int) -> float:
    """The width of a column that holds the labels and the start of their leaders, pixels."""
    return bend(labels, height) + CLEAR * height


def leader(callout: Callout, size: Size, height: int) -> tuple[Spot, Spot, Spot]:
    """From the end of the label's first line, level to the bend, then to the spot."""
    line, bold = callout.rows[0]
    reach = _wide(line, bold, height) + 2 * EDGE * height
    x = reach if callout.side == "left" else size[0] - reach
    return (x, callout.port[1]), callout.port, callout.spot


def boxes(callout: Callout, size: Size, height: int) -> list[tuple[float, float, float, float]]:
    """The space each line of a label takes: left, top, right, bottom."""
    found = []
    for number, (line, bold) in enumerate(callout.rows):
        near, far = EDGE * height, EDGE * height + _wide(line, bold, height)
        middle = callout.port[1] + number * LINE * height
        left, right = (near, far) if callout.side == "left" else (size[0] - far, size[0] - near)
        found.append((left, middle - LINE / 2 * height, right, middle + LINE / 2 * height))
    return found


def lettered(image: Image.Image, callouts: Iterable[Callout], height: int) -> Image.Image:
    """The picture with leaders and words on it."""
    pen = ImageDraw.Draw(image)
    placed = list(callouts)
    for callout in placed:
        _leader(pen, callout, image.size, height)
    for callout in placed:
        _words(pen, callout, image.size, height)
    return image


def headed(image: Image.Image, title: str, edge: float, height: int) -> None:
    """Write a title at the picture's upper left; smaller where it would not fit."""
    tall = round(TITLE * height)
    while tall > SMALLEST and _wide(title, True, tall) > image.size[0] - 2 * edge:
        tall -= 1
    spot = (max(edge, EDGE * height), edge + TITLE * height / 2)
    ImageDraw.Draw(image).text(spot, title, INK, _font(tall, True), anchor="lm")


@cache
def _font(height: int, bold: bool) -> Font:
    """The project's own letters, or Pillow's where they are not there."""
    file = font_file(bold)
    return (
        ImageFont.truetype(str(file), height) if file.is_file() else ImageFont.load_default(height)
    )


@lru_cache(4096)
def _wide(words: str, bold: bool, height: int) -> float:
    return float(_font(height, bold).getlength(words))


def _leader(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    thick = max(1, round(height / 16))
    path = leader(callout, size, height)
    pen.line(path, fill=PAPER, width=thick * 3, joint="curve")
    pen.line(path, fill=INK, width=thick, joint="curve")
    dot, (a, b) = height * 0.17, callout.spot
    pen.ellipse([a - dot, b - dot, a + dot, b + dot], fill=INK, outline=PAPER, width=thick)


def _words(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    on_left = callout.side == "left"
    lines = zip(callout.rows, boxes(callout, size, height), strict=True)
    for (line, bold), (left, top, right, bottom) in lines:
        spot = (left if on_left else right, (top + bottom) / 2)
        tone = INK if bold else SOFT
        pen.text(spot, line, tone, _font(height, bold), anchor="lm" if on_left else "rm")
