"""Notes on the floors: layers, foam, retarder."""

from collections.abc import Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.report import Report, Verdict
from geometry.units import System, show_area, show_elevation, show_length, show_level
from viz.figures.wording import has, layer_words, within

# IRC R506.2.3: joints of the retarder under a slab lapped not less than 6 in (152 mm).
_LAP: dict[System, str] = {"ft-in": "6 in", "metric": "150 mm"}


def floors(layout: Layout, report: Report) -> Iterator[str]:
    """Yield each floor's build-up and foam, and how the retarder is laid."""
    verdicts = {verdict.area: verdict for verdict in report.foam}
    for area in layout.areas:
        yield _build_up(layout, area)
        yield _meeting(layout, area, verdicts[area.name])
        board = area.floor.edge_board
        if board:
            thick = show_length(board.thickness, layout.design.project.units)
            yield (
                f"Edge board, {area.name}: {within(board.material)}, {thick}, between floor "
                "and wall."
            )
    if has(layout, "retarder"):
        lap = _LAP[layout.design.project.units]
        yield (
            f"Vapor retarder: laps of at least {lap} (IRC R506.2.3), taped; cut close and taped "
            "to walls, piers and pipes; holes mended before the pour."
        )


def _build_up(layout: Layout, area: AreaLayout) -> str:
    system = layout.design.project.units
    layers = [layer_words(layer, system) for layer in area.floor.layers]
    floor, cut = area.finished_floor, area.subgrade
    top = layout.design.datum.top_of_footing + floor
    return (
        f"Floor, {area.name}, from the bottom: {'; '.join(layers)}. Subgrade at "
        f"{show_level(cut, system)}, finished floor at {show_level(floor, system)} "
        f"(elevation {show_elevation(top, system)})."
    )


def _meeting(layout: Layout, area: AreaLayout, verdict: Verdict) -> str:
    system = layout.design.project.units
    gap = show_length(abs(verdict.gap_m), system)
    ledge = show_area(verdict.cold_ledge_m2, system)
    said = {
        "over footing": "bottom at top of footing; it runs over the footing to the wall",
        "stopped at footing": "top at top of footing; it stops at the footing and the slab's "
        f"edge bears on the footing's inner ledge, {ledge} without foam under it",
        "between": f"bottom {gap} below top of footing, top above it",
        "above footing": f"bottom {gap} above top of footing",
        "below footing": f"top {gap} below top of footing",
    }
    if verdict.meeting not in said:
        return f"Foam, {area.name}: none under the floor."
    return f"Foam, {area.name}: {said[verdict.meeting]}."
