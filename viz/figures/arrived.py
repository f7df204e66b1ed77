"""What has arrived of stone and sand beside what is needed, as level bars to one scale."""

from collections.abc import Iterator, Sequence

from geometry.takeoff.deliveries import Arrived
from geometry.units import System, show_volume
from viz.drawing.figure import Figure, figure
from viz.figures.ground.bars import Bar, Group, bar_marks
from viz.tables.delivery_tables import both
from viz.words import material_name


def arrived_figure(
    rows: Sequence[Arrived], system: System, width: float, text: float
) -> Figure | None:
    """Return a group of bars for each material; None where nothing is needed.

    width: at most, mm. text: height of capitals, mm. What a weight leaves open is shown open.
    """
    groups = [Group(material_name(row.material), tuple(_bars(row, system))) for row in rows]
    if not groups:
        return None
    told = "Loose, as it lies on the truck. Open: between the heaviest and the lightest it may be."
    marks = bar_marks(groups, None, width, text)
    return figure("arrived", "What has arrived", marks, None, told)


def _bars(row: Arrived, system: System) -> Iterator[Bar]:
    yield Bar("needed", row.needed_m3, show_volume(row.needed_m3, system))
    if row.arrived_m3 is None:
        yield Bar("arrived", 0.0, both(None, row.arrived_kg, system))
        return
    low, high = row.arrived_m3
    words = both((low, high), None, system).split(", ")[0] if high > 0 else "nothing"
    yield Bar("arrived", low, words, high - low)
