"""The report's records, made of what the layout, the checks and the take-off say."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.layout.leveltable import level_rows
from geometry.report_rows import Bars, Found, Level, Verdict, Volume
from geometry.units import to_unit

if TYPE_CHECKING:
    from geometry.checks.cold import ColdConcrete
    from geometry.checks.find import Foam
    from geometry.checks.finding import Finding
    from geometry.checks.foam import FoamVerdict
    from geometry.heat.floors import FloorHeat
    from geometry.layout.areas import AreaLayout
    from geometry.layout.lay import Layout
    from geometry.takeoff.volumes import PartVolume


def level_records(layout: Layout) -> tuple[Level, ...]:
    """Return every level of a layout."""
    return tuple(
        Level(
            area=r.area,
            group=r.group,
            interface=r.interface,
            level_m=r.level,
            elevation_m=r.elevation,
            rod_reading_m=r.rod,
            thickness_below_m=r.thickness_below,
        )
        for r in level_rows(layout)
    )


def volume_record(part: PartVolume) -> Volume:
    """Return one part's volume, in the units it is bought by as well."""
    label, volume = part.label, part.volume
    return Volume(
        part=label.part,
        name=label.name,
        area=label.area,
        role=label.role,
        material=label.material,
        volume_m3=volume,
        volume_ft3=to_unit(volume, "m**3", "ft**3"),
        volume_yd3=to_unit(volume, "m**3", "yd**3"),
    )


def verdict_record(area: AreaLayout, verdict: FoamVerdict, cold: ColdConcrete) -> Verdict:
    """Return how an area's foam meets its top of footing, levels against that."""
    bottom, top = verdict.foam_bottom_m, verdict.foam_top_m
    return Verdict(
        area=verdict.area,
        meeting=verdict.meeting,
        foam_bottom_m=None if bottom is None else bottom - area.tof,
        foam_top_m=None if top is None else top - area.tof,
        gap_m=verdict.gap_m,
        cold_ledge_m2=verdict.ledge_m2,
        cold_concrete_m2=cold.cold_m2,
        cold_share=cold.share,
        cold_faces_m2={f.contact: f.area_m2 for f in cold.faces},
    )


def warmth_records(layout: Layout, foam: tuple[Foam, ...]) -> tuple[FloorHeat, ...]:
    """Return the heat of each area's floor, where enough is given to reckon it."""
    from geometry.heat.floors import floor_heat

    pairs = zip(layout.areas, foam, strict=True)
    found = (floor_heat(layout, area, cold.share) for area, (_, cold) in pairs)
    return tuple(heat for heat in found if heat)


def found_record(finding: Finding) -> Found:
    """Return one finding in words."""
    return Found(
        id=finding.id,
        severity=finding.severity,
        subject=finding.subject,
        found=finding.found,
        asked=finding.asked,
        source=str(finding.source),
        advice=finding.advice,
    )


def bars_records(layout: Layout) -> tuple[Bars, ...]:
    """Return the footing bars of each area that has any."""
    rows = []
    for area in layout.areas:
        bars = area.footing.bars
        if bars.count:
            # The strip's area over its width is its length along the middle.
            along = float(area.footings.area) / area.footing.width
            rows.append(
                Bars(area=area.name, count=bars.count, size=bars.size, length_m=bars.count * along)
            )
    return tuple(rows)
