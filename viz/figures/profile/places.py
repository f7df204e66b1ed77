"""The drain unrolled: the places a builder sets out, and the stretches that fall between them."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.drain import SAME_STATION_M, DrainLayout
from geometry.layout.lay import Layout
from geometry.units import show_fall, show_length, show_level


@dataclass(frozen=True)
class Place:
    """A place along the pipe: metres from the picture's left end, its names, its figures.

    from_low: distances along the pipe from the low point; the high point of a loop has two where
    its two ways differ. riser_top: level of a cleanout's top. corner: the route turns here.
    """

    run: float
    names: tuple[str, ...]
    from_low: tuple[float, ...]
    invert: float
    corner: bool = False
    riser_top: float | None = None


@dataclass(frozen=True)
class Stretch:
    """Pipe that falls evenly from one place to another, metres from the picture's left end."""

    high: float
    low: float
    fall: float
    drop: float

    @property
    def length(self) -> float:
        """Length on the plan, metres."""
        return abs(self.high - self.low)


@dataclass(frozen=True)
class _Found:
    """What stands at one station."""

    corner: int | None = None
    riser_top: float | None = None
    end: bool = False


def stretches(drain: DrainLayout) -> tuple[Stretch, ...]:
    """Return the falling lengths from left to right; a level drain is one."""
    length, (ahead, behind) = drain.route.length, drain.branches()
    if not drain.rise:
        return (Stretch(0.0, length, 0.0, 0.0),)
    if drain.route.closed:
        found = [
            Stretch(ahead, 0.0, drain.rise / ahead, drain.rise),
            Stretch(ahead, length, drain.rise / behind, drain.rise),
        ]
    else:
        fall = drain.drain.fall
        found = [
            Stretch(0.0, drain.low, fall, fall * behind),
            Stretch(length, drain.low, fall, fall * ahead),
        ]
    return tuple(s for s in found if s.length > SAME_STATION_M)


def run_of(drain: DrainLayout, station: float) -> float:
    """Return how far from the picture's left end a station lies, metres.

    A loop is cut at its low point, which stands at both ends; 0 is given for it here.
    """
    if not drain.route.closed:
        return station
    run = (station - drain.low) % drain.route.length
    return 0.0 if drain.route.length - run < SAME_STATION_M else run


def pipe_ends(drain: DrainLayout) -> tuple[float, float]:
    """Return where the picture's pipe begins and ends: it stops short of open ends of the stone."""
    if drain.route.closed:
        return 0.0, drain.route.length
    return drain.gaps[0][0], drain.gaps[-1][1]


def inverts(drain: DrainLayout) -> tuple[tuple[float, float], ...]:
    """Return (run, level) of the invert from left to right: ends and every change of fall."""
    start, end = pipe_ends(drain)
    turn = drain.branches()[0] if drain.route.closed else drain.low
    runs = [start, *([turn] if start < turn < end else []), end]
    first = drain.low if drain.route.closed else 0.0
    return tuple((run, drain.invert(first + run)) for run in runs)


def places(layout: Layout) -> tuple[Place, ...]:
    """Return the places along the drain from left to right. Raises ValueError without a drain."""
    drain = layout.drain
    if drain is None:
        raise ValueError("no drain in this design")
    found: dict[float, _Found] = {}
    for number, station in enumerate(drain.route.stations[: len(drain.route.points)]):
        ends = not drain.route.closed and number in (0, len(drain.route.points) - 1)
        found[float(station)] = _Found(drain.outline_corner(number), end=ends)
    for corner, riser in zip(drain.drain.cleanouts, layout.risers, strict=True):
        station = _nearest(found, drain.corner_station(corner))
        found[station] = _Found(corner, riser.top, found[station].end)
    for station in (drain.low, drain.high) if drain.rise else (drain.low,):
        found.setdefault(_nearest(found, station), _Found())
    made = [_place(layout, drain, s, what, run_of(drain, s)) for s, what in found.items()]
    if drain.route.closed:
        low = next(s for s in found if run_of(drain, s) < SAME_STATION_M)
        made.append(_place(layout, drain, low, found[low], drain.route.length))
    return tuple(sorted(made, key=lambda place: place.run))


def _nearest(found: dict[float, _Found], station: float) -> float:
    """Return the station already found here, or this one."""
    return next((s for s in found if abs(s - station) < SAME_STATION_M), station)


def _place(layout: Layout, drain: DrainLayout, station: float, what: _Found, run: float) -> Place:
    names = tuple(_names(layout, drain, station, what, again=run >= drain.route.length))
    return Place(
        run,
        (names[0][0].upper() + names[0][1:], *names[1:]),
        _from_low(drain, station),
        drain.invert(station),
        what.corner is not None and not what.end,
        what.riser_top,
    )


def _from_low(drain: DrainLayout, station: float) -> tuple[float, ...]:
    if not drain.route.closed:
        return (abs(station - drain.low),)
    run, ahead = run_of(drain, station), drain.branches()[0]
    back = drain.route.length - run
    if abs(run - ahead) < SAME_STATION_M and abs(run - back) > 1e-3:
        return run, back
    return (run,) if run <= ahead + SAME_STATION_M else (back,)


def _names(
    layout: Layout, drain: DrainLayout, station: float, what: _Found, again: bool
) -> Iterator[str]:
    system = layout.design.project.units
    low, high = (abs(station - s) < SAME_STATION_M for s in (drain.low, drain.high))
    if low:
        yield "low point" if drain.rise else "outlet"
    elif high and drain.rise:
        yield "high point"
    if what.corner is not None:
        yield f"end at corner {what.corner}" if what.end else f"corner {what.corner}"
    if what.riser_top is not None:
        yield "cleanout up to"
        yield show_level(what.riser_top, system)
    if low and layout.lead and not (again and drain.route.closed):
        yield "tee to the sump,"
        yield f"solid pipe {show_length(layout.lead.end, system, 4)}"
        yield f"falls {show_fall(layout.lead.fall, system)}"
        yield f"to invert {show_level(layout.lead.end_invert, system)}"
    elif low and layout.lead:
        yield "as at the left"
