"""Tables of the floor's warmth: layers, heat to the ground, ways to make the edge, foam's load."""

from collections.abc import Iterator, Sequence

from geometry.checks.board import BoardLoad, show_small
from geometry.edge_heat import EdgeHeat
from geometry.heat.floors import FloorHeat
from geometry.heat.words import (
    show_flow,
    show_ground,
    show_loss,
    show_power,
    show_resistance,
    show_temperature,
    show_transmittance,
)
from geometry.layout.tubing.lay import Tubes, lay_tubes
from geometry.report import Report
from geometry.units import FOOT, System, show_area, show_length, show_thickness
from viz.tables.table import Table
from viz.words import material_name

_OPEN = "–"

NOTES = (
    "By ISO 13370, the year's mean: the ground is slow, and a cold day asks less than its "
    "temperature says. The joint of floor and wall is not in it.",
    "The codes' edge factor is for slabs at grade; beside a basement it is shown to compare.",
    "Heat down from warm tubes: EN 1264-2 with the ground as the room below, tubes in the middle "
    "of the slab, no carpet.",
    "Cold concrete counts as floor without a board, side by side with the rest: a rough count.",
)


def tables(
    report: Report, edges: Sequence[EdgeHeat], system: System
) -> Iterator[tuple[str, Table]]:
    """Yield every table that has rows, with its title."""
    for title, table in (
        ("Resistance of the floor's layers", layers(report.warmth, system)),
        ("Heat to the ground", heat(report.warmth, system)),
        ("Heat down from warm tubes", below_tubes(report.warmth, system)),
        ("Ways to make the edge, and what each does to its warmth", ways(edges, system)),
        ("Foam under the slab and its load", boards(report.boards, system)),
    ):
        if table.rows:
            yield title, table
    for tubes in lay_tubes(report.layout):
        if tubes.loops:
            yield f"Heating tubes loop by loop: {tubes.area.name}", loops(tubes, system)


def layers(warmth: Sequence[FloorHeat], system: System) -> Table:
    """Return each area's layers from the top down, and their sum."""
    rows = []
    for one in warmth:
        rows += [
            (
                one.area, layer.name, material_name(layer.material),
                show_thickness(layer.thickness_m, system),
                "ground" if layer.resistance is None and layer.thickness_m > 2e-3
                else _OPEN if layer.resistance is None
                else show_resistance(layer.resistance, system),
            )
            for layer in reversed(one.layers)
        ]  # fmt: skip
        rows.append((one.area, "all", "", "", show_resistance(one.resistance, system)))
    return Table(("Area", "Layer", "Material", "Thick", "Resistance"), tuple(rows))


def heat(warmth: Sequence[FloorHeat], system: System) -> Table:
    """Return each area's figures, one a row."""
    rows = []
    for one in warmth:
        rows += [(one.area, what, amount) for what, amount in _heat(one, system)]
    return Table(("Area", "Heat to the ground", "Amount"), tuple(rows))


def below_tubes(warmth: Sequence[FloorHeat], system: System) -> Table:
    """Return what each floor's warm tubes send down for what they give to the room."""
    head = ("Area", "Up to the room", "Down to the ground", "Down, of all")
    rows = [
        (heat.area, show_flow(one.up_w_m2, system), show_flow(one.down_w_m2, system),
         f"{one.share:.0%}")
        for heat in warmth
        for one in heat.below_tubes
    ]  # fmt: skip
    return Table(head, tuple(rows))


