"""Names of the profile's levels in a column at one side, each tied to its line's end."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.units import System, show_level
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.profile.levels import NamedLevel
from viz.figures.profile.view import View
from viz.style.lines import DIMENSION, SEEN

_TIE = 9.0
# Between baselines of one name, and between names, in text heights.
_LINE, _APART = 1.6, 0.35
# Widest line of a name where there is little room, in text heights.
_NARROW = 13.0


@dataclass(frozen=True)
class Names:
    """The names in lines, from the lowest level up, and the middles of each on paper, mm."""

    levels: tuple[NamedLevel, ...]
    lines: tuple[tuple[str, ...], ...]
    middles: tuple[float, ...]
    view: View
    text: float

    @property
    def low(self) -> float:
        """Where the lowest name ends below, mm."""
        return self.middles[0] - _high(self.lines[0], self.text) / 2

    @property
    def top(self) -> float:
        """Where the highest name ends above, mm."""
        return self.middles[-1] + _high(self.lines[-1], self.text) / 2

    @property
    def left(self) -> float:
        """How far names left of the picture reach from where their ties begin, mm."""
        words = zip(self.levels, self.lines, strict=True)
        return _TIE + max(text_width(w, self.text, one.strong) for one, ws in words for w in ws)

    def at_right(self, system: System, start: float, x: float) -> Iterator[Mark]:
        """Yield a column of figures and one of names right of x; start: where ties begin."""
        text = self.text
        figures = [show_level(one.level, system) for one in self.levels]
        wide = max(text_width(f, text, o.strong) for f, o in zip(figures, self.levels, strict=True))
        edge = x + _TIE + wide
        for one, figure, (words,), y in zip(
            self.levels, figures, self.lines, self.middles, strict=True
        ):
            at, row = self.view.y(one.level), y - text / 2
            yield _tie(one, ((start, at), (x, at), (x + _TIE - 1.0, y)))
            yield Text((edge, row), figure, text, one.strong, "end", layer="levels")
            yield Text((edge + text, row), words, text, one.strong, layer="levels")

    def at_left(self, x: float) -> Iterator[Mark]:
        """Yield the names in a column left of x, where their ties begin."""
        for one, lines, y in zip(self.levels, self.lines, self.middles, strict=True):
            yield _tie(one, ((x, self.view.y(one.level)), (x - _TIE + 1.0, y)))
            first = y + ((len(lines) - 1) * _LINE - 1) * self.text / 2
            for number, words in enumerate(lines):
                at = (x - _TIE, first - number * _LINE * self.text)
                yield Text(at, words, self.text, one.strong, "end", layer="levels")


def names_in_full(levels: Sequence[NamedLevel], view: View, text: float) -> Names:
    """Return the names, a line each, their figures apart."""
    return _placed(levels, [(_said(one),) for one in levels], view, text)


def names_with_figures(
    levels: Sequence[NamedLevel], view: View, system: System, text: float
) -> Names:
    """Return the names in short lines, their figures after them."""
    lines = []
    for one in levels:
        figure = show_level(one.level, system)
        *first, last = wrap(_said(one), _NARROW * text, text, one.strong)
        both = f"{last} {figure}"
        fits = text_width(both, text, one.strong) <= _NARROW * text
        lines.append((*first, both) if fits else (*first, last, figure))
    return _placed(levels, lines, view, text)


def _placed(
    levels: Sequence[NamedLevel], lines: Sequence[tuple[str, ...]], view: View, text: float
) -> Names:
    pairs = zip(levels, lines, strict=True)
    items = [Item(view.y(one.level), _high(words, text)) for one, words in pairs]
    middles = spread(items, -1e4, 1e4, _APART * text)
    return Names(tuple(levels), tuple(lines), middles, view, text)


def _high(lines: Sequence[str], text: float) -> float:
    return (1.33 + (len(lines) - 1) * _LINE) * text


def _said(one: NamedLevel) -> str:
    name = ", ".join(one.names)
    return name[0].upper() + name[1:]


def _tie(one: NamedLevel, points: tuple[tuple[float, float], ...]) -> Line:
    return Line(points, SEEN if one.strong else DIMENSION, layer="leaders")
