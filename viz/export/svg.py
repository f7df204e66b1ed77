"""A drawing as SVG: true millimetres, text as text, the letters it needs within the file."""

from base64 import b64encode
from collections.abc import Callable, Iterable, Iterator
from itertools import groupby
from string import ascii_letters, digits
from xml.sax.saxutils import escape, quoteattr

from viz.drawing.expand import simple
from viz.drawing.fonts import CAPITAL, FAMILY, subset
from viz.drawing.marks import Circle, Fill, Line, Simple, Strokes, Text
from viz.drawing.page import Drawing
from viz.export.paths import Coordinates, Grammar, path, printable, rings
from viz.style.lines import PAPER

# Micrometres of paper, without trailing zeros.
_GRAMMAR = Grammar("M%g %g", "L%g %g", "Z", 3)
# Letters every file carries, so that one subset of the font serves nearly every drawing.
_USUAL = frozenset(ascii_letters + digits + " !\"#%&'()*+,-./:;<=>?_°²³×½¼¾Ø±…–")


def to_svg(drawing: Drawing) -> str:
    """Return the drawing as SVG text; the same drawing gives the same bytes."""
    marks = tuple(simple(drawing.marks))
    width, height = _number(drawing.width), _number(drawing.height)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" fill="none" stroke-linecap="round" '
        f'stroke-linejoin="round" xml:space="preserve">',
        f"<title>{_words(drawing.title)}</title>",
        f"<style>{_fonts(marks)}text{{font-family:{FAMILY},sans-serif;font-kerning:none}}</style>",
        f'<rect width="{width}" height="{height}" fill="{PAPER}"/>',
    ]
    for layer, group in groupby(marks, key=lambda mark: mark.layer):
        parts += [f"<g class={quoteattr(layer or 'marks')}>", *_elements(group, drawing), "</g>"]
    return "\n".join((*parts, "</svg>", ""))


def _elements(marks: Iterable[Simple], drawing: Drawing) -> Iterator[str]:
    place = _flipped(drawing.height)
    for mark in marks:
        match mark:
            case Line(points=points):
                yield _stroked(path((points,), place, _GRAMMAR), mark, mark.dash)
            case Strokes(lines=lines):
                if lines:
                    yield _stroked(path(lines, place, _GRAMMAR), mark, ())
            case Fill(shape=shape):
                drawn = path(rings(shape), place, _GRAMMAR)
                yield f'<path d="{drawn}" fill="{mark.colour}" fill-rule="evenodd"/>'
            case Circle():
                yield _circle(mark, drawing.height)
            case Text():
                yield _text(mark, drawing.height)


def _flipped(height: float) -> Callable[[Coordinates], Coordinates]:
    """Return what turns a drawing's y, which runs up, into the file's, which runs down."""
    return lambda xy: xy * (1.0, -1.0) + (0.0, height)


def _stroked(drawn: str, mark: Line | Strokes, dash: tuple[float, ...]) -> str:
    dashes = f' stroke-dasharray="{" ".join(map(_number, dash))}"' if dash else ""
    caps = ' stroke-linecap="butt"' if dash else ""
    weight = _number(mark.weight)
    return f'<path d="{drawn}" stroke="{mark.colour}" stroke-width="{weight}"{dashes}{caps}/>'


def _circle(mark: Circle, height: float) -> str:
    x, y = _number(mark.centre[0]), _number(height - mark.centre[1])
    stroke = f' stroke="{mark.colour}" stroke-width="{_number(mark.weight)}"' if mark.weight else ""
    fill = f' fill="{mark.fill}"' if mark.fill else ""
    return f'<circle cx="{x}" cy="{y}" r="{_number(mark.radius)}"{fill}{stroke}/>'


def _text(mark: Text, height: float) -> str:
    x, y = _number(mark.at[0]), _number(height - mark.at[1])
    weight = ' font-weight="700"' if mark.bold else ""
    anchor = f' text-anchor="{mark.anchor}"' if mark.anchor != "start" else ""
    size = _number(mark.height / CAPITAL)
    return (
        f'<text x="{x}" y="{y}" font-size="{size}"{weight}{anchor} fill="{mark.colour}">'
        f"{_words(mark.words)}</text>"
    )


def _number(value: float) -> str:
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def _words(words: str) -> str:
    return escape(printable(words))


def _fonts(marks: Iterable[Simple]) -> str:
    texts = [mark for mark in marks if isinstance(mark, Text)]
    rules = []
    for bold in (False, True):
        letters = {sign for text in texts if text.bold == bold for sign in printable(text.words)}
        if letters:
            data = b64encode(subset("".join(sorted(letters | _USUAL)), bold)).decode()
            rules.append(
                f"@font-face{{font-family:{FAMILY};font-weight:{700 if bold else 400};"
                f"src:url(data:font/ttf;base64,{data})}}"
            )
    return "".join(rules)
