"""What a form holds: columns, and entries of several kinds from the top down."""

from dataclasses import dataclass
from typing import Literal

ColumnKind = Literal["words", "strong", "figure", "blank", "box"]
EntryKind = Literal["row", "heading", "note", "sign"]


@dataclass(frozen=True)
class Column:
    """One column: its heading, its share of the form's width, and what stands in it.

    kind: words; a "figure", to the right; "strong", a figure in bold; "blank", to write in; a
    "box" to tick.
    """

    head: str
    share: float
    kind: ColumnKind = "words"


@dataclass(frozen=True)
class Entry:
    """One entry. A row has a cell for each column; the others run over the whole width.

    "heading": a band with its words, the second cell in plain letters under them; it stays with
    what follows. "note": plain words. "sign": captions, each with a line to write on.
    """

    cells: tuple[str, ...]
    kind: EntryKind = "row"
