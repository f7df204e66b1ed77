"""What carries the water: holes, pipe, stone, pipe to the pit, pump; the least of them governs."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.formulas import pipe_flow
from geometry.formulas.gradation import size_at
from geometry.formulas.orifices import HoleRow, inflow_per_metre
from geometry.formulas.stone_flow import Regime, ergun_velocity, regime
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES
from geometry.water.feeding import share_of
from geometry.water.pumping import middle_flow

PUMP, TO_PIT, TO_DAYLIGHT = "Pump", "Pipe to the pit, full", "Pipe to daylight, full"


@dataclass(frozen=True)
class Capacity:
    """What one element carries.

    flow_m3s: its own greatest flow; None where it cannot be said. share: of all the inflow, what
    passes it. in_line: all water must pass it, so that it can govern. note: how it was reckoned.
    """

    name: str
    flow_m3s: float | None
    share: float
    in_line: bool
    note: str

    @property
    def allows_m3s(self) -> float | None:
        """Inflow to the whole drain at which this element is full."""
        return None if self.flow_m3s is None else self.flow_m3s / self.share


@dataclass(frozen=True)
class Depth:
    """Depth of the water in the pipe at the inflow's peak, m; None where it runs over full."""

    roughness: str
    depth_m: float | None
    bore_m: float


@dataclass(frozen=True)
class Capacities:
    """Every element's capacity, in the order water meets them, and depths at the peak inflow."""

    rows: tuple[Capacity, ...]
    depths: tuple[Depth, ...]

    @property
    def governs(self) -> Capacity | None:
        """The element in line that allows the least inflow; None when none can be said."""
        known = [r for r in self.rows if r.in_line and r.allows_m3s is not None]
        return min(known, key=lambda r: r.allows_m3s or 0.0, default=None)


def capacities(layout: Layout, peak_m3s: float | None) -> Capacities | None:
    """Return what each element of the drain carries; None for a design without drain."""
    drain = layout.drain
    if drain is None:
        return None
    rows = [_holes(drain), *_pipes(drain), _stone(drain)]
    rows += list(_leads(layout, drain))
    rows += list(_pump(layout))
    depths = () if peak_m3s is None else tuple(_depths(drain, peak_m3s))
    return Capacities(tuple(rows), depths)


def longest_share(drain: DrainLayout) -> float:
    """Share of the inflow that the longest way to an outlet carries."""
    return drain.longest / drain.route.length


def _holes(drain: DrainLayout) -> Capacity:
    """Return what the holes take with the water outside at the pipe's middle, inside low."""
    holes, bore = drain.drain.holes, 2 * drain.bore
    rows = [HoleRow(angle, holes.diameter, holes.spacing) for angle in holes.rows]
    rings = drain.hole_count / len(rows) if rows else 0.0
    flow = inflow_per_metre(rows, bore, bore / 2) * holes.spacing * rings
    note = "water outside at the pipe's middle, sharp edges free of stone" if rows else "no holes"
    return Capacity("Holes of the pipe", flow, 1.0, True, note)


def _roughness(drain: DrainLayout) -> list[tuple[str, float]]:
    """Return Manning's n by what it means; the last is the roughest."""
    pipe = drain.pipe
    rough = pipe.manning_perforated
    return [("clean", pipe.manning_n), *([("perforated", rough)] if rough else [])]


def _pipes(drain: DrainLayout) -> Iterator[Capacity]:
    kinds = _roughness(drain)
    for place, (word, n) in enumerate(kinds):
        name = f"Drain pipe, full, {word}"
        share, last = longest_share(drain), place == len(kinds) - 1
        yield _full(name, 2 * drain.bore, drain.drain.fall, n, share, last)


def _full(name: str, bore: float, slope: float, n: float, share: float, in_line: bool) -> Capacity:
    if slope == 0:
        note = "laid level: water must pile up before it flows"
        return Capacity(name, None, share, in_line, note)
    flow = pipe_flow.capacity(bore, slope, n)
    return Capacity(name, flow, share, in_line, f"Manning, n {n:.3f}, least slope {slope:.2%}")


def _stone(drain: DrainLayout) -> Capacity:
    """Return what the stone beside the pipe carries along itself, were the pipe closed."""
    name = "Stone alone, along the drain"
    stone, slope = AGGREGATES[drain.drain.stone.material], drain.drain.fall
    share = longest_share(drain)
    if stone.porosity is None or not stone.grading:
        return Capacity(name, None, share, False, "voids or grading of this stone not known")
    if slope == 0:
        return Capacity(name, None, share, False, "laid level: no slope to drive it")
    grain = size_at(stone.fine_edge, 0.10)
    speed = ergun_velocity(slope, grain, stone.porosity)
    area = float(drain.low_space.area) / drain.route.length * _below_crown(drain)
    note = f"Ergun, fine edge of the grading; {_WARNING[regime(speed, grain)]}"
    return Capacity(name, speed * area, share, False, note)


_WARNING: dict[Regime, str] = {
    "slow": "slow flow, where Darcy's law holds",
    "doubtful": "Darcy's law is doubtful here",
    "turbulent": "turbulent: Darcy's law alone would say too much",
}


def _below_crown(drain: DrainLayout) -> float:
    """Height of the stone from its bottom to the pipe's crown at the low point, m."""
    return drain.outlet_invert + drain.bore + drain.radius - drain.stone_bottom - drain.wrap_m


def _leads(layout: Layout, drain: DrainLayout) -> Iterator[Capacity]:
    """Yield the solid pipes, each with the share of the inflow that comes to its low point."""
    for lead in layout.leads(drain):
        name = TO_PIT if lead is layout.pit_lead else TO_DAYLIGHT
        share = share_of(drain, lead.station)
        yield _full(name, 2 * lead.inner, lead.fall, lead.pipe.manning_n, share, True)


def _pump(layout: Layout) -> Iterator[Capacity]:
    pit = layout.sump
    if pit is None or pit.sump.pump is None:
        return
    pump, flow = pit.sump.pump, middle_flow(pit)
    if pump.curve:
        note = "its curve, water midway between on and off" + (
            "" if pump.discharge else "; friction of the discharge not given and left out"
        )
    else:
        note = "not given" if flow is None else "as given"
    yield Capacity(PUMP, flow, 1.0, True, note)


def _depths(drain: DrainLayout, peak: float) -> Iterator[Depth]:
    bore, slope = 2 * drain.bore, drain.drain.fall
    through = peak * longest_share(drain)
    for word, n in _roughness(drain):
        fits = slope > 0 and through <= pipe_flow.greatest_flow(bore, slope, n)
        depth = pipe_flow.depth_for_flow(through, bore, slope, n) if fits else None
        yield Depth(word, depth, bore)
