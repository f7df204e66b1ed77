"""A way to drain the footing put into a design file's text."""

import tomllib
from collections.abc import Mapping
from typing import Any

import shapely
import tomlkit

from geometry.designfile import edited
from geometry.designlists import added, without
from geometry.errors import LengthError
from geometry.faults.lines import Path
from geometry.faults.places import inside
from geometry.faults.text import raw_design
from geometry.plan.outline import Point
from geometry.planfile.numbers import drained
from geometry.planfile.read import bare_of, place_words, plan_of, system_of
from geometry.presets.drains import DRAINS
from geometry.presets.placing import pit_place, pit_reach, toward_place
from geometry.presets.writing import inline, spaced
from geometry.units import FOOT, System, read_length

Row = dict[str, Any]
NOTE = "invented: put your own lot's ground"

_PIPES: Mapping[System, str] = {"ft-in": "d2729-4", "metric": "en1401-110"}
_FALLS: Mapping[System, str] = {"ft-in": "1/16 in per ft", "metric": "0.5 %"}
# A new drain under the floor is level and narrow: so it stays in the base and clear of piers.
_NARROW: Mapping[System, Row] = {
    "ft-in": {
        "fall": "level", "offset": "6 in", "stone": inline({"width": "12 in", "bedding": "1 in"})
    },
    "metric": {
        "fall": "level", "offset": "150 mm",
        "stone": inline({"width": "300 mm", "bedding": "25 mm"}),
    },
}  # fmt: skip
# What says of a drain that stays where its water went.
_OF_OUTLET = ("outlet_invert", "daylight", "bleeders", "high_corner", "low_corner")


def with_drain(text: str, key: str) -> str:
    """Return the design's text drained so, comments and all else kept.

    The first drain along a face that stays drained keeps its pipe, holes, stone and wrap; other
    drains are taken out, missing ones made with usual sizes. A pit is added where one is needed;
    one that is there stays. The ground toward daylight is invented, as a note beside it says.
    Raises DesignError where the text cannot be changed, KeyError for an unknown key.
    """
    drain = DRAINS[key]
    lines = [line for line in ("outside", "inside") if getattr(drain, line)]
    # With two, water goes through the footing to the one that leads it away.
    last = lines[-1] if drain.outlet == "pit" else lines[0]
    raw_design(text)
    before, text = text, _only(text, lines)
    for line in lines:
        text = _emptied(text, line, drain.outlet if line == last else "bleeders")
    if len(lines) > 1:
        # Level, so that bleeders lie within both drains' stone all along.
        for home, _ in _drains(tomllib.loads(text)):
            text = edited(text, (*home, "fall"), "level")
    text = _with_pit(text) if drain.outlet == "pit" else _with_daylight(text)
    return spaced(before, text)


def _only(text: str, lines: list[str]) -> str:
    """Return the text with no drains but the first along each of these faces."""
    seen: list[str] = []
    lost = []
    for home, row in _drains(tomllib.loads(text)):
        line = _line(row)
        if line in lines and line not in seen:
            seen.append(line)
        else:
            lost.append(home)
    for home in reversed(lost):
        text = without(text, home)
    return text


def _emptied(text: str, line: str, outlet: str) -> str:
    """Return the text with a drain along one face that empties so."""
    raw = tomllib.loads(text)
    home = _home(raw, line)
    if home is None:
        return _new(text, line, outlet)
    row = inside(raw, home)
    for key in _OF_OUTLET:
        if key in row:
            text = edited(text, (*home, key), None)
    return edited(text, (*home, "outlet"), outlet)


def _new(text: str, line: str, outlet: str) -> str:
    system = system_of(raw_design(text))
    entry = {"line": line, "pipe": _PIPES[system], "fall": _FALLS[system], "outlet": outlet}
    return added(text, ("drain",), entry | (_NARROW[system] if line == "inside" else {}))


def _with_pit(text: str) -> str:
    """Return the text with a pit; one that is there stays, unless a drain inside would meet it."""
    raw = tomllib.loads(text)
    outlines, pit = _outlines(raw), plan_of(raw).pit
    if not any(outlines):
        return text
    outline = outlines[_drained(raw)]
    if pit and (pit.at is None or _clear(raw, outline, pit.at)):
        return text
    return edited(text, ("sump", "at"), place_words(pit_place(raw, outline[0]), system_of(raw)))


def _clear(raw: Any, outline: list[Point], at: Point) -> bool:
    """Whether a pit stands off the walls by what lies between, where a drain runs inside."""
    if _home(raw, "inside") is None or len(outline) < 3:
        return True
    walls = shapely.LinearRing(outline)
    return bool(walls.distance(shapely.Point(at)) > pit_reach(raw) - 1e-6)


def _with_daylight(text: str) -> str:
    """Return the text with an outlet to daylight off the house's south side, on invented ground."""
    raw = tomllib.loads(text)
    home, outlines, system = _home(raw, "outside") or (), _outlines(raw), system_of(raw)
    if not any(outlines):
        return text
    ground = ((0.0, _grade(raw)), (30 * FOOT, -3 * FOOT), (80 * FOOT, -8 * FOOT))
    entry = {
        "toward": place_words(toward_place(outlines, _drained(raw)), system),
        "ground": [place_words(at, system) for at in ground],
    }
    return _noted(added(text, (*home, "daylight"), entry), (*home, "daylight", 0, "ground"))


def _noted(text: str, path: Path) -> str:
    """Return the text with a note beside the ground, where its line can take one."""
    document: Any = tomlkit.parse(text)
    inside(document, path).comment(NOTE)
    noted = tomlkit.dumps(document)
    try:
        tomllib.loads(noted)
    except tomllib.TOMLDecodeError:
        return text
    return noted


def _grade(raw: Any) -> float:
    """Return the ground's level at the wall, metres; that of a usual wall where none is said."""
    said = inside(raw, ("grade", "at_wall"))
    try:
        return 7 * FOOT if said is None else read_length(said, bare_of(raw))
    except LengthError:
        return 7 * FOOT


def _outlines(raw: Any) -> list[list[Point]]:
    return [[c for c in area.corners if c] for area in plan_of(raw).areas]


def _drained(raw: Any) -> int:
    """Return the number of the area the first drain runs round."""
    rows = inside(raw, ("drain",))
    return drained(raw, rows[0] if isinstance(rows, list) else rows) or 0


def _drains(raw: Any) -> list[tuple[Path, Row]]:
    """Return the drains with where they are written; a single table stands for itself."""
    value = inside(raw, ("drain",))
    if isinstance(value, dict):
        return [(("drain",), value)]
    rows = value if isinstance(value, list) else []
    return [(("drain", n), row) for n, row in enumerate(rows) if isinstance(row, dict)]


def _line(row: Row) -> str:
    return str(row.get("line", "outside"))


def _home(raw: Any, line: str) -> Path | None:
    return next((home for home, row in _drains(raw) if _line(row) == line), None)
