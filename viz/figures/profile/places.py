"""The places along a drain that a builder sets out: corners, ends, cleanouts, highs and lows."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout, lead_at
from geometry.units import show_fall, show_length, show_level
from viz.figures.drainwords import ends_open, highs, tee_words
from viz.figures.profile.piece import Piece, lows, turns

# Said at a loop's low point where it is shown a second time.
AS_AT_THE_LEFT = ("as at the left",)


@dataclass(frozen=True)
class Place:
    """A place along the pipe: metres from the drain's left end, its names, its figures.

    notes: what else is here, each in a few lines. from_low: distances along the pipe from the low
    point its water runs to; a high point has two where its two ways differ. riser_top: level of a
    cleanout's top. corner: the route turns here. lead: the solid pipe that leaves here.
    """

    run: float
    names: tuple[str, ...]
    notes: tuple[tuple[str, ...], ...]
    from_low: tuple[float, ...]
    invert: float
    corner: int | None = None
    bent: bool = False
    riser_top: float | None = None
    lead: LeadLayout | None = None


@dataclass(frozen=True)
class _Found:
    """What stands at one station."""

    corner: int | None = None
    riser_top: float | None = None
    end: bool = False


def places(layout: Layout, piece: Piece) -> tuple[Place, ...]:
    """Return the places along a piece from left to right."""
    drain = piece.drain
    found = _found(layout, piece)
    made = [_place(layout, piece, s, what, run_of(drain, s)) for s, what in found.items()]
    if drain.route.closed:
        low = next(s for s in found if run_of(drain, s) < SAME_STATION_M)
        made.append(_place(layout, piece, low, found[low], drain.route.length))
    shown = (place for place in made if piece.holds(place.run))
    return tuple(sorted(shown, key=lambda place: place.run))


def _found(layout: Layout, piece: Piece) -> dict[float, _Found]:
    drain = piece.drain
    found: dict[float, _Found] = {}
    for number, station in enumerate(drain.route.stations[: len(drain.route.points)]):
        ends = not drain.route.closed and number in (0, len(drain.route.points) - 1)
        found[float(station)] = _Found(drain.outline_corner(number), end=ends)
    for corner, riser in zip(drain.drain.cleanouts, layout.risers(drain), strict=True):
        station = _nearest(found, drain.corner_station(corner))
        found[station] = _Found(corner, riser.top, found[station].end)
    for station in (*drain.lows, *_tops(piece)):
        found.setdefault(_nearest(found, station), _Found())
    return found


def _tops(piece: Piece) -> tuple[float, ...]:
    """Return the stations of the high points; where a level loop is cut, those of its cuts."""
    drain = piece.drain
    cut = not drain.rise and drain.route.closed and not piece.whole
    tops = tuple(s for s in drain.falls.stations if s not in drain.lows) if cut else ()
    return tops or tuple(highs(drain))


def run_of(drain: DrainLayout, station: float) -> float:
    """Return how far from the picture's left end a station lies, metres.

    A loop is cut at its main low point, which stands at both ends; 0 is given for it here.
    """
    if not drain.route.closed:
        return station
    run = (station - drain.low) % drain.route.length
    return 0.0 if drain.route.length - run < SAME_STATION_M else run


def _nearest(found: dict[float, _Found], station: float) -> float:
    """Return the station already found here, or this one."""
    return next((s for s in found if abs(s - station) < SAME_STATION_M), station)


def _place(layout: Layout, piece: Piece, station: float, what: _Found, run: float) -> Place:
    drain = piece.drain
    names = tuple(_names(layout, piece, station, what))
    again = piece.whole and drain.route.closed and run >= drain.route.length
    return Place(
        run,
        (names[0][0].upper() + names[0][1:], *names[1:]),
        tuple(_notes(layout, piece, station, what, again)),
        _from_low(piece, run),
        drain.invert(station),
        what.corner,
        what.corner is not None and not what.end,
        what.riser_top,
        next((x for x in layout.leads(drain) if abs(x.station - station) < SAME_STATION_M), None),
    )


def _from_low(piece: Piece, run: float) -> tuple[float, ...]:
    found = lows(piece.drain)
    left = max((low for low in found if low <= run + SAME_STATION_M), default=None)
    right = min((low for low in found if low >= run - SAME_STATION_M), default=None)
    if left is None or right is None:
        return (abs(run - (found[0] if left is None else found[-1])),)
    ahead, back = run - left, right - run
    top = next((at for at, is_low in turns(piece.drain) if left < at < right and not is_low), run)
    if abs(run - top) < SAME_STATION_M and abs(ahead - back) > 1e-3:
        ends = ((ahead, left), (back, right))
        return tuple(far for far, low in ends if piece.holds(low))
    return (ahead,) if run <= top + SAME_STATION_M else (back,)


def start_words(piece: Piece) -> str:
    """Return where distances along the pipe are counted from."""
    drain = piece.drain
    if not drain.rise and drain.drain.outlet == "bleeders" and drain.route.closed:
        return f"corner {drain.outline_corner(_corner_at(drain, drain.low))}"
    start = "low point" if drain.rise else "outlet"
    return f"the nearest {start}" if len(drain.lows) > 1 else f"the {start}"


def _corner_at(drain: DrainLayout, station: float) -> int:
    stations = drain.route.stations[: len(drain.route.points)]
    return int(abs(stations - station).argmin())


def _names(layout: Layout, piece: Piece, station: float, what: _Found) -> Iterator[str]:
    drain = piece.drain
    low = next((s for s in drain.lows if abs(station - s) < SAME_STATION_M), None)
    if low is not None:
        yield from _low_names(layout, drain, low, what)
    elif any(abs(station - s) < SAME_STATION_M for s in _tops(piece)):
        yield "high point" if drain.rise else "halfway round"
    if what.corner is not None:
        yield f"end at corner {what.corner}" if what.end else f"corner {what.corner}"


def _low_names(layout: Layout, drain: DrainLayout, low: float, what: _Found) -> Iterator[str]:
    if drain.rise:
        yield "low point"
    elif drain.drain.outlet != "bleeders" or what.corner is None:
        yield "outlet"
    if len(drain.lows) > 1:
        yield f"to {tee_words(layout, drain, low)}"


def _notes(
    layout: Layout, piece: Piece, station: float, what: _Found, again: bool
) -> Iterator[tuple[str, ...]]:
    system, drain = layout.design.project.units, piece.drain
    if what.riser_top is not None:
        yield "cleanout up to", show_level(what.riser_top, system)
    if what.end and ends_open(drain, station):
        yield "open end over", "lower stone"
    low = next((s for s in drain.lows if abs(station - s) < SAME_STATION_M), None)
    lead = None if low is None else lead_at(layout.leads(drain), low)
    if low is None or lead is None:
        return
    if again:
        yield AS_AT_THE_LEFT
        return
    falls = f"falls {show_fall(lead.fall, system)}"
    if lead is not layout.pit_lead:
        yield f"tee to {tee_words(layout, drain, low)},", f"solid pipe {falls},", "see outlet"
        return
    yield (
        "tee to the sump,",
        f"solid pipe {show_length(lead.end, system, 4)}",
        falls,
        f"to invert {show_level(lead.end_invert, system)}",
    )
