"""The places along the drain that a builder sets out: corners, ends, cleanouts, high and low."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.drain import SAME_STATION_M, DrainLayout
from geometry.layout.lay import Layout
from geometry.units import show_fall, show_length, show_level
from viz.figures.profile.piece import Piece, turning

# Said at a loop's low point where it is shown a second time.
AS_AT_THE_LEFT = ("as at the left",)


@dataclass(frozen=True)
class Place:
    """A place along the pipe: metres from the drain's left end, its names, its figures.

    notes: what else is here, each in a few lines. from_low: distances along the pipe from the low
    point; the high point of a loop has two where its two ways differ. riser_top: level of a
    cleanout's top. corner: the route turns here.
    """

    run: float
    names: tuple[str, ...]
    notes: tuple[tuple[str, ...], ...]
    from_low: tuple[float, ...]
    invert: float
    corner: int | None = None
    bent: bool = False
    riser_top: float | None = None


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
    made = [_place(layout, piece, s, what, _run_of(drain, s)) for s, what in found.items()]
    if drain.route.closed:
        low = next(s for s in found if _run_of(drain, s) < SAME_STATION_M)
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
    # Where a level loop is cut in two, its far end is a place too.
    turned = drain.rise or (drain.route.closed and not piece.whole)
    for station in (drain.low, drain.high) if turned else (drain.low,):
        found.setdefault(_nearest(found, station), _Found())
    return found


def _run_of(drain: DrainLayout, station: float) -> float:
    """Return how far from the picture's left end a station lies, metres.

    A loop is cut at its low point, which stands at both ends; 0 is given for it here.
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
    names = tuple(_names(piece, station, what))
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
    )


def _from_low(piece: Piece, run: float) -> tuple[float, ...]:
    drain = piece.drain
    if not drain.route.closed:
        return (abs(run - drain.low),)
    back, turn = drain.route.length - run, turning(drain)
    if abs(run - turn) < SAME_STATION_M and abs(run - back) > 1e-3:
        return (run, back) if piece.whole else (run,) if piece.holds(0.0) else (back,)
    return (run,) if run <= turn + SAME_STATION_M else (back,)


def _names(piece: Piece, station: float, what: _Found) -> Iterator[str]:
    drain = piece.drain
    low, high = (abs(station - s) < SAME_STATION_M for s in (drain.low, drain.high))
    if low:
        yield "low point" if drain.rise else "outlet"
    elif high and drain.rise:
        yield "high point"
    elif high and drain.route.closed and not piece.whole:
        yield "halfway round"
    if what.corner is not None:
        yield f"end at corner {what.corner}" if what.end else f"corner {what.corner}"


def _notes(
    layout: Layout, piece: Piece, station: float, what: _Found, again: bool
) -> Iterator[tuple[str, ...]]:
    system, lead = layout.design.project.units, layout.lead
    if what.riser_top is not None:
        yield "cleanout up to", show_level(what.riser_top, system)
    if lead is None or abs(station - piece.drain.low) >= SAME_STATION_M:
        return
    if again:
        yield AS_AT_THE_LEFT
        return
    yield (
        "tee to the sump,",
        f"solid pipe {show_length(lead.end, system, 4)}",
        f"falls {show_fall(lead.fall, system)}",
        f"to invert {show_level(lead.end_invert, system)}",
    )
