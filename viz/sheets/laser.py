"""The laser sheet: every rod reading from one height of the laser, with room to write beside it."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.site.laser import Leg, Reading, legs
from geometry.site.records import Place
from geometry.survey.tolerances import Tolerance
from geometry.units import FOOT, System, show_elevation, show_length, show_level, show_rod
from viz.figures.forms.entries import Column, Entry
from viz.figures.forms.form import Form, largest
from viz.figures.forms.grid import Grid
from viz.figures.pole.labels import line_words
from viz.language.reader import Language
from viz.sheets.bound_forms import Head, bound_form, heights
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName

# Text heights, mm, from the largest down, and the number of pages that are wanted at the most.
_SIZES = (4.0, 3.6, 3.2, 3.0, 2.8)
_PAGES = 2


def laser_sheets(layout: Layout, paper: SmallName, language: Language) -> tuple[Sheet, ...]:
    """Return the readings of the design's laser on pages to carry, in the order one walks.

    Without a laser in the design its column is left to be filled in, from the elevations.
    """
    head = _head(layout, language)
    columns = tuple(_columns(layout, language))
    entries = tuple(_entries(layout, language))
    first, rest, width = heights(head, paper)
    form = Form(Grid(columns, _SIZES[0], width), entries)
    pages = largest(form, _SIZES, rest, _PAGES, first)
    return bound_form(head, pages, paper, language)


def _head(layout: Layout, language: Language) -> Head:
    about, datum, say = layout.design.project, layout.design.datum, language.say
    tof = show_elevation(datum.top_of_footing, about.units)
    if datum.instrument is None:
        told = [say("laser.no_instrument", tof=tof)]
    else:
        over = show_level(datum.instrument - datum.top_of_footing, about.units)
        height = show_elevation(datum.instrument, about.units)
        told = [say("laser.instrument", elevation=height, over=over, tof=tof)]
    told += [say("laser.how"), say("laser.tolerances")]
    signs = tuple(say(f"laser.sign_{key}") for key in ("date", "by", "weather"))
    return Head(about.name, say("laser.title"), tuple(told), signs, about.date, about.revision)


def _columns(layout: Layout, language: Language) -> Iterator[Column]:
    say, known = language.say, layout.design.datum.instrument is not None
    feet = layout.design.project.units == "ft-in"
    yield Column(say("laser.what"), 57)
    yield Column(say("laser.from_tof" if known else "laser.elevation"), 30, "figure")
    yield Column(say("laser.rod"), 27, "strong" if known else "blank")
    if known and feet:
        yield Column(say("laser.decimal"), 15, "strong")
    yield Column(say("laser.hold"), 28)
    yield Column(say("laser.read"), 20, "blank")
    yield Column(say("laser.off"), 18, "blank")


def _entries(layout: Layout, language: Language) -> Iterator[Entry]:
    for leg in legs(layout):
        yield Entry((_heading(leg, language),), "heading")
        for reading in leg.readings:
            yield Entry(tuple(_cells(layout, reading, language)))


def _heading(leg: Leg, language: Language) -> str:
    return language.say(f"laser.leg_{leg.key}", area=where(leg.drain, leg.area, language))


def where(drain: str, area: str, language: Language) -> str:
    """Return whose a part of a paper is: an area's, or one of several drains'."""
    if not drain:
        return area
    return language.say("card.drain_of", line=line_words(drain, language.say), area=area)


def _cells(layout: Layout, reading: Reading, language: Language) -> Iterator[str]:
    system, known = layout.design.project.units, layout.design.datum.instrument is not None
    yield _what(reading, system, language)
    shown = ""
    if reading.level is not None and reading.elevation is not None:
        level, elevation = reading.level, reading.elevation
        shown = show_level(level, system) if known else show_elevation(elevation, system)
    yield shown
    yield _rod(reading, system, language)
    if known and system == "ft-in":
        readable = reading.rod is not None and reading.rod >= 0
        yield f"{(reading.rod or 0.0) / FOOT:.2f}" if readable else ""
    yield tolerance_words(reading.tolerance, system)
    yield from ("", "")


def _rod(reading: Reading, system: System, language: Language) -> str:
    if reading.rod is None:
        return ""
    return language.say("laser.above") if reading.rod < 0 else show_rod(reading.rod, system)


def _what(reading: Reading, system: System, language: Language) -> str:
    """Return what is shot and where, in words."""
    say = language.say
    there = ", ".join(place_words(place, language) for place in reading.places)
    if reading.along is not None:
        far = _far(reading.along, system)
        there = f"{there} ({far})" if there else say("laser.along", far=far)
    if reading.key == "invert":
        return there[:1].upper() + there[1:]
    what = say(f"laser.{reading.key}", name=reading.name)
    return f"{what}, {there}" if there else what


def _far(metres: float, system: System) -> str:
    """Return a distance along a pipe: no hand paces sixteenths."""
    return f"{metres:.1f} m" if system == "metric" else show_length(metres, system, 1)


def place_words(place: Place, language: Language) -> str:
    """Return a place along a drain or round an area, in words."""
    if place.key == "every_corner":
        return language.say("laser.every_corner")
    if place.number is None:
        return language.say(f"place.{place.key}")
    return language.say(f"place.{place.key}_number", number=str(place.number))


def tolerance_words(tolerance: Tolerance | None, system: System) -> str:
    """Return how far a level may stray: `±3/4"`, or `+1/2" −2"`; nothing where none is held."""
    if tolerance is None:
        return ""
    if system == "metric":
        above, below = (f"{off * 1000:.0f}" for off in (tolerance.above, tolerance.below))
        return f"±{above} mm" if above == below else f"+{above} −{below} mm"
    above, below = (show_length(off, system, 8) for off in (tolerance.above, tolerance.below))
    return f"±{above}" if above == below else f"+{above} −{below}"
