"""The bundled type family: widths of text, and the part of a font a drawing needs."""

import re
from collections.abc import Iterable
from functools import cache, lru_cache
from io import BytesIO
from pathlib import Path

from fontTools.subset import Options, Subsetter  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

import viz

FAMILY = "B612"
# B612's capitals are 1500 units high in an em of 2000.
CAPITAL = 0.75


def font_file(bold: bool) -> Path:
    """Return the bundled font file, in the source tree or in the installed package."""
    root = Path(viz.__file__).parent
    name = f"fonts/B612-{'Bold' if bold else 'Regular'}.ttf"
    installed = root / "bundled" / "assets" / name
    return installed if installed.exists() else root.parent / "assets" / name


@cache
def _advances(bold: bool) -> tuple[dict[int, int], int, int]:
    font = TTFont(font_file(bold))
    widths = font["hmtx"].metrics
    by_code = {code: widths[glyph][0] for code, glyph in font.getBestCmap().items()}
    return by_code, widths[".notdef"][0], font["head"].unitsPerEm


def text_width(words: str, height: float, bold: bool = False) -> float:
    """Return the width in mm of one line whose capitals are `height` mm, kerning not counted."""
    return _ems(words, bold) * height / CAPITAL


@lru_cache(maxsize=10_000)
def _ems(words: str, bold: bool) -> float:
    by_code, missing, em = _advances(bold)
    return sum(by_code.get(ord(sign), missing) for sign in words) / em


@lru_cache(maxsize=100)
def subset(letters: str, bold: bool) -> bytes:
    """Return a TrueType font with these letters alone; the same letters give the same bytes."""
    font = TTFont(font_file(bold), recalcTimestamp=False)
    options = Options(layout_features=[], name_IDs=[1, 2, 13], notdef_outline=True)
    subsetter = Subsetter(options)
    subsetter.populate(text=letters)
    subsetter.subset(font)
    out = BytesIO()
    font.save(out, reorderTables=None)
    return out.getvalue()


_UNIT = r"(?: (?:in|ft|mil|mm|cm|m|oz|psi|%)(?![\w]))"
_MEASURE = re.compile(rf"\S*No\. \S+|\S*\d \d+/\d+{_UNIT}?\S*|\S*\d{_UNIT}\S*|\S+")


def unbroken(line: str) -> list[str]:
    """Return a line's words; a number and its unit are one word."""
    return _MEASURE.findall(line)


@lru_cache(maxsize=16384)
def wrap(words: str, width: float, height: float, bold: bool = False) -> tuple[str, ...]:
    """Break text into lines no wider than `width` mm; a word too long is broken within."""
    lines: list[str] = []
    for paragraph in words.splitlines():
        line = ""
        for word in _pieces(unbroken(paragraph), width, height, bold):
            longer = f"{line} {word}".strip()
            if line and text_width(longer, height, bold) > width:
                lines.append(line)
                longer = word
            line = longer
        lines.append(line)
    return tuple(lines)


def _pieces(words: Iterable[str], width: float, height: float, bold: bool) -> Iterable[str]:
    for word in words:
        piece = ""
        for sign in word:
            if piece and text_width(piece + sign, height, bold) > width:
                yield piece
                piece = ""
            piece += sign
        yield piece


def shortened(words: str, width: float, height: float, bold: bool = False) -> str:
    """Return the text, cut with an ellipsis where it is wider than `width` mm."""
    line = " ".join(words.split())
    if text_width(line, height, bold) <= width:
        return line
    while line and text_width(line + "…", height, bold) > width:
        line = line[:-1].rstrip()
    return line + "…"