def _heat(one: FloorHeat, system: System) -> Iterator[tuple[str, str]]:
    known = " (assumed: the soil is not known)" if one.ground_assumed else ""
    yield "ground conducts", show_ground(one.ground_w_mk, system) + known
    edge = show_length(round(one.exposed_m, 3), system)
    yield "floor", f"{show_area(one.floor_m2, system)}, {edge} of edge exposed"
    yield "finished floor under grade", show_length(round(one.depth_m, 3), system)
    yield "B', floor over half its edge", show_length(round(one.dimension_m, 3), system)
    yield "U of floor, nothing cold", show_transmittance(one.u_whole, system)
    yield f"U of floor, {one.cold_share:.1%} of it cold", show_transmittance(one.u_floor, system)
    yield "loss of floor", show_loss(one.floor_w_k, system)
    if one.u_wall is not None:
        yield "resistance of walls in the ground", show_resistance(one.wall_resistance, system)
        yield "U of walls in the ground", show_transmittance(one.u_wall, system)
        yield "loss of walls in the ground", show_loss(one.wall_w_k, system)
    yield "loss in all", show_loss(one.loss_w_k, system)
    if one.loss_w is not None and one.inside_c is not None and one.outside_c is not None:
        warm, cold = (show_temperature(t, system) for t in (one.inside_c, one.outside_c))
        yield f"at {warm} inside, {cold} outside", show_power(one.loss_w, system)
    factor = one.by_edge
    heated = "heated slab, " if factor.warmed else ""
    fits = "" if factor.applies else "; the floor lies too deep for it"
    yield (
        "loss by the codes' edge factor",
        f"{show_loss(factor.loss_w_k, system)} ({heated}R-{factor.r_table}{fits})",
    )


def ways(edges: Sequence[EdgeHeat], system: System) -> Table:
    """Return the ways to make the lowest floor's edge, the one that is designed first."""
    head = ("Edge", "Cold concrete", "Of the floor", "Slab's side at the wall", "U of floor",
            "Loss of floor", "Against as designed")  # fmt: skip
    if not edges:
        return Table(head, ())
    first = edges[0].heat
    rows = []
    for one in edges:
        u, loss, more = _OPEN, _OPEN, _OPEN
        if one.heat and first:
            u = show_transmittance(one.heat.u_floor, system)
            loss = show_loss(one.heat.floor_w_k, system)
            more = f"{one.heat.floor_w_k / first.floor_w_k - 1:+.1%}"
        title = f"{one.title} (as designed)" if one.same else one.title
        rows.append(
            (title, show_area(one.cold_m2, system), f"{one.cold_share:.1%}",
             show_area(one.edge_m2, system), u, loss, _OPEN if one.same else more)
        )  # fmt: skip
    return Table(head, tuple(rows))


def boards(loads: Sequence[BoardLoad], system: System) -> Table:
    """Return what each area's foam carries, and the share of what it may."""
    head = ("Area", "Foam", "Dead", "Live", "Of what it may", "Under the point load", "In all",
            "Spread at 45 degrees", "In all, so")  # fmt: skip
    rows = []
    for one in loads:
        point = one.point_n > 0
        plate, share = one.plate_pa, one.share_plate
        rows.append(
            (
                one.area, material_name(one.material), show_small(one.dead_pa, system),
                show_small(one.live_pa, system), f"{one.share_even:.0%}",
                show_small(plate, system) if point and plate is not None else _OPEN,
                f"{share:.0%}" if point and share is not None else _OPEN,
                show_small(one.spread_pa, system) if point else _OPEN,
                f"{one.share_spread:.0%}" if point else _OPEN,
            )
        )  # fmt: skip
    return Table(head, tuple(rows))


def loops(tubes: Tubes, system: System) -> Table:
    """Return the lengths of a floor's loops, one a row, and all of them."""
    head = ("Loop", "In the slab", "Leads in it", "To manifold", "Cut to")
    rows = [
        (str(x.number), *(_long(m, system) for m in (x.length_m, x.lead_m, x.way_m, x.whole_m)))
        for x in tubes.loops
    ]
    sums = [
        sum(getattr(x, key) for x in tubes.loops)
        for key in ("length_m", "lead_m", "way_m", "whole_m")
    ]
    rows.append(("all", *(_long(total, system) for total in sums)))
    return Table(head, tuple(rows))


def _long(metres: float, system: System) -> str:
    """Return a length of tube to the foot or the decimetre: no coil is cut nearer."""
    return f"{metres:,.1f} m" if system == "metric" else f"{metres / FOOT:,.0f} ft"
