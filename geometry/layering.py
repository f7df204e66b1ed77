"""The layers of a floor as the design file lists them: one more, one less, another order."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from geometry.errors import LengthError
from geometry.parts.floor import LayerRole
from geometry.units import INCH, System, read_length

Row = dict[str, Any]
# From the ground up, as floors are usually built; a file may list them in any order.
FROM_BELOW: tuple[LayerRole, ...] = ("fill", "base", "blinding", "retarder", "insulation", "slab")


@dataclass(frozen=True)
class _Kind:
    """How a role's layer is usually called, of what it is, how thick, and between which limits.

    thick: in the file's words. least, most, step: what a slider offers, counted in half inches, and
    in centimetres.
    """

    name: str
    material: Mapping[System, str]
    thick: Mapping[System, str]
    least: int
    most: int
    step: int


_KINDS: Mapping[str, _Kind] = {
    "fill": _Kind("fill", {"ft-in": "stone-57", "metric": "gravel-16-32"},
                  {"ft-in": "6 in", "metric": "150 mm"}, 2, 48, 2),
    "base": _Kind("stone", {"ft-in": "stone-57", "metric": "gravel-16-32"},
                  {"ft-in": "6 in", "metric": "150 mm"}, 4, 24, 2),
    "blinding": _Kind("sand", {"ft-in": "sand-c33", "metric": "sand-0-4"},
                      {"ft-in": "1/2 in", "metric": "20 mm"}, 1, 6, 1),
    "retarder": _Kind("retarder", {"ft-in": "poly-10mil", "metric": "pe-0.2mm"},
                      {"ft-in": "10 mil", "metric": "0.2 mm"}, 0, 0, 1),
    "insulation": _Kind("foam", {"ft-in": "xps-iv", "metric": "xps-300"},
                        {"ft-in": "2 in", "metric": "60 mm"}, 1, 16, 1),
    "slab": _Kind("slab", {"ft-in": "concrete", "metric": "concrete-c25"},
                  {"ft-in": "4 in", "metric": "100 mm"}, 6, 16, 1),
}  # fmt: skip
_STEP_M: Mapping[System, float] = {"ft-in": INCH / 2, "metric": 0.010}
# A typed thickness this near a step is that step, m.
_SAME_M = 1e-6


def with_layer(rows: Sequence[Row], role: LayerRole, system: System) -> list[Row]:
    """Return the layers with a usual one of a role, over those that usually lie under it."""
    kind, rank = _KINDS[role], FROM_BELOW.index(role)
    under = [n for n, row in enumerate(rows) if _rank(row) <= rank]
    place = max(under, default=-1) + 1
    new = {
        "name": _free(kind.name, {str(row.get("name")) for row in rows}),
        "material": kind.material[system], "thickness": kind.thick[system], "role": role,
    }  # fmt: skip
    return [*rows[:place], new, *rows[place:]]


def _rank(row: Row) -> int:
    role = row.get("role")
    return FROM_BELOW.index(role) if role in FROM_BELOW else len(FROM_BELOW)


def _free(name: str, taken: set[str]) -> str:
    names = (name, *(f"{name} {n}" for n in range(2, len(taken) + 3)))
    return next(one for one in names if one not in taken)


def moved(rows: Sequence[Row], place: int, by: int) -> list[Row]:
    """Return the layers with one moved up (by 1) or down (by -1); at an end it stays."""
    found, to = list(rows), place + by
    if 0 <= place < len(found) and 0 <= to < len(found):
        found[place], found[to] = found[to], found[place]
    return found


def without_layer(rows: Sequence[Row], place: int) -> list[Row]:
    """Return the layers without one."""
    return [row for n, row in enumerate(rows) if n != place]


def thickness_steps(role: str, said: str, system: System) -> tuple[tuple[str, ...], str] | None:
    """Return thicknesses to slide along, and which of them holds; None where there is no row.

    said: as the file has it; in between or beyond the steps, it stands among them as it is.
    """
    kind = _KINDS.get(role)
    if kind is None or kind.most == 0:
        return None
    try:
        now = read_length(said)
    except LengthError:
        return None
    counts = range(kind.least, kind.most + 1, kind.step)
    named = {_STEP_M[system] * n: _typed(n, system) for n in counts}
    here = next((value for value in named if abs(value - now) < _SAME_M), now)
    named.setdefault(here, said)
    return tuple(named[value] for value in sorted(named)), named[here]


def _typed(count: int, system: System) -> str:
    """Return so many steps as they are typed into the file: `2 1/2 in`, `60 mm`."""
    if system == "metric":
        return f"{10 * count} mm"
    whole, half = divmod(count, 2)
    return f"{' '.join(filter(None, (str(whole or ''), '1/2' if half else '')))} in"
