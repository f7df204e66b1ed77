"""The vapor retarder: strips over each area, rolls to buy, tape for laps and openings."""

from collections.abc import Iterator
from functools import lru_cache

from geometry.layout.bodies import Body
from geometry.layout.lay import Layout
from geometry.takeoff.foam import covered
from geometry.takeoff.row import Cut, CutList, Part, Row
from geometry.takeoff.sticks import cut_runs
from geometry.takeoff.strips import Roll, StripLayout, lay_strips
from geometry.takeoff.tape import tape_row
from geometry.takeoff.usual import factor

Laid = tuple[Body, StripLayout]


def strip_layouts(layout: Layout) -> Iterator[Laid]:
    """Yield each retarder with its strips, ready to be drawn on the plan."""
    for body in layout.floors:
        if body.label.role == "retarder" and body.prisms:
            yield body, _strips(layout, body)


@lru_cache(maxsize=16)
def _strips(layout: Layout, body: Body) -> StripLayout:
    keys = ("roll_width", "roll_length", "lap", "turn_up")
    width, length, lap, up = (factor(layout.design, f"sheet.{key}").value for key in keys)
    return lay_strips(covered(body), Roll(width, length, lap), up)


def sheet_rows(layout: Layout) -> Iterator[tuple[Row, CutList | None]]:
    """Yield a row for each kind of sheet, areas cut from the same rolls, and one for tape."""
    all_laid = list(strip_layouts(layout))
    for material in dict.fromkeys(body.label.material for body, _ in all_laid):
        yield _sheet(layout, [laid for laid in all_laid if laid[0].label.material == material])
    taped = [Part(body.label.area, s.seam_m + s.holes_m) for body, s in all_laid]
    if sum(p.in_place for p in taped) > 0:
        yield tape_row(layout.design, "sheet", taped), None


def _sheet(layout: Layout, laid: list[Laid]) -> tuple[Row, CutList]:
    label, design = laid[0][0].label, layout.design
    keys = ("lap", "turn_up", "roll_width", "roll_length")
    factors = tuple(factor(design, f"sheet.{key}") for key in keys)
    width, length = factors[2].value, factors[3].value
    runs = [Cut(f"{b.label.area}, {r.what}", r.length_m) for b, s in laid for r in s.runs]
    cutting = cut_runs(runs, length, factors[0].value)
    parts = tuple(Part(b.label.area, float(covered(b).area)) for b, _ in laid)
    row = Row(
        "sheet", label.name, label.material, "", sum(p.in_place for p in parts), "m2", factors,
        cutting.length_m * width, "roll", len(cutting.stocks), parts,
        note=f"{len(runs)} strips; turned up at walls, openings cut out as it lies",
    )  # fmt: skip
    return row, CutList(label.name, label.material, length, cutting.stocks, cutting.joints)
