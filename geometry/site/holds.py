"""Hold points: what must be seen, and by whom, before a stage is covered."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.site.records import Figure, Hold, Stage, StageKey, Watcher
from geometry.sources import PRACTICE, Source
from geometry.takeoff.usual import factor
from geometry.units import INCH

_GRADE = Source("ACI 117-10", clause="4.4.5")
_LISTS = Source("Durham NC, Henrico VA")
_UNDER = Source("Stevens Point WI, Chisago MN")
_SHEET = Source("ASTM E1643", clause="7.2-7.4", sure="second-hand")
_SAW = Source("ACI 302.1R, 360R", sure="second-hand")
_FLAT = Source("common practice", sure="memory")

# The fine grade under a slab, and its finished top, may stray so much up and down.
GRADE_M = {"ft-in": 0.75 * INCH, "metric": 0.019}
# What lies under boards is flat to so much along one of them.
BOARD_FLAT_M = {"ft-in": 0.25 * INCH, "metric": 0.006}
# A sawn joint is this share of the slab deep, at least so much.
SAW_SHARE = 0.25
SAW_LEAST_M = {"ft-in": 1 * INCH, "metric": 0.025}
# Joints stand so many thicknesses of the slab apart, at the most.
JOINTS = 30
CURE_DAYS = 7

_BOTH: tuple[Watcher, ...] = ("builder", "inspector")
_BY: dict[StageKey, tuple[Watcher, ...]] = {
    "subgrade": _BOTH, "bedding": ("builder",), "pipe": ("builder",), "inverts": _BOTH,
    "drain_stone": ("inspector",), "backfill": ("builder",), "pit": ("inspector",),
    "fill": ("builder",), "base": _BOTH,
    "blinding": ("builder",), "retarder": _BOTH, "insulation": _BOTH, "edge_board": ("builder",),
    "slab": ("builder",),
}  # fmt: skip
_SOURCES: dict[StageKey, Source] = {
    "subgrade": _GRADE, "inverts": _LISTS, "drain_stone": _LISTS, "pit": _UNDER, "base": _GRADE,
    "blinding": _FLAT, "retarder": _SHEET, "insulation": _LISTS, "slab": _SAW,
}  # fmt: skip


def holds(layout: Layout, stage: Stage, before_pour: bool) -> tuple[Hold, ...]:
    """Return what is seen before a stage is covered. before_pour: a slab is next."""
    under = stage.key == "drain_stone" and any(
        d.inside for d in layout.drains if d.key == stage.drain
    )
    key, source = (
        (f"{stage.key}_inside", _UNDER) if under else (stage.key, _SOURCES.get(stage.key, PRACTICE))
    )
    own = Hold(key, _BY[stage.key], source, tuple(_figures(layout, stage)))
    return (own, Hold("pour", ("inspector",), _LISTS)) if before_pour else (own,)


def _figures(layout: Layout, stage: Stage) -> Iterator[Figure]:
    design = layout.design
    system = design.project.units
    match stage.key:
        case "subgrade" | "base":
            yield Figure("stray", GRADE_M[system])
        case "blinding":
            yield Figure("flat", BOARD_FLAT_M[system])
        case "retarder":
            yield Figure("lap", factor(design, "sheet.lap").value)
            yield Figure("turn_up", factor(design, "sheet.turn_up").value)
        case "drain_stone":
            drain = next(d for d in layout.drains if d.key == stage.drain)
            yield Figure("lap", drain.drain.wrap.overlap)
        case "slab":
            thick = stage.thickness[1] if stage.thickness else 0.0
            yield Figure("stray", GRADE_M[system])
            yield Figure("saw", max(SAW_SHARE * thick, SAW_LEAST_M[system]))
            yield Figure("joints", JOINTS * thick)
            yield Figure("days", CURE_DAYS, "count")
