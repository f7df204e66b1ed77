"""The words at a story pole's ticks: level, then what ends there, in a column that is solved."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from geometry.site.pole import Mark as Said
from geometry.site.pole import Tick
from geometry.units import FOOT, System, show_level
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.place import Item, NoRoomError, spread
from viz.style.lines import LEADER
from viz.style.text import SMALLEST

# Puts words to a key: the words of the reader's language, with values set into them.
Say = Callable[..., str]
LAYER = "labels"
# Heights of names and of the level over them, mm, the largest that fits is taken.
_SIZES = ((3.2, 4.0), (2.8, 3.2), (SMALLEST, SMALLEST))
_PITCH = 1.5
_GAP = 1.6


@dataclass(frozen=True)
class Block:
    """One tick's words: its level, bold, what stands beside that, and lines of names under it."""

    tick: Tick
    level: str
    beside: str
    lines: tuple[str, ...]
    size: float
    head: float

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.head + 0.4 * self.size + len(self.lines) * _PITCH * self.size


def names(marks: Sequence[Said], say: Say) -> str:
    """Return what ends at a level, in words, things of one kind together."""
    said = []
    for kind, alike in groupby(marks, key=lambda m: m.kind):
        several = [name for mark in alike for name in mark.names]
        if kind.startswith(("drain", "trench")):
            several = [line_words(name, say) for name in several]
        key = f"pole.{kind.replace(' ', '_').lower()}"
        said.append(say(f"{key}_of" if several else key, names=", ".join(several)))
    words = "; ".join(said)
    return words[:1].upper() + words[1:]


def line_words(name: str, say: Say) -> str:
    """Return a drain's own name, or the words of its line's key."""
    return say(f"line.{name}") if name in ("outside", "inside") else name


def decimal_feet(metres: float, system: System) -> str:
    """Return a level from TOF in decimal feet, since rods differ; nothing in metric."""
    return "" if system == "metric" else f"({metres / FOOT + 0.0:+.2f}')".replace("-", "−")


def labels(
    ticks: Sequence[Tick], low: float, high: float, column: tuple[float, float, float],
    system: System, say: Say,
) -> Iterator[Mark]:  # fmt: skip
    """Yield words and leaders of the ticks between two heights, mm.

    column: where leaders begin, where words begin and end, mm. Raises NoRoomError.
    """
    start, left, right = column
    blocks, middles = _placed(ticks, low, high, right - left, system, say)
    for block, middle in zip(blocks, middles, strict=True):
        y = block.tick.level * 1000
        top = middle + block.height / 2
        eye = top - block.head / 2
        yield Line(((start, y), (left - 4.0, eye), (left - 1.0, eye)), LEADER, layer="leaders")
        base = top - block.head
        yield Text((left, base), block.level, block.head, bold=True, layer=LAYER)
        after = left + text_width(block.level, block.head, bold=True) + block.size / 2
        if block.beside:
            yield Text((after, base), block.beside, block.size, layer=LAYER)
        for line in block.lines:
            base -= _PITCH * block.size
            yield Text((left, base), line, block.size, layer=LAYER)


def _placed(
    ticks: Sequence[Tick], low: float, high: float, width: float, system: System, say: Say
) -> tuple[list[Block], tuple[float, ...]]:
    ordered = sorted(ticks, key=lambda tick: tick.level)
    for size, head in _SIZES:
        blocks = [_block(tick, width, size, head, system, say) for tick in ordered]
        # The first line stands at its tick where there is room.
        items = [Item(b.tick.level * 1000 + (b.head - b.height) / 2, b.height) for b in blocks]
        try:
            return blocks, spread(items, low, high, _GAP)
        except NoRoomError:
            if size == SMALLEST:
                raise
    raise NoRoomError("the levels do not fit this strip")


def _block(tick: Tick, width: float, size: float, head: float, system: System, say: Say) -> Block:
    level, beside = show_level(tick.level, system), decimal_feet(tick.level, system)
    taken = text_width(level, head, bold=True) + text_width(beside, size) + size / 2
    words = names(tick.marks, say)
    if taken > width:
        beside, words = "", f"{beside} {words}"
    return Block(tick, level, beside, wrap(words, width, size), size, head)
