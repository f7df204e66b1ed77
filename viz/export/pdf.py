"""Sheets as one PDF to print from: true size, text as text, the letters it needs within."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFInfo, PDFString
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from viz.drawing.expand import simple
from viz.drawing.fonts import FAMILY, font_file
from viz.drawing.page import Drawing
from viz.export.operators import POINT, Typeface, operators
from viz.export.paths import printable

# Stands for letters beyond the first 65,536, which such a font cannot number.
_BEYOND = "\ufffd"
_CREATOR = "Bedcourse"
# The first version in which a file can ask not to be scaled in print.
_VERSION = (1, 6)
# Streams as bytes: as text they would be a quarter longer.
rl_config.useA85 = 0
# A page that opens in a font of the family names no other.
pdfmetrics.registerFont(TTFont(FAMILY, str(font_file(bold=False))))


@dataclass(frozen=True)
class DocumentInfo:
    """What a document says of itself to viewers and searches, in plain words.

    language: the code of the one it is in.
    """

    title: str
    author: str = ""
    subject: str = ""
    keywords: str = ""
    language: str = "en"


class Undated(PDFInfo):  # type: ignore[misc]
    """The information of a document without a date: the same sheets are the same file."""

    def __init__(self, about: DocumentInfo) -> None:
        """Take what the document says of itself."""
        super().__init__()
        self.title, self.author = printable(about.title), printable(about.author)
        self.subject, self.keywords = printable(about.subject), printable(about.keywords)

    def format(self, document: object) -> bytes:
        """Return the entries as they stand in the file."""
        entries = {
            "Title": self.title, "Author": self.author, "Subject": self.subject,
            "Keywords": self.keywords, "Creator": _CREATOR,
        }  # fmt: skip
        written = {name: PDFString(words) for name, words in entries.items() if words}
        return bytes(PDFDictionary(written).format(document))


def to_pdf(sheets: Sequence[Drawing], about: DocumentInfo) -> bytes:
    """Return one page for each sheet, in its true size; the same sheets give the same bytes.

    Raises ValueError without a sheet.
    """
    if not sheets:
        raise ValueError("a document needs at least one sheet")
    file = BytesIO()
    canvas = Canvas(
        file, pageCompression=1, invariant=1, pdfVersion=_VERSION, initialFontName=FAMILY,
        lang=about.language,
    )  # fmt: skip
    canvas._doc.info = Undated(about)
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.showOutline()
    # Fonts of their own for each document: two may be written at a time.
    faces = {bold: _Face(canvas, bold) for bold in (False, True)}
    for number, sheet in enumerate(sheets, 1):
        canvas.setPageSize((sheet.width * POINT, sheet.height * POINT))
        canvas.bookmarkPage(str(number))
        canvas.addOutlineEntry(printable(sheet.title) or f"Sheet {number}", str(number))
        canvas.addLiteral("\n".join(operators(simple(sheet.marks), faces)))
        canvas.showPage()
    canvas.save()
    return file.getvalue()


class _Face(Typeface):
    """One weight of the family in one document; letters join its subset as they are written."""

    def __init__(self, canvas: Canvas, bold: bool) -> None:
        self._document = canvas._doc
        # Letters are written by number, so none needs to keep its place in ASCII.
        self._font = TTFont(f"{FAMILY} {bold}", str(font_file(bold)), asciiReadable=False)

    def runs(self, words: str) -> Iterator[tuple[str, bytes]]:
        letters = "".join(sign if sign <= "\uffff" else _BEYOND for sign in words)
        face = self._font.face
        for code in map(ord, letters):
            # A letter the family lacks is drawn as an empty box, and still found as itself.
            face.charToGlyph.setdefault(code, 0)
            face.charWidths.setdefault(code, face.defaultWidth)
        for subset, codes in self._font.splitString(letters, self._document):
            yield self._font.getSubsetInternalName(subset, self._document), codes
