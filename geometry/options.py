"""The ways a floor can meet footing, wall and pads, as changed designs, and what each moves."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.faults.find import faults
from geometry.layout.areas import AreaLayout, lay_areas
from geometry.layout.floors import edge_prism
from geometry.layout.footings import pad_prism
from geometry.materials.catalogue import find
from geometry.parts.fields import LevelAt, Tie
from geometry.parts.floor import EdgeBoard, Floor, Layer
from geometry.parts.pier import Pier
from geometry.project import Design
from geometry.report import Report
from geometry.rules.limit import MET_WITHIN_M
from geometry.units import INCH, System, show_length

# The board between slab and wall unless the floor states one (common practice, no source).
_BOARD_M: dict[System, float] = {"ft-in": 1 * INCH, "metric": 0.025}


PADS = ("pads raised", "pads under")
"""Keys of the ways that differ at the piers' pads alone: through the foam, or under it."""


@dataclass(frozen=True)
class EdgeOption:
    """One way to make the floor's edge in the lowest area.

    key: "over", "stopped", "turned up" or, where there are piers, one of `PADS`. same: it is what
    the design has already. design: the whole changed design; None where it cannot be built, and
    `faults` says why in sentences.
    """

    key: str
    title: str
    note: str
    design: Design | None
    same: bool = False
    faults: tuple[str, ...] = ()


@dataclass(frozen=True)
class Change:
    """A figure before and after, SI."""

    before: float
    after: float

    @property
    def by(self) -> float:
        """After less before."""
        return self.after - self.before


@dataclass(frozen=True)
class Moved:
    """What a change of design moves in the lowest area.

    finished_floor, subgrade: levels against the project's TOF, metres. headroom: finished floor
    to top of wall, metres. cold_ledge: slab on the footing's inner ledge, m2. pad_top: level of the
    highest pad, 0 without piers. cold_piers: slab on pads and columns through the foam, m2.
    """

    finished_floor: Change
    subgrade: Change
    headroom: Change
    cold_ledge: Change
    pad_top: Change
    cold_piers: Change


def edge_options(design: Design) -> tuple[EdgeOption, ...]:
    """Return the ways to make the edge of a sound design's lowest floor.

    None for a floor without insulation under a slab. Piers and the pit follow their level words,
    but for the way that makes the pads otherwise than they are.
    """
    area = lay_areas(design)[0]
    roles = [layer.role for layer in area.floor.layers]
    foam = [n for n, role in enumerate(roles) if role == "insulation"]
    return tuple(_options(design, area)) if foam and "slab" in roles[foam[-1] :] else ()


def moved(before: Report, after: Report) -> Moved:
    """Return what moves between two reports on one house."""
    old, new = _figures(before), _figures(after)
    return Moved(*(Change(a, b) for a, b in zip(old, new, strict=True)))


def _figures(made: Report) -> tuple[float, float, float, float, float, float]:
    """Return the figures of `Moved` in their order, of the lowest area."""
    verdict = made.foam[0]
    rows = {r.interface: r.level_m for r in made.levels if r.area == verdict.area}
    floor = next(z for name, z in rows.items() if name.endswith("(finished floor)"))
    pads = [z for name, z in rows.items() if name.startswith("pad ") and name.endswith(" top")]
    cold = verdict.cold_faces_m2
    piers = cold.get("slab on pier", 0.0) + cold.get("pier through foam", 0.0)
    headroom = rows["top of wall"] - floor
    return (
        floor, rows["subgrade"], headroom, verdict.cold_ledge_m2, max(pads, default=0.0), piers,
    )  # fmt: skip


