"""Letters and styles of the paper: the bundled family, and text safe to set."""

from functools import cache
from xml.sax.saxutils import escape

from reportlab.lib.colors import HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from viz.drawing.fonts import FAMILY, font_file
from viz.export.paths import printable
from viz.findings.document import unbroken

PLAIN, BOLD = f"{FAMILY} text", f"{FAMILY} text bold"
INK, QUIET, LINE, BAND = (HexColor(c) for c in ("#1f1d19", "#55524a", "#bfb8a8", "#f1eee5"))
# Sizes in points: what is read, what stands in tables, and the least a table may shrink to.
BODY, TABLE, LEAST = 9.0, 7.8, 6.4
_BEYOND = "\ufffd"


@cache
def faces() -> tuple[str, str]:
    """Make the family known to the library, once; return the names of its two weights."""
    for name, bold in ((PLAIN, False), (BOLD, True)):
        pdfmetrics.registerFont(TTFont(name, str(font_file(bold)), asciiReadable=False))
    pdfmetrics.registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=PLAIN, boldItalic=BOLD)
    return PLAIN, BOLD


def text(words: str) -> str:
    """Return words as the library sets them: nothing in them is read as markup.

    Letters the family lacks are drawn as empty boxes and are still found as themselves.
    """
    kept = "".join(sign if sign <= "\uffff" else _BEYOND for sign in unbroken(printable(words)))
    if not kept.isascii():
        _know(set(map(ord, kept)))
    return escape(kept)


def _know(codes: set[int]) -> None:
    for name in faces():
        face = pdfmetrics.getFont(name).face
        for code in codes:
            face.charToGlyph.setdefault(code, 0)
            face.charWidths.setdefault(code, face.defaultWidth)


def width(words: str, size: float, bold: bool = False) -> float:
    """Return the width of words in one line, points."""
    return float(pdfmetrics.stringWidth(words, faces()[bold], size))


def style(name: str) -> ParagraphStyle:
    """Return one of the paper's styles."""
    return _styles()[name]


def cell(size: float, bold: bool = False) -> ParagraphStyle:
    """Return the style of a table's cell."""
    return ParagraphStyle(
        f"cell {size} {bold}", fontName=faces()[bold], fontSize=size, leading=size * 1.28,
        textColor=INK, splitLongWords=1, allowWidows=0, allowOrphans=0,
    )  # fmt: skip


@cache
def _styles() -> dict[str, ParagraphStyle]:
    plain, bold = faces()
    base = ParagraphStyle(
        "plain", fontName=plain, fontSize=BODY, leading=BODY * 1.38, textColor=INK, spaceAfter=5,
        allowWidows=0, allowOrphans=0, splitLongWords=1,
    )  # fmt: skip

    def made(name: str, **how: object) -> ParagraphStyle:
        return ParagraphStyle(name, parent=base, **how)

    found = (
        base,
        made("note", fontSize=BODY - 1, leading=(BODY - 1) * 1.38, textColor=QUIET),
        made("opening", keepWithNext=1, spaceBefore=7),
        made("caution", fontName=bold, borderWidth=0.9, borderColor=INK, borderPadding=5,
             spaceBefore=9, spaceAfter=11, leftIndent=6, rightIndent=6),
        made("item", leftIndent=11, bulletIndent=2, spaceAfter=2.6),
        made("title", fontName=bold, fontSize=19, leading=24, spaceAfter=3),
        made("h2", fontName=bold, fontSize=13.5, leading=17, spaceBefore=16, spaceAfter=6),
        made("h3", fontName=bold, fontSize=10.5, leading=14, spaceBefore=11, spaceAfter=4),
        made("head", fontName=bold, fontSize=BODY, leading=BODY * 1.35, spaceAfter=0),
    )  # fmt: skip
    return {one.name: one for one in found}
