"""Where things stand on the sheet: frame, title strip, notes, label columns, picture, levels."""

from dataclasses import dataclass

from viz.drawing.fonts import text_width, wrap
from viz.drawing.page import Box, Paper
from viz.style.text import PITCH, body_height

_PAD = 4.0
_GUTTER = 8.0
# Width of the levels column without its text: the pole, the slanting ticks, the triangle.
POLE = 3.0
LEVEL_TEXT_AT = 15.5


@dataclass(frozen=True)
class Layout:
    """Boxes on one sheet, mm. Leaders bend in the gutters beside the picture."""

    frame: Box
    strip: Box
    notes: Box
    note_lines: tuple[tuple[str, ...], ...]
    left: Box
    picture: Box
    right: Box
    levels: Box
    text: float

    @property
    def pitch(self) -> float:
        """Distance between baselines of labels and notes, mm."""
        return self.text * PITCH


def layout(
    paper: Paper, notes: tuple[str, ...], columns: tuple[float, float], levels: float
) -> Layout:
    """Divide the paper: the picture gets what the title, notes, labels and levels leave.

    columns: widths of the labels left and right, levels: of the words of the levels, mm.
    """
    text = body_height(paper.width)
    frame = Box(paper.border, paper.border, paper.width - paper.border, paper.height - paper.border)
    strip = Box(frame.left, frame.low, frame.right, frame.low + (30 if paper.width > 550 else 24))
    lines = _note_lines(notes, frame.width - 2 * _PAD, text)
    notes_height = (sum(map(len, lines)) + 1) * text * PITCH + _PAD
    note_box = Box(frame.left + _PAD, strip.high, frame.right - _PAD, strip.high + notes_height)
    low, high = note_box.high + _PAD, frame.high - _PAD
    pole = Box(frame.right - _PAD - LEVEL_TEXT_AT - levels, low, frame.right - _PAD, high)
    right = Box(pole.left - _PAD - columns[1], low, pole.left - _PAD, high)
    left = Box(frame.left + _PAD, low, frame.left + _PAD + columns[0], high)
    picture = Box(left.right + _GUTTER, low, right.left - _GUTTER, high)
    return Layout(frame, strip, note_box, lines, left, picture, right, pole, text)


def _note_lines(notes: tuple[str, ...], width: float, text: float) -> tuple[tuple[str, ...], ...]:
    room = width - text_width("00. ", text)
    return tuple(wrap(note, room, text) for note in notes)
