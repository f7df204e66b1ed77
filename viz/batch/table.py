"""The table of a batch: a line a design, its main figures with their units in the heads."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from geometry.designfile import save
from geometry.units import FOOT, to_unit
from geometry.variants.main_figures import MainFigures
from viz.batch.run import Line
from viz.export.csvfile import to_csv
from viz.export.parquetfile import to_parquet
from viz.export.xlsxfile import to_xlsx
from viz.tables.report_tables import YARDS
from viz.tables.table import Cell, Table
from viz.words import SEVERITIES

NAME = "designs"


def table(lines: Sequence[Line]) -> Table:
    """Return all lines; places that are varied have a column each behind the name."""
    places = list(dict.fromkeys(place for line in lines for place, _ in line.asked.varied))
    head = ("design", *places, "status", "note", "project", "units")
    rows = []
    for line in lines:
        varied, out = dict(line.asked.varied), line.outcome
        made = out.figures
        told = (made.project, made.units) if made else (None, None)
        figures = _figures(made) if made else [None] * len(_HEADS)
        rows.append(
            (line.asked.name, *(varied.get(place) for place in places), out.status,
             "; ".join(filter(None, (out.note, out.set_note))), *told, *figures, out.seconds)
        )  # fmt: skip
    return Table((*head, *_HEADS, "seconds"), tuple(rows))


_HEADS = (
    "tof_elevation_m", "tof_elevation_ft", "floor_area_m2", "floor_area_ft2",
    "finished_floor_above_tof_m", "finished_floor_above_tof_in", "concrete_m3", "concrete_yd3",
    "stone_m3", "stone_yd3", "sand_m3", "sand_yd3", "foam_m3", "foam_boards", "drain_length_m",
    "drain_length_ft", "drain_fall_percent", "drain_fall_in_per_ft", "worst_severity",
    "worst_about", "worst_found", "findings_stop", "findings_look", "findings_fine",
    "heat_loss_w_per_k", "heat_loss_btu_per_h_f", "order_cost_least", "order_cost_most",
)  # fmt: skip


def _figures(made: MainFigures) -> list[Cell]:
    """Return the figures in the order of the heads, to the micrometre or its like."""
    loss, fall, drain = made.loss_w_k, made.drain_fall, made.drain_m
    cells: list[Cell] = [
        made.tof_m, made.tof_m / FOOT, made.floor_m2, made.floor_m2 / FOOT**2,
        made.finished_floor_m, made.finished_floor_m / FOOT * 12,
        *(v for m3 in (made.concrete_m3, made.stone_m3, made.sand_m3) for v in (m3, m3 * YARDS)),
        made.foam_m3, made.foam_boards,
        drain, None if drain is None else drain / FOOT,
        None if fall is None else fall * 100, None if fall is None else fall * 12,
        SEVERITIES[made.worst], made.worst_about, made.worst_found,
        made.stops, made.looks, made.fines,
        loss, None if loss is None else to_unit(loss, "W/K", "Btu/(hour*delta_degF)"),
        made.cost_least, made.cost_most,
    ]  # fmt: skip
    return [round(c, 6) + 0.0 if isinstance(c, float) else c for c in cells]


def write_tables(lines: Sequence[Line], folder: Path) -> Iterator[Path]:
    """Write the table as CSV, workbook and Parquet; yield the files. Raises FileError."""
    made = table(lines)
    for ending, data in (
        (".csv", to_csv(made).encode("utf-8")),
        (".xlsx", to_xlsx([("Designs", made)])),
        (".parquet", to_parquet(made)),
    ):
        path = folder / f"{NAME}{ending}"
        save(path, data)
        yield path
