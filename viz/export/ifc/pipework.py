"""Pipes and fittings as parts: every length and every fitting for itself."""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from geometry.label import Label
from geometry.layout import pipework
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import CAP_M, Fitting, Straight
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout
from geometry.materials.kinds import Pipe
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh, joined
from geometry.solids.solid import Solid
from viz.export.ifc.kinds import FITTINGS, kind_of, segment
from viz.export.ifc.part import Part, Tube, Value

Sets = Mapping[str, Mapping[str, Value]]


def pipe_parts(layout: Layout, foundation: Foundation) -> Iterator[Part]:
    """Yield every length of pipe and every fitting of all drains, of the sump and of bleeders."""
    solids = {s.label.part: s for s in foundation.solids}
    for drain in layout.drains:
        yield from _runs(layout, drain)
        if fittings := solids.get(f"{drain.key}/fittings"):
            yield from _fittings(layout, drain, fittings)
        yield from _risers(layout, drain, solids)
        yield from _leads(layout, drain)
        yield from _bleeders(layout, drain)


def _runs(layout: Layout, drain: DrainLayout) -> Iterator[Part]:
    label = layout.label(f"{drain.key}/pipe")
    wall = pipework.annulus(drain.radius, drain.bore)
    hole = pipework.hole_volume(drain.radius, drain.bore, drain.drain.holes.diameter / 2)
    straights = [straight for stick in drain.sticks for straight in stick]
    for number, straight in enumerate(straights, 1):
        tube = Tube(*_ends(drain, straight), drain.radius, drain.bore)
        gross = wall * tube.length
        holes = straight.holes * len(drain.drain.holes.rows)
        levels = drain.invert(straight.start), drain.invert(straight.end)
        sets = {**_pipe_sets(layout, drain.pipe, levels, tube), **_perforation(drain, holes)}
        yield Part(
            f"{label.part}/{number}", f"{label.name}, run {number}", label,
            segment("pipe", drain.pipe), (tube,), gross - holes * hole, gross,
            system=drain.key, sets=sets,
        )  # fmt: skip


def _ends(
    drain: DrainLayout, straight: Straight
) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
    (x0, y0), (x1, y1) = drain.route.at(straight.start), drain.route.at(straight.end)
    return (x0, y0, drain.centre(straight.start)), (x1, y1, drain.centre(straight.end))


def _pipe_sets(layout: Layout, pipe: Pipe, inverts: tuple[float, float], tube: Tube) -> Sets:
    """Return the property sets of a length of pipe; inverts: levels at its ends, metres."""
    occurrence: dict[str, Value] = {}
    run = float(np.hypot(*np.subtract(tube.end, tube.start)[:2]))
    fall = abs(inverts[1] - inverts[0]) / run if run else 0.0
    if fall > 1e-9:  # the standard's measure has no zero: a level pipe has no gradient
        occurrence["Gradient"] = ("IfcPositiveRatioMeasure", fall)
    elevation = layout.design.datum.top_of_footing + min(inverts)
    occurrence["InvertElevation"] = ("IfcLengthMeasure", elevation)
    return {
        "Pset_PipeSegmentOccurrence": occurrence,
        "Pset_PipeSegmentTypeCommon": {
            "InnerDiameter": ("IfcPositiveLengthMeasure", pipe.inside_diameter_m),
            "OuterDiameter": ("IfcPositiveLengthMeasure", pipe.outside_diameter_m),
        },
        "Bedcourse_Pipe": {
            "Standard": ("IfcLabel", pipe.standard),
            "StartInvertFromTopOfFooting": ("IfcLengthMeasure", inverts[0]),
            "EndInvertFromTopOfFooting": ("IfcLengthMeasure", inverts[1]),
        },
    }


def _perforation(drain: DrainLayout, holes: int) -> Sets:
    """Return how the pipe is drilled: its body is drawn plain, its volume is less the holes."""
    drilled = drain.drain.holes
    rows = ", ".join(f"{row:g}" for row in drilled.rows)
    found: dict[str, Value] = {
        "Holes": ("IfcCountMeasure", holes),
        "RowsDegreesFromDown": ("IfcText", rows or "none"),
    }
    if drilled.rows:
        found["HoleDiameter"] = ("IfcPositiveLengthMeasure", drilled.diameter)
        found["HoleSpacing"] = ("IfcPositiveLengthMeasure", drilled.spacing)
    return {"Bedcourse_Perforation": found}


def _fittings(layout: Layout, drain: DrainLayout, solid: Solid) -> Iterator[Part]:
    """Yield fitting by fitting what the model holds as one solid."""
    label = layout.label(f"{drain.key}/fittings")
    volumes = pipework.fitting_volumes(drain, layout.leads(drain))
    rows = [(f, v) for f, v in zip(drain.fittings, volumes, strict=True)]
    caps = sum(drain.capped)
    ends = (drain.sticks[0][0].start - CAP_M / 2, drain.sticks[-1][-1].end + CAP_M / 2)
    rows += [
        (Fitting("cap", end, 0.0), pipework.caps_volume(drain) / caps)
        for end, capped in zip(ends, drain.capped, strict=True)
        if capped
    ]
    places = [(*drain.route.at(f.station), drain.centre(f.station)) for f, _ in rows]
    shapes = _nearest(places, _pieces(solid))
    for number, ((fitting, volume), shape) in enumerate(zip(rows, shapes, strict=True), 1):
        words = f"{_fitting_words(drain, fitting)}{_which(label)}"
        yield Part(
            f"{label.part}/{number}", words, label, FITTINGS[fitting.kind], shape, volume, volume,
            system=drain.key,
        )  # fmt: skip


