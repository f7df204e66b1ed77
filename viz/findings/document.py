"""A document's content as frozen records, whoever writes it: sections of blocks of plain text."""

import re
from dataclasses import dataclass
from typing import Literal

from geometry.checks.finding import Severity
from viz.tables.table import Table

# Letters beside each other on the narrowest screen.
_PHONE_SIGNS = 42

# Between the whole inches and the sixteenths.
_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")

Look = Literal["plain", "note", "caution"]


@dataclass(frozen=True)
class Paragraph:
    """Sentences. look: a note is said more quietly, a caution stands out."""

    words: str
    look: Look = "plain"


@dataclass(frozen=True)
class Items:
    """A list: each row a term, which may be empty, and what is said of it."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Grid:
    """A table of words under its title; note: what was counted, and where it is from."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""

    @property
    def slim(self) -> bool:
        """Whether a phone holds it as a table: its columns' longest words are short together."""
        columns = zip(self.head, *self.rows, strict=True)
        longest = (max(len(word) for cell in cells for word in cell.split() or ("",))
                   for cells in columns)  # fmt: skip
        return sum(longest) + 2 * len(self.head) <= _PHONE_SIGNS


@dataclass(frozen=True)
class Card:
    """One finding: how grave, about what, and its rows of a caption and what is said."""

    severity: Severity
    subject: str
    rows: tuple[tuple[str, str], ...]


Block = Paragraph | Items | Grid | Card


@dataclass(frozen=True)
class Section:
    """A section under its heading; key: names it in links, of small letters and hyphens."""

    key: str
    title: str
    blocks: tuple[Block, ...] = ()
    parts: tuple["Section", ...] = ()


@dataclass(frozen=True)
class Document:
    """A whole document. dated: date and revision of the design; foot: on every page."""

    title: str
    project: str
    dated: str
    foot: str
    sections: tuple[Section, ...]
    language: str = "en"

    def section(self, key: str) -> Section:
        """Return the section, or the part of one, of a key. Raises StopIteration for another."""
        every = (s for one in self.sections for s in (one, *one.parts))
        return next(one for one in every if one.key == key)


def unbroken(text: str) -> str:
    """Return text whose whole and broken parts of an inch are never parted at a line's end."""
    return _FRACTION.sub("\u00a0", text)


def grid(title: str, table: Table, note: str = "") -> Grid:
    """Return a table as a block."""
    return Grid(title, table.head, tuple(tuple(map(words, row)) for row in table.rows), note)


def words(cell: str | float | None) -> str:
    """Return a cell as text."""
    return "" if cell is None else str(cell)


def filled(*blocks: Block) -> tuple[Block, ...]:
    """Return the blocks that say something: tables and lists without rows are left out."""
    return tuple(one for one in blocks if not isinstance(one, Grid | Items) or one.rows)
