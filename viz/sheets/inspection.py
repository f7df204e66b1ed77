"""The inspection sheet: hold points with boxes, lines to sign on, and the photos to take."""

from collections.abc import Iterator
from itertools import count

from geometry.layout.lay import Layout
from geometry.report import Report
from geometry.site.inspection import NOT_CHECKED, inspection
from geometry.site.seen import HoldPoint, Kind, Line, Value
from geometry.units import (
    System,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_volume,
)
from viz.figures.forms.entries import Column, Entry
from viz.figures.forms.form import Form
from viz.figures.forms.grid import Grid
from viz.figures.pole.labels import line_words
from viz.language.reader import Language
from viz.sheets.bound_forms import Head, bound_form, heights
from viz.sheets.laser import where
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName

_TEXT = 2.9


def inspection_sheets(
    layout: Layout, report: Report, paper: SmallName, language: Language
) -> tuple[Sheet, ...]:
    """Return the hold points of the build with this design's figures, on pages to carry."""
    about, say = layout.design.project, language.say
    told = tuple(say(f"inspection.how_{key}") for key in ("stop", "photos", "decides"))
    signs = tuple(say(f"inspection.sign_{key}") for key in ("permit", "inspector", "phone"))
    head = Head(about.name, say("inspection.title"), told, signs, about.date, about.revision)
    first, rest, width = heights(head, paper)
    columns = (
        Column("", 7, "box"),
        Column(say("inspection.what"), 146),
        Column(say("inspection.found"), 42, "blank"),
    )
    form = Form(Grid(columns, _TEXT, width), tuple(_entries(layout, report, language)))
    return bound_form(head, form.pages(rest, first), paper, language)


def _entries(layout: Layout, report: Report, language: Language) -> Iterator[Entry]:
    system, say, photo = layout.design.project.units, language.say, count(1)
    for number, hold in enumerate(inspection(layout, report), 1):
        yield _heading(number, hold, language)
        for line in hold.checks:
            yield Entry(("", words(f"inspection.check_{line.key}", line, system, language), ""))
        for line in hold.photos:
            what = say(f"inspection.photo_{line.key}")
            taken = say("inspection.photo", number=str(next(photo)), what=what)
            yield Entry(("", taken, ""))
        signs = ("seen", "initials", "date", "may_cover")
        yield Entry(tuple(say(f"inspection.{key}") for key in signs), "sign")
    yield Entry((say("inspection.not_checked"), say("inspection.not_checked_why")), "heading")
    yield Entry((" ".join(say(f"inspection.not_{key}") for key in NOT_CHECKED),), "note")


def _heading(number: int, hold: HoldPoint, language: Language) -> Entry:
    say = language.say
    whose = where(hold.drain, hold.area, language) or say("card.house")
    title = say(f"inspection.hold_{hold.key}", where=whose)
    return Entry(
        (f"{number}. {title}", say("inspection.asked", source=str(hold.source))), "heading"
    )


def words(key: str, line: Line, system: System, language: Language) -> str:
    """Return a line's sentence in a language, with its values set into it."""
    values = {value.name: show(value, system, language) for value in line.values}
    return language.say(key, **values)


def _named(kind: Kind, name: str, language: Language) -> str:
    if kind == "material":
        return language.material(name)
    return line_words(name, language.say) if kind == "line" else name


def show(value: Value, system: System, language: Language) -> str:
    """Return a value as it is printed."""
    if isinstance(value.value, str):
        return _named(value.kind, value.value, language)
    match value.kind:
        case "level":
            return show_level(value.value, system)
        case "elevation":
            return language.units(show_elevation(value.value, system))
        case "fall":
            return language.units(show_fall(value.value, system))
        case "volume":
            return language.units(show_volume(value.value, system))
        case "count":
            return f"{value.value:g}"
        case _:
            return language.units(show_length(value.value, system))
