"""Tables of the as-dug survey: ground, bands, spots, ponds, tops of concrete, foam at the shots."""

from collections.abc import Iterator

from geometry.survey.asdug import AreaDug, AsDug
from geometry.survey.foam import VERDICTS, Foam
from geometry.survey.ground import Place
from geometry.survey.ponds import Pond
from geometry.survey.spots import Spot
from geometry.units import System, show_area, show_length, show_level, show_volume
from viz.tables.table import Cell, Table

Row = tuple[Cell, ...]


def ground_table(dug: AreaDug, system: System) -> Table:
    """Return the figures of one area's dug ground."""
    ground, layer = dug.ground, dug.bed.layer
    more = ground.base_m3 - ground.planned_m3
    rows: list[Row] = [
        (f"{layer.capitalize()} to the planned top", show_volume(ground.base_m3, system), ""),
        ("In the design", show_volume(ground.planned_m3, system),
         f"{show_volume(abs(more), system)} {'less' if more > 0 else 'more'} than as dug"),
        ("Thickness, mean", thick(ground.mean_m, system), ""),
        ("Thinnest", thick(ground.thinnest.value, system), _at(ground.thinnest, system)),
        ("Thickest", thick(ground.thickest.value, system), _at(ground.thickest, system)),
        (f"Thinner than {thick(ground.least_m, system)}",
         show_area(ground.thin_m2, system), ""),
        ("Ground above planned subgrade", show_volume(ground.cut_m3, system), "to cut"),
        ("Room below planned subgrade", show_volume(ground.low_m3, system), "to fill"),
        ("Floor covered by shots", show_area(ground.covered_m2, system),
         f"of {show_area(ground.area_m2, system)}"),
    ]  # fmt: skip
    if ground.beyond_m2 > 1e-6:
        rows.append(("Beyond the shots, nearest level carried on",
                     show_area(ground.beyond_m2, system),
                     f"{show_volume(ground.base_beyond_m3, system)} of {layer}"))  # fmt: skip
    if dug.outside:
        rows.append(("Shots outside the floor", f"{dug.outside:,}", "shape the ground's edge only"))
    return Table(("As dug", "Figure", "Where, or against"), tuple(rows))


def _at(place: Place | Spot | Pond, system: System) -> str:
    return f"x {whole(place.x, system)}, y {whole(place.y, system)}"


def whole(metres: float, system: System) -> str:
    """Return a size on the ground to the inch, or to the millimetre: no rod reads it finer."""
    return show_length(round(metres, 3), system, 1)


def _level(metres: float, system: System) -> str:
    return show_level(round(metres, 3) if system == "metric" else metres, system, 8)


def thick(metres: float, system: System) -> str:
    """Return a thickness or height to an eighth of an inch, or to the millimetre."""
    return show_length(round(metres, 3) if system == "metric" else metres, system, 8)


def spot_names(dug: AreaDug) -> list[tuple[str, Spot | Pond]]:
    """Return the spots and ponds listed, named as on the map: H1, L1, W1."""
    found: list[tuple[str, Spot | Pond]] = []
    rows: tuple[tuple[str, tuple[Spot | Pond, ...]], ...] = (
        ("H", dug.high.worst), ("L", dug.low.worst), ("W", dug.ponds.deepest)
    )  # fmt: skip
    for letter, listed in rows:
        found += [(f"{letter}{n}", row) for n, row in enumerate(listed, 1)]
    return found


def spots_table(dug: AreaDug, system: System) -> Table:
    """Return high spots, low spots and ponds of one area."""
    head = ("Mark", "What", "At", "Height", "Area", "Volume")
    return Table(head, tuple(_spot(name, row, system) for name, row in spot_names(dug)))


def _spot(name: str, row: Spot | Pond, system: System) -> Row:
    if isinstance(row, Pond):
        what, height = "water stands", f"{thick(row.depth_m, system)} deep"
    else:
        what = "high: cut" if row.kind == "high" else "low: fill"
        height = f"{_level(row.off_m, system)} off subgrade"
    area, volume = show_area(row.area_m2, system), show_volume(row.volume_m3, system)
    return name, what, _at(row, system), height, area, volume


def tops_table(dug: AsDug, system: System) -> Table:
    """Return the tops of footing and pads against the plan."""
    head = ("On", "Shot", "Row", "Planned", "Found", "Off", "Allowed", "Verdict")
    rows = []
    for top in dug.tops:
        up, down = (thick(x, system) for x in (top.tolerance.above, top.tolerance.below))
        planned, found, off = (_level(x, system) for x in (top.planned_m, top.level_m, top.off_m))
        allowed = f"+{up}, -{down}"
        verdict = "within" if top.within else "outside"
        rows.append((top.on, top.shot, str(top.row), planned, found, off, allowed, verdict))
    return Table(head, tuple(rows))


def foam_table(dug: AsDug) -> Table:
    """Return how many shots have which verdict on the foam, on ground and footing."""
    head = ("Foam", *(area.name for area in dug.areas), "on the footing")
    all_foam = [*(area.foam for area in dug.areas), dug.foam_on_footing]
    rows = [(v, *(f"{foam.count(v):,}" for foam in all_foam)) for v in VERDICTS]
    return Table(head, tuple(row for row in rows if any(cell != "0" for cell in row[1:])))


def tables(dug: AsDug, system: System) -> Iterator[tuple[str, Table]]:
    """Yield all tables with rows, each under its title."""
    for area in dug.areas:
        yield f"The dug floor, {area.name}", ground_table(area, system)
        spots = spots_table(area, system)
        if spots.rows:
            yield f"Spots and ponds, {area.name}", spots
    if dug.tops:
        yield "Tops of concrete", tops_table(dug, system)
    if dug.areas or dug.tops:
        yield "Would the foam lie flat and meet top of footing", foam_table(dug)


def shot_figures(dug: AsDug) -> Table:
    """Return every judged shot for other programs: metres."""
    head = ("row", "shot", "area", "on", "x_m", "y_m", "level_m", "thickness_or_gap_m", "foam")
    rows: list[Row] = []
    for area in dug.areas:
        rows += _judged(area.foam, area.name, "ground")
    rows += _judged(dug.foam_on_footing, "", "footing")
    rows.sort(key=lambda row: int(row[0] or 0))
    return Table(head, tuple(rows))


def _judged(foam: Foam, area: str, on: str) -> Iterator[Row]:
    levels = foam.shots.level[foam.index].tolist()
    for row, level in zip(foam.rows(), levels, strict=True):
        yield (row.row, row.shot, area, on, _exact(row.x), _exact(row.y), _exact(level),
               _exact(row.gap_m), row.verdict)  # fmt: skip


def _exact(value: float) -> float:
    """To the micrometre, without the noise of binary arithmetic."""
    return round(value, 6) + 0.0
