"""A drawing as SVG: true millimetres, text as text, the letters it needs within the file."""

from base64 import b64encode
from collections.abc import Iterable, Iterator
from itertools import groupby
from xml.sax.saxutils import escape, quoteattr

from shapely import Polygon

from viz.drawing.expand import simple
from viz.drawing.fonts import CAPITAL, FAMILY, subset
from viz.drawing.marks import Circle, Fill, Line, Point, Simple, Strokes, Text
from viz.drawing.page import Drawing
from viz.style.lines import PAPER


def to_svg(drawing: Drawing) -> str:
    """Return the drawing as SVG text; the same drawing gives the same bytes."""
    marks = tuple(simple(drawing.marks))
    width, height = _number(drawing.width), _number(drawing.height)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" fill="none" stroke-linecap="round" '
        f'stroke-linejoin="round">',
        f"<title>{_words(drawing.title)}</title>",
        f"<style>{_fonts(marks)}text{{font-family:{FAMILY},sans-serif;font-kerning:none}}</style>",
        f'<rect width="{width}" height="{height}" fill="{PAPER}"/>',
    ]
    for layer, group in groupby(marks, key=lambda mark: mark.layer):
        parts += [f"<g class={quoteattr(layer or 'marks')}>", *_elements(group, drawing), "</g>"]
    return "\n".join((*parts, "</svg>", ""))


def _elements(marks: Iterable[Simple], drawing: Drawing) -> Iterator[str]:
    for mark in marks:
        match mark:
            case Line(points=points):
                yield _stroked(_path(points, drawing.height), mark, mark.dash)
            case Strokes(lines=lines):
                if lines:
                    yield _stroked("".join(_path(p, drawing.height) for p in lines), mark, ())
            case Fill():
                yield _fill(mark, drawing.height)
            case Circle():
                yield _circle(mark, drawing.height)
            case Text():
                yield _text(mark, drawing.height)


def _stroked(path: str, mark: Line | Strokes, dash: tuple[float, ...]) -> str:
    dashes = f' stroke-dasharray="{" ".join(map(_number, dash))}"' if dash else ""
    caps = ' stroke-linecap="butt"' if dash else ""
    weight = _number(mark.weight)
    return f'<path d="{path}" stroke="{mark.colour}" stroke-width="{weight}"{dashes}{caps}/>'


def _fill(mark: Fill, height: float) -> str:
    polygons = [mark.shape] if isinstance(mark.shape, Polygon) else mark.shape.geoms
    rings = [ring for polygon in polygons for ring in (polygon.exterior, *polygon.interiors)]
    path = "".join(_path([(x, y) for x, y, *_ in ring.coords], height) for ring in rings)
    return f'<path d="{path}" fill="{mark.colour}" fill-rule="evenodd"/>'


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


def _path(points: Iterable[Point], height: float) -> str:
    """Return moves and lines; a ring is closed, so that its joints are mitred alike."""
    spots = [f"{_number(x)} {_number(height - y)}" for x, y in points]
    closed = len(spots) > 3 and spots[0] == spots[-1]
    return "M" + "L".join(spots[:-1] if closed else spots) + ("Z" if closed else "")


def _number(value: float) -> str:
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def _words(words: str) -> str:
    """Escape text, and drop the control characters that XML 1.0 does not allow."""
    return escape("".join(sign for sign in words if sign >= " " and sign not in "\ufffe\uffff"))


def _fonts(marks: Iterable[Simple]) -> str:
    texts = [mark for mark in marks if isinstance(mark, Text)]
    rules = []
    for bold in (False, True):
        letters = "".join(sorted({sign for t in texts if t.bold == bold for sign in t.words}))
        if letters:
            data = b64encode(subset(letters, bold)).decode()
            rules.append(
                f"@font-face{{font-family:{FAMILY};font-weight:{700 if bold else 400};"
                f"src:url(data:font/ttf;base64,{data})}}"
            )
    return "".join(rules)