def _fitting_words(drain: DrainLayout, fitting: Fitting) -> str:
    if fitting.corner is None:
        return fitting.kind.capitalize()
    return f"Bend at corner {drain.outline_corner(fitting.corner)}"


def _which(label: Label) -> str:
    """Return the words that tell a drain from others, as its own label has them after a comma."""
    _, comma, which = label.name.partition(", ")
    return f"{comma}{which}"


def _pieces(solid: Solid) -> list[Mesh]:
    """Return the bodies of a solid that do not hang together."""
    count, faces = len(solid.vertices), solid.faces
    edges = np.concatenate((faces[:, :2], faces[:, 1:]))
    links = coo_array((np.ones(len(edges)), (edges[:, 0], edges[:, 1])), shape=(count, count))
    pieces, which = connected_components(links, directed=False)
    found = []
    for piece in range(pieces):
        mine = which == piece
        number = np.cumsum(mine) - 1
        found.append(Mesh(solid.vertices[mine], number[faces[mine[faces[:, 0]]]]))
    return found


def _nearest(
    places: Sequence[tuple[float, float, float]], pieces: Sequence[Mesh]
) -> list[tuple[Mesh, ...]]:
    """Return the pieces that lie nearest to each place, joined where there are several."""
    middles = np.array([(p.vertices.min(axis=0) + p.vertices.max(axis=0)) / 2 for p in pieces])
    gaps = np.linalg.norm(middles[:, None] - np.asarray(places)[None], axis=2)
    owner = np.argmin(gaps, axis=1)
    return [
        (joined(p for p, mine in zip(pieces, owner, strict=True) if mine == number),)
        for number in range(len(places))
    ]


def _risers(layout: Layout, drain: DrainLayout, solids: Mapping[str, Solid]) -> Iterator[Part]:
    for corner, riser in zip(drain.drain.cleanouts, layout.risers(drain), strict=True):
        label = layout.label(f"{drain.key}/cleanout {corner}")
        solid = solids[label.part]
        volume = pipework.riser_volume(drain, corner, riser.top)
        yield Part(
            label.part, label.name, label, segment("cleanout", drain.pipe),
            (Mesh(solid.vertices, solid.faces),), volume, volume, system=drain.key,
        )  # fmt: skip


def _leads(layout: Layout, drain: DrainLayout) -> Iterator[Part]:
    number = 0
    for lead in layout.leads(drain):
        if lead is layout.pit_lead:
            yield _lead(layout, lead, layout.label("sump/pipe"), drain.key)
            if lead.sleeve:
                yield _sleeve(layout, lead, lead.sleeve, drain.key)
        else:
            number += 1
            yield _lead(layout, lead, layout.label(f"{drain.key}/daylight {number}"), drain.key)


def _lead(layout: Layout, lead: LeadLayout, label: Label, system: str) -> Part:
    tube = Tube(lead.at(lead.begin), lead.at(lead.end), lead.outer, lead.inner)
    inverts = tube.start[2] - lead.inner, tube.end[2] - lead.inner
    volume = pipework.lead_volume(lead)
    sets = _pipe_sets(layout, lead.pipe, inverts, tube)
    return Part(
        label.part, label.name, label, segment("lead", lead.pipe), (tube,), volume, volume,
        system=system, sets=sets,
    )  # fmt: skip


def _sleeve(layout: Layout, lead: LeadLayout, sleeve: Pipe, system: str) -> Part:
    label = layout.label("sump/sleeve")
    outer, inner = sleeve.outside_diameter_m / 2, sleeve.inside_diameter_m / 2
    tube = Tube(lead.at(lead.face), lead.at(lead.back), outer, inner)
    volume = pipework.sleeve_volume(lead)
    return Part(
        label.part, label.name, label, kind_of("sleeve"), (tube,), volume, volume, system=system
    )


def _bleeders(layout: Layout, drain: DrainLayout) -> Iterator[Part]:
    bleeders = layout.bleeders_of(drain)
    for number, bleeder in enumerate(bleeders, 1):
        label = layout.label("bleeders")
        inner = bleeder.pipe.inside_diameter_m / 2
        tube = Tube(bleeder.outer_end, bleeder.inner_end, bleeder.radius, inner)
        level = bleeder.outer_end[2] - inner
        volume = pipework.bleeders_volume([bleeder])
        yield Part(
            f"{drain.key}/bleeder {number}", f"Bleeder {number}", label,
            segment("bleeder", bleeder.pipe), (tube,), volume, volume, system=drain.key,
            sets=_pipe_sets(layout, bleeder.pipe, (level, level), tube),
        )  # fmt: skip
