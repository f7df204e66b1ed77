"""The few drawings that are kept as pictures, drawn anew, and how two pictures are compared."""

from collections.abc import Callable
from functools import cache
from io import BytesIO
from pathlib import Path

import numpy as np
from PIL import Image

from viz.carried import examples
from viz.drawing.page import Drawing, PaperName
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.job import job
from viz.sheets.permit import permit_set

FOLDER = Path(__file__).parent
DPI = 60
# Shades of grey a kept picture has.
SHADES = 16
# Mean difference of all dots, and share of dots that clearly differ, that are no change: letters
# and strokes are smoothed a little differently by another version of the renderer. Of 255, of 1.
MEAN, CLEAR, SHARE = 0.5, 64, 0.001


@cache
def _set(name: str, paper: PaperName) -> dict[str, Drawing]:
    work = job(examples()[name].read_text(encoding="utf-8"))
    return {sheet.number: sheet.drawing for sheet in permit_set(work, paper)}


KEPT: dict[str, Callable[[], Drawing]] = {
    "plan": lambda: _set("l-basement", "ANSI B")["S-101"],
    "detail": lambda: _set("metric-house", "A3")["S-501"],
    "drain": lambda: _set("l-basement", "ANSI B")["S-401"],
}


def drawn(name: str) -> Image.Image:
    """Draw a kept picture anew, in grey."""
    png = to_png(to_svg(KEPT[name]()), DPI)
    shades = Image.open(BytesIO(png)).convert("L").quantize(SHADES)
    return shades.convert("L")


def kept(name: str) -> Image.Image:
    """Read a kept picture."""
    return Image.open(FOLDER / f"{name}.png").convert("L")


def difference(one: Image.Image, two: Image.Image) -> tuple[float, float]:
    """Return the mean difference of two pictures of one size and the share that clearly differs."""
    apart = np.abs(np.asarray(one, dtype=np.int16) - np.asarray(two, dtype=np.int16))
    return float(apart.mean()), float((apart > CLEAR).mean())


def same(one: Image.Image, two: Image.Image) -> bool:
    """Tell whether two pictures show the same drawing."""
    if one.size != two.size:
        return False
    mean, share = difference(one, two)
    return mean <= MEAN and share <= SHARE
