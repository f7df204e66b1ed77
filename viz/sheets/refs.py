"""What the plan points to: the cut of each section, the place of each detail."""

from collections.abc import Iterator, Sequence

from viz.figures.plan.refs import DetailRef, SectionRef
from viz.pictures import Shot
from viz.sheets.sheet import Leaf

# A circle on the plan is drawn no larger than this round its detail, metres.
_WIDEST_M = 1.2


def section_refs(shots: Sequence[Shot], leaves: Sequence[Leaf]) -> tuple[SectionRef, ...]:
    """Return the cutting lines of sections, with the drawing and sheet each leads to."""
    by_name = {shot.name: shot for shot in shots}
    return tuple(
        SectionRef(by_name[name].line.path, number, sheet)
        for name, number, sheet in _numbered(leaves)
        if name in by_name  # what stands beside the sections is cut nowhere
    )


def detail_refs(shots: Sequence[Shot], leaves: Sequence[Leaf]) -> tuple[DetailRef, ...]:
    """Return the places of details, with the drawing and sheet each leads to."""
    by_name = {shot.name: shot for shot in shots}
    found = []
    for name, number, sheet in _numbered(leaves):
        shot = by_name[name]
        if shot.window is not None:
            left, _, right, _ = shot.window
            at = shot.line.place((left + right) / 2)
            radius = min(_WIDEST_M, (right - left) / 2)
            found.append(DetailRef(at, radius, number, sheet))
    return tuple(found)


def _numbered(leaves: Sequence[Leaf]) -> Iterator[tuple[str, str, str]]:
    """Yield the name of every drawing, its number on its sheet, and the sheet."""
    for leaf in leaves:
        for one in leaf.figures:
            yield one.figure.name, str(one.number), leaf.number