def _options(design: Design, area: AreaLayout) -> Iterator[EdgeOption]:
    floor = area.floor
    over = floor.model_copy(update={"tie": ()})
    name = over.ties[0].interface.removesuffix(" bottom")
    sheet = " and the sheet under it run" if _named(floor, name).role == "retarder" else " runs"
    over = floor.model_copy(update={"tie": over.ties, "edge_board": _kept(floor)})
    laid_over = _option(
        design,
        area,
        ("over", "Foam over the footing"),
        f"The foam{sheet} over the footing to the wall; no part of the slab touches the footing.",
        over,
    )
    yield laid_over
    foam = [layer for layer in floor.layers if layer.role == "insulation"][-1]
    tie = Tie(interface=f"{foam.name.lower()} top", at=LevelAt(base="TOF"))
    stopped = floor.model_copy(update={"tie": (tie,), "edge_board": None})
    yield _option(
        design,
        area,
        ("stopped", "Foam stopped at the footing"),
        "The foam's top meets TOF; the slab sits on the footing's inner ledge, cold there.",
        stopped,
    )
    board = _board(floor, foam, design.project.units)
    row = find(board.material)
    kind = f"{row.name[:1].lower()}{row.name[1:]}" if row else board.material
    thick = show_length(board.thickness, design.project.units)
    yield _option(
        design,
        area,
        ("turned up", "Foam stopped, edge turned up"),
        "As stopped, and a board stands between slab and wall, from the footing up to the finished "
        f"floor: {thick}, {kind}.",
        stopped.model_copy(update={"edge_board": board}),
    )
    if area.area.piers and not laid_over.faults:
        yield _pads_otherwise(design, area, laid_over.design or design, over, foam)


def _pads_otherwise(
    design: Design, area: AreaLayout, laid_over: Design, over: Floor, foam: Layer
) -> EdgeOption:
    """Return foam over the footing with the pads raised through it, or under it if they are."""
    there = lay_areas(laid_over)[0]
    through = _level(f"{foam.name.lower()} top")
    top = there.level(through) - MET_WITHIN_M
    raised = all(pad_prism(there, pier).top >= top for pier in area.area.piers)
    at = _level("TOF") if raised else through
    piers = tuple(p.model_copy(update={"pad_top": at}) for p in area.area.piers)
    named, note = (
        (("pads under", "Foam over the footing and the pads"),
         "As over the footing, and the pads end under the foam: no part of the slab touches them.")
        if raised
        else (("pads raised", "Foam over the footing, pads raised"),
              "As over the footing, and the pads come up through the foam to its top: the slab "
              "sits on them, cold there.")
    )  # fmt: skip
    return _option(design, area, named, note, over, piers)


def _named(floor: Floor, name: str) -> Layer:
    return next(layer for layer in floor.layers if layer.name == name)


def _kept(floor: Floor) -> EdgeBoard | None:
    """Return the floor's own board beside the slab alone: foam that runs to the wall passes it."""
    if floor.edge_board is None:
        return None
    slab = [layer for layer in floor.layers if layer.role == "slab"][-1]
    levels = {"bottom": _level(f"{slab.name.lower()} bottom"), "top": _level("finished floor")}
    return floor.edge_board.model_copy(update=levels)


def _board(floor: Floor, foam: Layer, system: System) -> EdgeBoard:
    """Return the board from the footing up, of the floor's own kind if it has one."""
    own = floor.edge_board
    return EdgeBoard(
        material=own.material if own else foam.material,
        thickness=own.thickness if own else _BOARD_M[system],
        bottom=_level("TOF"),
        top=_level("finished floor"),
    )


def _level(base: str) -> LevelAt:
    return LevelAt(base=base)


def _option(
    design: Design,
    area: AreaLayout,
    named: tuple[str, str],
    note: str,
    floor: Floor,
    piers: tuple[Pier, ...] | None = None,
) -> EdgeOption:
    own = area.area.model_copy(update={"floor": floor, "piers": piers or area.area.piers})
    areas = tuple(own if a.name == area.name else a for a in design.areas)
    changed = design.model_copy(update={"areas": areas})
    wrong = tuple(at.sentence for at in faults(changed))
    if wrong:
        return EdgeOption(*named, note, None, faults=wrong)
    same = _same(area, lay_areas(changed)[0])
    return EdgeOption(*named, note, design if same else changed, same)


def _same(one: AreaLayout, two: AreaLayout) -> bool:
    """Whether two floors of the same layers lie and end alike, and their pads as high."""
    boards, edges = (one.floor.edge_board, two.floor.edge_board), (edge_prism(one), edge_prism(two))
    levels = [(one.subgrade, two.subgrade)]
    if edges[0] and edges[1]:
        levels += [(edges[0].bottom, edges[1].bottom), (edges[0].top, edges[1].top)]
    pads = zip(one.area.piers, two.area.piers, strict=True)
    levels += [(pad_prism(one, a).top, pad_prism(two, b).top) for a, b in pads]
    kinds = [(b.material, b.thickness) if b else None for b in boards]
    return kinds[0] == kinds[1] and all(abs(a - b) <= MET_WITHIN_M for a, b in levels)
