"""A label as lines of text: the thing in bold, then what is to be known of it."""

from dataclasses import dataclass

from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Point
from viz.style.text import PITCH

# Labels are broken into lines of at most this many text heights.
_LONGEST = 21.0


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


def block(wording: str, text: float, dot: Point = (0.0, 0.0)) -> Block:
    """Return a wording as a block; what stands before the first line break is bold."""
    head, _, rest = wording.partition("\n")
    bold = wrap(head, _LONGEST * text, text, bold=True)
    return Block(wording, (*bold, *wrap(rest, _LONGEST * text, text)), len(bold), dot)
