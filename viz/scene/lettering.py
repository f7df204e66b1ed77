"""Words and leaders drawn onto a finished picture with Pillow."""

from collections.abc import Iterable
from pathlib import Path

from PIL import Image, ImageDraw, ImageFont

from viz.scene.callouts import Callout
from viz.scene.palette import INK, PAPER
from viz.scene.view import Size

FONTS = (
    Path(__file__).parents[2] / "assets" / "fonts",
    Path(__file__).parents[1] / "bundled" / "assets" / "fonts",
)
SOFT = (92, 96, 98)
Font = ImageFont.FreeTypeFont | ImageFont.ImageFont


def letter_height(size: Size) -> int:
    """Height of letters that can still be read when the picture is as wide as a phone, pixels."""
    return max(13, round(min(size[0] / 46, size[1] / 28)))


def font(height: int, bold: bool) -> Font:
    """The project's own letters, or Pillow's where they are not there."""
    name = "B612-Bold.ttf" if bold else "B612-Regular.ttf"
    for folder in FONTS:
        if (folder / name).is_file():
            return ImageFont.truetype(str(folder / name), height)
    return ImageFont.load_default(height)


def width(texts: Iterable[str], height: int) -> float:
    """The width of the widest label, pixels."""
    widest = 0.0
    for text in texts:
        for number, line in enumerate(text.split("\n")):
            widest = max(widest, font(height, number == 0).getlength(line))
    return widest


def lines(texts: Iterable[str]) -> int:
    """The most lines any label has."""
    return max((text.count("\n") + 1 for text in texts), default=1)


def room(height: float, lines: int) -> float:
    """The height one label of so many lines takes in its column, pixels."""
    return height * (1.25 * lines + 0.5)


def lettered(image: Image.Image, callouts: Iterable[Callout], height: int) -> Image.Image:
    """The picture with leaders and words on it."""
    pen = ImageDraw.Draw(image)
    for callout in callouts:
        _leader(pen, callout, image.size, height)
    for callout in callouts:
        _words(pen, callout, image.size, height)
    return image


def _leader(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    thick = max(1, round(height / 16))
    reach = max(
        pen.textlength(line, font(height, n == 0))
        for n, line in enumerate(callout.text.split("\n"))
    )
    rim = height * 0.6 + reach + height * 0.5
    x = rim if callout.side == "left" else size[0] - rim
    pen.line([(x, callout.middle), callout.spot], fill=PAPER, width=thick * 3)
    pen.line([(x, callout.middle), callout.spot], fill=INK, width=thick)
    dot, (a, b) = height * 0.17, callout.spot
    pen.ellipse([a - dot, b - dot, a + dot, b + dot], fill=INK, outline=PAPER, width=thick)


def _words(pen: ImageDraw.ImageDraw, callout: Callout, size: Size, height: int) -> None:
    rows = callout.text.split("\n")
    step = height * 1.25
    x = height * 0.6 if callout.side == "left" else size[0] - height * 0.6
    for number, row in enumerate(rows):
        y = callout.middle + (number - (len(rows) - 1) / 2) * step
        pen.text(
            (x, y), row, font=font(height, number == 0), fill=INK if number == 0 else SOFT,
            anchor="lm" if callout.side == "left" else "rm",
        )  # fmt: skip
