"""What the pages Order and On site show, kept by the design's text and by what was brought."""

from dataclasses import asdict

from geometry.checks.survey import survey_findings
from geometry.report import Found
from geometry.survey.asdug import AsDug, as_dug
from geometry.survey.reading import read_shots
from geometry.takeoff.deliveries import Arrived, arrived
from geometry.takeoff.tickets import Tickets, read_tickets
from viz.figures.arrived import arrived_figure
from viz.figures.boards.screen import laid_pictures
from viz.figures.survey.screen import map_pictures
from viz.panels.cached import sound_job
from viz.panels.pairs import NARROW, WIDE, Picture, picture, pictures_of
from viz.panels.shared import shared
from viz.panels.spoken import Told
from viz.tables.table import Table


@shared(32, Told("Laying boards and strips ..."))
def laid(text: str) -> tuple[tuple[Picture, Table | None], ...]:
    """Return every course of boards and every area's strips as laid, with the boards' cuts."""
    found = laid_pictures(sound_job(text).layout)
    return tuple((picture(one.wide, one.narrow), one.cuts) for one in found)


@shared(32)
def tickets(listed: str) -> Tickets:
    """Return the tickets of a list, and its lines that are none."""
    return read_tickets(listed)


@shared(32)
def came(text: str, listed: str) -> tuple[Arrived, ...]:
    """Return what has come of every stone and sand by a list of tickets."""
    return arrived(sound_job(text).layout, tickets(listed).tickets)


@shared(32)
def came_picture(text: str, listed: str) -> tuple[Picture, ...]:
    """Return the picture of what has come; none where nothing is needed."""
    rows, system = came(text, listed), sound_job(text).system
    wide, narrow = (arrived_figure(rows, system, *size) for size in (WIDE, NARROW))
    return pictures_of([(wide, narrow)])


@shared(4, Told("Holding the shots against the design ..."))
def dug(text: str, shots: bytes, least_m: float | None) -> AsDug:
    """Return what a file of shots says about the design, with every fault in it.

    least_m: thinnest base that is taken; the source's unless given.
    """
    layout = sound_job(text).layout
    return as_dug(layout, read_shots(shots, layout.design), least_m)


@shared(32, Told("Drawing the map ..."))
def dug_map(text: str, shots: bytes, least_m: float | None, place: int) -> Picture:
    """Return the map of one dug floor. place: among the areas shot, from 0."""
    area = dug(text, shots, least_m).areas[place]
    return picture(*map_pictures(sound_job(text).layout, area))


@shared(32)
def dug_findings(text: str, shots: bytes, least_m: float | None) -> tuple[Found, ...]:
    """Return what was found in the shots, in words."""
    found = survey_findings(sound_job(text).layout, dug(text, shots, least_m))
    return tuple(Found(**{**asdict(one), "source": str(one.source)}) for one in found)
