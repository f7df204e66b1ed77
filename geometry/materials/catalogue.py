"""Every material by the key a builder types, in one table and by kind."""

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from types import MappingProxyType
from typing import TypeVar

from geometry.materials import (
    bars,
    boards,
    concretes,
    fabrics,
    pipes,
    plastics,
    sheets,
    soils,
    stones,
)
from geometry.materials.kinds import (
    Aggregate,
    Bar,
    Board,
    Concrete,
    Fabric,
    Material,
    Pipe,
    Sheet,
    Soil,
)

Row = TypeVar("Row", bound=Material)


def _by_key(rows: Iterable[Row]) -> Mapping[str, Row]:
    return MappingProxyType({row.key: row for row in rows})


AGGREGATES: Mapping[str, Aggregate] = _by_key(stones.ROWS)
SHEETS: Mapping[str, Sheet] = _by_key(sheets.ROWS)
BOARDS: Mapping[str, Board] = _by_key(boards.ROWS)
CONCRETES: Mapping[str, Concrete] = _by_key(concretes.ROWS)
FABRICS: Mapping[str, Fabric] = _by_key(fabrics.ROWS)
PIPES: Mapping[str, Pipe] = _by_key(pipes.ROWS)
SOILS: Mapping[str, Soil] = _by_key(soils.ROWS)
BARS: Mapping[str, Bar] = _by_key(bars.ROWS)

ROWS: tuple[Material, ...] = (
    *stones.ROWS,
    *sheets.ROWS,
    *boards.ROWS,
    *concretes.ROWS,
    *fabrics.ROWS,
    *pipes.ROWS,
    *soils.ROWS,
    *plastics.ROWS,
    *bars.ROWS,
)
MATERIALS: Mapping[str, Material] = _by_key(ROWS)
_FOLDED = {key.casefold(): row for key, row in MATERIALS.items()}


def find(key: str) -> Material | None:
    """Return the row of a key, whatever its capitals and outer blanks; None if there is none."""
    return _FOLDED.get(key.strip().casefold())


def nearest(key: str, keys: Iterable[str]) -> str | None:
    """Return the key most like a mistyped one, to offer in a message; None if none is close."""
    folded = {known.casefold(): known for known in keys}
    close = get_close_matches(key.strip().casefold(), list(folded), n=1)
    return folded[close[0]] if close else None
