"""What the as-dug survey says about base, grade, foam and concrete."""

from collections.abc import Iterator

from geometry.checks.finding import Finding, Severity
from geometry.layout.lay import Layout
from geometry.sources import GEOMETRY, PRACTICE
from geometry.survey.asdug import AreaDug, AsDug
from geometry.survey.bed import LEAST_SOURCE
from geometry.survey.spots import Spots
from geometry.survey.tolerances import BOARD_M, BOARD_SOURCE, FINE_GRADE, Tolerance
from geometry.survey.tops import Top
from geometry.units import (
    System,
    show_area,
    show_length,
    show_level,
    show_volume,
)

# More base than planned by this share is worth a look (common practice, no source).
_MORE = 0.1
# Less than this is not said: area in m2, volume in m3.
_CRUMB_M2, _CRUMB_M3 = 0.01, 1e-4


def survey_findings(layout: Layout, dug: AsDug) -> list[Finding]:
    """Return what was found about each surveyed area and about the concrete."""
    system = layout.design.project.units
    found: list[Finding] = []
    for area in dug.areas:
        found += [_volume(area, system), _thin(area, system), *_grade(area, system)]
        found += [*_lifts(area), *_beyond(area, system), *_ponds(area, system)]
    found += [*_tops(dug.tops, system), *_foam_on_footing(dug, system), *_doubts(dug)]
    return found


def _volume(area: AreaDug, system: System) -> Finding:
    ground = area.ground
    more = ground.base_m3 - ground.planned_m3
    grave: Severity = "look" if abs(more) > _MORE * ground.planned_m3 else "fine"
    way = f"{show_volume(abs(more), system)} {'more' if more > 0 else 'less'} than"
    return Finding(
        "survey-base-volume",
        grave,
        area.name,
        f"{show_volume(ground.base_m3, system)} of {area.bed.layer} between the dug ground and its "
        f"planned top, {way if abs(more) > _CRUMB_M3 else 'as much as'} planned",
        f"{show_volume(ground.planned_m3, system)} in the design",
        GEOMETRY,
        "Order by the dug ground; nothing is added for compaction or waste.",
    )


def _thin(area: AreaDug, system: System) -> Finding:
    ground = area.ground
    least = _thick(ground.least_m, system)
    worst = f"thinnest {_thick(ground.thinnest.value, system)} at {_at(area, system)}"
    if ground.thin_m2 < _CRUMB_M2:
        return Finding("survey-base-thin", "fine", area.name,
                       f"the {area.bed.layer} is nowhere thinner than {least}; {worst}",
                       f"{least} at least", LEAST_SOURCE, "Lay it so.")  # fmt: skip
    bare = ground.thinnest.value <= 0
    return Finding(
        "survey-base-thin",
        "stop" if bare else "look",
        area.name,
        f"on {show_area(ground.thin_m2, system)} the {area.bed.layer} comes out thinner than "
        f"{least}; {'the ground stands above its top, ' if bare else ''}{worst}",
        f"{least} at least",
        LEAST_SOURCE,
        "Cut the ground down there, or raise every layer.",
    )


def _at(area: AreaDug, system: System) -> str:
    place = area.ground.thinnest
    return _where(place.x, place.y, system)


def _where(x: float, y: float, system: System) -> str:
    """Return a place to the inch or the millimetre."""
    across, up = (show_length(round(metres, 3), system, 1) for metres in (x, y))
    return f"x {across}, y {up}"


def _thick(metres: float, system: System) -> str:
    """Return a height to the eighth of an inch or the millimetre, as a rod is read."""
    return show_length(_read(metres, system), system, 8)


def _off(metres: float, system: System) -> str:
    return show_level(_read(metres, system), system, 8)


def _read(metres: float, system: System) -> float:
    return round(metres, 3) if system == "metric" else metres


def _grade(area: AreaDug, system: System) -> Iterator[Finding]:
    for spots, act in ((area.high, "Cut it down."), (area.low, "Fill it with base, tamped.")):
        yield from _spots(area, spots, act, system)


def _spots(area: AreaDug, spots: Spots, act: str, system: System) -> Iterator[Finding]:
    if not spots.count:
        return
    worst = spots.worst[0]
    noun = f"{worst.kind} spot" + ("" if spots.count == 1 else "s")
    yield Finding(
        f"survey-{worst.kind}-spots",
        "look",
        area.name,
        f"{spots.count:,} {noun}; the worst {_off(worst.off_m, system)} off the planned "
        f"subgrade at {_where(worst.x, worst.y, system)}",
        f"the fine grade within {_span(FINE_GRADE, system)}",
        FINE_GRADE.source,
        act,
    )


