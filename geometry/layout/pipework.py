"""Closed forms of the pipework: what pipe, fittings, risers and holes hold and displace, m3."""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from geometry.layout.bleeders import Bleeder
from geometry.layout.bodies import Body, Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import CAP_M, PIPE_SIDES
from geometry.layout.leads import LeadLayout, lead_at
from geometry.plan.outline import circle


def annulus(outer: float, inner: float) -> float:
    """Return the area of a pipe's wall, m2."""
    return float(np.pi * (outer**2 - inner**2))


@lru_cache(maxsize=64)
def saddle(disc: float, radius: float, shift: float = 0.0) -> float:
    """Volume over a disc up to the surface of a round pipe that crosses under it, m3.

    The integral over a disc of radius `disc` of sqrt(radius^2 - y^2), y across the pipe,
    measured from an axis `shift` off the disc's centre; zero where the disc overhangs the pipe.
    Over a bend's middle it is the same whatever its turn: half of the disc lies over either leg,
    and heights are alike on either side of a leg's middle. Gauss-Chebyshev quadrature of the
    second kind.
    """
    count = 256
    turn = np.arange(1, count + 1) * np.pi / (count + 1)
    y = disc * np.cos(turn)
    height = np.sqrt(np.clip(radius**2 - (y + shift) ** 2, 0, None))
    return float(2 * disc**2 * np.pi / (count + 1) * np.sum(np.sin(turn) ** 2 * height))


@lru_cache(maxsize=64)
def hole_volume(outer: float, inner: float, hole: float) -> float:
    """Volume of wall a radial hole of radius `hole` takes out of a pipe, m3.

    The hole's cylinder between the two bores: the integral over the hole's disc of
    sqrt(outer^2 - y^2) - sqrt(inner^2 - y^2), by Gauss-Chebyshev quadrature of the second kind.
    """
    count = 64
    turn = np.arange(1, count + 1) * np.pi / (count + 1)
    y = hole * np.cos(turn)
    chord = np.sqrt(outer**2 - y**2) - np.sqrt(inner**2 - y**2)
    return float(2 * hole**2 * np.pi / (count + 1) * np.sum(np.sin(turn) ** 2 * chord))


def slant(drain: DrainLayout, start: float, end: float) -> float:
    """Length along the fall between two stations that the high or low point does not part."""
    return float(np.hypot(end - start, drain.invert(end) - drain.invert(start)))


def stick_length(drain: DrainLayout) -> float:
    """Length of perforated pipe along the fall."""
    return sum(slant(drain, s.start, s.end) for stick in drain.sticks for s in stick)


def pipe_volume(drain: DrainLayout) -> float:
    """Volume of perforated pipe: wall times length, less the holes."""
    hole = hole_volume(drain.radius, drain.bore, drain.drain.holes.diameter / 2)
    wall = annulus(drain.radius, drain.bore)
    return wall * stick_length(drain) - drain.hole_count * hole


def fitting_lengths(drain: DrainLayout) -> list[float]:
    """Return each fitting's length along the pipe."""
    return [
        slant(drain, f.station - f.reach, f.station) + slant(drain, f.station, f.station + f.reach)
        for f in drain.fittings
    ]


def fitting_volumes(drain: DrainLayout, leads: Sequence[LeadLayout]) -> list[float]:
    """Return the volume of each fitting: bends (opened under a cleanout), and tees."""
    wall = annulus(drain.radius, drain.bore)
    opened = [drain.bend_at(drain.corner_station(c)) for c in drain.drain.cleanouts]
    volumes = []
    for fitting, length in zip(drain.fittings, fitting_lengths(drain), strict=True):
        volume = wall * length
        if fitting in opened:
            volume -= saddle(drain.bore, drain.radius) - saddle(drain.bore, drain.bore)
        lead = lead_at(leads, fitting.station) if fitting.kind == "tee" else None
        if lead:
            volume += tee_leg(drain, lead)
        volumes.append(volume)
    return volumes


def tee_leg(drain: DrainLayout, lead: LeadLayout) -> float:
    """Volume the tee's leg adds: its wall outside the run, less the opening in the run."""
    length, shift = lead.begin * lead.stretch, lead.inner - drain.bore
    added = np.pi * lead.outer**2 * length - saddle(lead.outer, drain.radius, shift)
    emptied = np.pi * lead.inner**2 * length - saddle(lead.inner, drain.bore, shift)
    return float(added - emptied)


def caps_volume(drain: DrainLayout) -> float:
    """Volume of the caps on an open run's closed ends."""
    return sum(drain.capped) * float(np.pi * drain.radius**2 * CAP_M)


def riser_volume(drain: DrainLayout, corner: int, top: float) -> float:
    """Volume of a cleanout riser from the bend's upper surface to the grade."""
    height = top - drain.centre(drain.corner_station(corner))
    whole = annulus(drain.radius, drain.bore) * height
    return whole - saddle(drain.radius, drain.radius) + saddle(drain.bore, drain.radius)


def riser_in_stone(drain: DrainLayout, corner: int) -> float:
    """Volume a riser takes out of the drain stone above the pipe."""
    height = drain.stone_top - drain.wrap_m - drain.centre(drain.corner_station(corner))
    return float(np.pi * drain.radius**2 * height) - saddle(drain.radius, drain.radius)


def stone_taken(drain: DrainLayout, leads: Sequence[LeadLayout]) -> float:
    """Volume that pipe, fittings, risers and the tees' legs take out of the drain stone."""
    full = float(np.pi * drain.radius**2)
    taken = full * (stick_length(drain) + sum(fitting_lengths(drain)))
    taken += sum(riser_in_stone(drain, c) for c in drain.drain.cleanouts)
    taken += caps_volume(drain)
    return taken + sum(leg_in_stone(drain, lead) for lead in leads)


def leg_in_stone(drain: DrainLayout, lead: LeadLayout) -> float:
    """Volume a tee's solid pipe takes out of the drain stone between run and wrap."""
    length = (lead.face - drain.wrap_m) * lead.stretch
    under = saddle(lead.outer, drain.radius, lead.inner - drain.bore)
    return float(np.pi * lead.outer**2 * length) - under


def wrap_taken(drain: DrainLayout, wrap: Body) -> float:
    """Volume the risers take out of the wrap, lap included where they pass it."""
    taken = 0.0
    for corner in drain.drain.cleanouts:
        point = drain.route.at(drain.corner_station(corner))
        taken += sum(p.volume for p in _discs(drain, wrap, point))
    return taken


def _discs(drain: DrainLayout, wrap: Body, point: tuple[float, float]) -> list[Prism]:
    disc = circle(point, drain.radius, PIPE_SIDES)
    over = [p for p in wrap.prisms if p.bottom > drain.centre(drain.route.station_of(point))]
    return [Prism(p.region.intersection(disc), p.bottom, p.top) for p in over]


def lead_volume(lead: LeadLayout) -> float:
    """Volume of the solid pipe from the tee's leg to its end."""
    return annulus(lead.outer, lead.inner) * (lead.end - lead.begin) * lead.stretch


def sleeve_volume(lead: LeadLayout) -> float:
    """Volume of the sleeve through the footing; nothing without one."""
    if lead.sleeve is None:
        return 0.0
    wall = annulus(lead.sleeve.outside_diameter_m / 2, lead.sleeve.inside_diameter_m / 2)
    return wall * (lead.back - lead.face) * lead.stretch


def bleeders_volume(bleeders: Sequence[Bleeder]) -> float:
    """Volume of the pipes through the footing."""
    return sum(annulus(b.radius, b.pipe.inside_diameter_m / 2) * b.length for b in bleeders)
