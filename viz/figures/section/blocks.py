"""A label as lines of text: the thing in bold, then what is to be known of it; or a key number."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Point
from viz.style.text import PITCH


@dataclass(frozen=True)
class Block:
    """A label broken into lines, the first `bold` of them bold; where its leader starts."""

    wording: str
    lines: tuple[str, ...]
    bold: int
    dot: Point = (0.0, 0.0)

    def height(self, text: float) -> float:
        """Height from the top of the capitals to the foot of the descenders, mm."""
        return (len(self.lines) - 1) * text * PITCH + 1.33 * text

    def width(self, text: float) -> float:
        """Width of the widest line, mm."""
        sized = enumerate(self.lines)
        return max(text_width(line, text, index < self.bold) for index, line in sized)


@dataclass(frozen=True)
class Lettering:
    """How labels are written: text height in mm, longest line in text heights, or key numbers.

    keys: numbers by wording; empty where the words themselves stand at the picture.
    """

    text: float
    longest: float = 21.0
    keys: Mapping[str, int] = field(default_factory=dict)

    def block(self, wording: str, dot: Point = (0.0, 0.0)) -> Block:
        """Return a wording as a block; what stands before the first line break is bold."""
        if self.keys:
            return Block(wording, (str(self.keys[wording]),), 1, dot)
        return self.spelled(wording, self.longest * self.text, dot)

    def spelled(self, wording: str, width: float, dot: Point = (0.0, 0.0)) -> Block:
        """Return a wording in words, broken into lines of at most `width` mm."""
        bold, plain = _broken(wording, width, self.text)
        return Block(wording, (*bold, *plain), len(bold), dot)


@lru_cache(maxsize=1024)
def _broken(wording: str, width: float, text: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the lines of the head, and those of the rest."""
    head, _, rest = wording.partition("\n")
    return wrap(head, width, text, bold=True), wrap(rest, width, text)
