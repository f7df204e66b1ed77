"""General notes of a permit set, written from one design; nothing the model does not hold."""

from collections.abc import Iterator

from geometry.label import Role
from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS
from geometry.report import Report
from geometry.units import show_elevation, show_length, show_level
from viz.figures.notes.concrete import concrete, footings
from viz.figures.notes.floor import floors
from viz.figures.notes.water import drain, sump
from viz.figures.wording import has, joined, within
from viz.words import size


def general_notes(layout: Layout, report: Report) -> tuple[str, ...]:
    """Return the notes in order, one sentence or a few each, with this job's numbers."""
    return (
        *_reading(layout),
        *_ground(layout),
        *footings(layout),
        *concrete(layout),
        *floors(layout, report),
        *drain(layout),
        *sump(layout),
        *_backfill(layout),
        *_holds(layout),
        *_heavy(layout),
    )


def preparers_statement(layout: Layout) -> tuple[str, ...]:
    """Return who made the drawings and what they are not."""
    about = layout.design.project
    by = about.prepared_by or "the owner or builder"
    wished = f" for {about.drawn_for}" if about.drawn_for else ""
    return (
        f"Prepared{wished} by {by}; not sealed by an architect or engineer.",
        "The building department's requirements and any soils report govern over these drawings.",
        "Have an engineer design walls, footings or ground that lie outside the tables of the "
        "local code.",
    )


def _reading(layout: Layout) -> Iterator[str]:
    system, datum = layout.design.project.units, layout.design.datum
    words = (
        "Datum: top of footing (TOF), level 0, is elevation "
        f"{show_elevation(datum.top_of_footing, system)}. Levels with + or - are against it."
    )
    steps = [f"{a.name} {show_level(a.tof, system)}" for a in layout.areas if a.tof]
    if steps:
        words += f" Tops of footing elsewhere: {joined(steps)}."
    yield words
    yield (
        "Plan dimensions are to the outside face of the foundation wall unless shown otherwise. "
        "Written dimensions govern; do not scale the drawings."
    )


def _ground(layout: Layout) -> Iterator[str]:
    soil = layout.design.soil
    row = SOILS.get(soil.group)
    confirm = "to be confirmed by the building department or a soils report."
    if row is None or row.group is None:
        words = f"Soil: not stated; {confirm}"
    else:
        words = f"Soil: taken as {row.name}, not tested; {confirm}"
    yield f"{words} {soil.note}".strip()


def _backfill(layout: Layout) -> Iterator[str]:
    design, system = layout.design, layout.design.project.units
    seen = ", and the drain has been inspected" if layout.drains else ""
    if len(layout.drains) > 1:
        seen = ", and the drains have been inspected"
    yield (
        "Backfill only when the walls have their strength and are braced or tied to the floor "
        f"above (IRC R404.1.7){seen}."
    )
    fill = design.backfill
    if fill.stone_top is not None and fill.stone_width > 0:
        yield (
            f"Against the walls: {within(fill.stone)}, "
            f"{size(fill.stone_width, system)} wide, up to {show_level(fill.stone_top, system)}."
        )
    grade = design.grade
    at = f"Finished grade at the wall: {show_level(layout.ground.at_wall, system)}"
    if grade.fall and grade.fall_length:
        drop = show_length(grade.fall * grade.fall_length, system)
        yield f"{at}; falls {drop} in {show_length(grade.fall_length, system)} from the house."
    else:
        yield f"{at}; no fall from the house is given."


def _holds(layout: Layout) -> Iterator[str]:
    parts = [] if not layout.drains else ["drains"] if len(layout.drains) > 1 else ["drain"]
    named: tuple[tuple[Role, str], ...] = (
        ("base", "base"), ("retarder", "vapor retarder"), ("insulation", "foam"),
    )  # fmt: skip
    parts += [words for role, words in named if has(layout, role)]
    if parts:
        yield f"Hold points: {joined(parts)} to be inspected before each is covered."


def _heavy(layout: Layout) -> Iterator[str]:
    sheets = ["vapor retarder"] if has(layout, "retarder") else []
    sheets += ["fabric wrap"] if layout.drains else []
    if sheets:
        yield f"Thin sheets ({joined(sheets)}) are drawn heavy, not to scale."
