"""The survey's figures for other programs: plain records, metres, square and cubic metres."""

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from geometry.survey.asdug import AreaDug, AsDug
from geometry.survey.foam import VERDICTS, Foam
from geometry.survey.spots import Spots
from geometry.survey.tops import Top


def survey_figures(dug: AsDug) -> dict[str, Any]:
    """Return all but the single shots' verdicts on the ground, as dictionaries and lists."""
    return {
        "faults": [asdict(fault) for fault in dug.faults],
        "shots": len(dug.shots),
        "areas": [_area(area) for area in dug.areas],
        "tops": [_top(top) for top in dug.tops],
        "foam_on_footing": _foam(dug.foam_on_footing),
    }


def _area(area: AreaDug) -> dict[str, Any]:
    ponds = area.ponds
    return {
        "area": area.name,
        "layer": area.bed.layer,
        "shots": len(area.index),
        "shots_outside_the_floor": area.outside,
        "planned_top_m": area.bed.top,
        "planned_subgrade_m": area.bed.subgrade,
        "ground": asdict(area.ground),
        "high_spots": _spots(area.high),
        "low_spots": _spots(area.low),
        "ponds": {
            "count": ponds.count,
            "volume_m3": ponds.volume_m3,
            "ends": ponds.ends,
            "deepest": _records(ponds.deepest),
        },
        "foam": _foam(area.foam),
    }


def _spots(spots: Spots) -> dict[str, Any]:
    return {"count": spots.count, "worst": _records(spots.worst)}


def _records(rows: Sequence[Any]) -> list[dict[str, Any]]:
    return [asdict(row) for row in rows]


def _top(top: Top) -> dict[str, Any]:
    source = str(top.tolerance.source)
    allowed = {"above_m": top.tolerance.above, "below_m": top.tolerance.below, "source": source}
    kept = {k: v for k, v in asdict(top).items() if k != "tolerance"}
    return {**kept, "off_m": top.off_m, "within": top.within, "tolerance": allowed}


def _foam(foam: Foam) -> dict[str, int]:
    return {verdict: foam.count(verdict) for verdict in VERDICTS}