def _span(tolerance: Tolerance, system: System) -> str:
    up, down = (_thick(x, system) for x in (tolerance.above, tolerance.below))
    return f"±{up}" if tolerance.above == tolerance.below else f"+{up}, -{down}"


def _lifts(area: AreaDug) -> Iterator[Finding]:
    count = area.foam.count("lifts off")
    if count:
        yield Finding(
            "survey-foam-ground", "stop", area.name,
            f"at {count:,} {_shots(count)} the ground stands above the {area.bed.layer}'s planned "
            "top: the foam cannot lie flat nor meet top of footing there",
            "foam flat on its bed", BOARD_SOURCE, "Cut the ground down there.",
        )  # fmt: skip


def _shots(count: int) -> str:
    return "shot" if count == 1 else "shots"


def _beyond(area: AreaDug, system: System) -> Iterator[Finding]:
    ground = area.ground
    if ground.beyond_m2 > _CRUMB_M2:
        yield Finding(
            "survey-not-covered", "look", area.name,
            f"{show_area(ground.beyond_m2, system)} of {show_area(ground.area_m2, system)} of the "
            "floor lie beyond the outermost shots; the level at the nearest edge of the shots is "
            f"carried on there, {show_volume(ground.base_beyond_m3, system)} of the base",
            "shots along the footing and in every corner", PRACTICE, "Shoot the edges too.",
        )  # fmt: skip


def _ponds(area: AreaDug, system: System) -> Iterator[Finding]:
    ponds = area.ponds
    if ponds.volume_m3 > _CRUMB_M3:
        deepest = ponds.deepest[0]
        yield Finding(
            "survey-ponds", "look", area.name,
            f"rain stands in {ponds.count:,} {'hollow' if ponds.count == 1 else 'hollows'} of the "
            f"ground, {show_volume(ponds.volume_m3, system)} in all; the deepest "
            f"{_thick(deepest.depth_m, system)} at {_where(deepest.x, deepest.y, system)}",
            "no mud under the base", PRACTICE,
            "Pump it dry before the base goes in; fill hollows with base, not with spoil.",
        )  # fmt: skip


def _tops(tops: tuple[Top, ...], system: System) -> Iterator[Finding]:
    for kind in dict.fromkeys(top.on for top in tops):
        rows = [top for top in tops if top.on == kind]
        out = [top for top in rows if not top.within]
        worst = max(rows, key=lambda top: abs(top.off_m))
        span, count = _span(worst.tolerance, system), len(rows)
        yield Finding(
            "survey-concrete",
            "look" if out else "fine",
            kind,
            f"{count - len(out):,} of {count:,} {_shots(count)} within tolerance; the farthest off "
            f"its planned top is shot {worst.shot} (row {worst.row}), "
            f"{_off(worst.off_m, system)}",
            f"the top within {span} of the plan",
            worst.tolerance.source,
            "Ask what stands on it before grinding or shimming." if out else "Leave it so.",
        )


def _foam_on_footing(dug: AsDug, system: System) -> Iterator[Finding]:
    foam = dug.foam_on_footing
    lifts, gaps = foam.count("lifts off"), foam.count("gap under it")
    if lifts or gaps:
        yield Finding(
            "survey-foam-footing", "look", "foam over the footing",
            f"it lifts off at {lifts:,} and hangs over a gap at {gaps:,} of {len(foam.code):,} "
            f"{_shots(len(foam.code))} on the footing",
            f"the footing within {show_length(BOARD_M, system)} of its planned top, for boards to "
            "lie flat",
            BOARD_SOURCE, "Grind or notch where it lifts; bed it in sand where it hangs.",
        )  # fmt: skip


def _doubts(dug: AsDug) -> Iterator[Finding]:
    count = sum(fault.weight == "doubt" for fault in dug.faults)
    if count:
        yield Finding(
            "survey-doubts", "look", "the shots",
            f"{count:,} {_shots(count)} may be wrong; they are listed with their rows",
            "shots that agree with their neighbours", PRACTICE, "Shoot those places again.",
        )  # fmt: skip
