"""Delivery tickets: a list of lines `date, material, amount, place`, read and written.

What cannot be read is told with its line; everything else is kept.
"""

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from io import StringIO

from geometry.errors import LengthError
from geometry.materials.catalogue import AGGREGATES, find, nearest
from geometry.measures import read_measure

HEAD = ("date", "material", "amount", "place")
MOST_TICKETS = 5000
MOST_BROKEN = 50
LONGEST_LINE = 500
LONGEST_PLACE = 60
_LARGEST_KG, _LARGEST_M3 = 1e6, 1e3
_KINDS = ("stone", "sand", "soil")
# A cell that begins so would be a formula to a spreadsheet; in the list a ' stands before it.
_FORMULA = ("=", "+", "-", "@")


@dataclass(frozen=True)
class Ticket:
    """One delivery. amount: as it stands on the ticket; it tells either kg or m3, loose."""

    day: date
    material: str
    amount: str
    place: str
    mass_kg: float | None
    volume_m3: float | None


@dataclass(frozen=True)
class BrokenLine:
    """A line that is no ticket: its number, from 1, and what is wrong, with what would be right."""

    line: int
    sentence: str


@dataclass(frozen=True)
class Tickets:
    """All tickets in the order of the file, and the lines that are none."""

    tickets: tuple[Ticket, ...]
    broken: tuple[BrokenLine, ...]


def read_tickets(text: str) -> Tickets:
    """Read a list of tickets; empty lines, lines that begin with # and the head are passed over."""
    tickets: list[Ticket] = []
    broken: list[BrokenLine] = []
    for number, line in _lines(text):
        if len(tickets) >= MOST_TICKETS:
            broken.append(BrokenLine(number, f"more than {MOST_TICKETS:,} tickets; split the list"))
            break
        if len(broken) >= MOST_BROKEN:
            more = "more lines follow that cannot be read; mend these first"
            broken.append(BrokenLine(number, more))
            break
        try:
            tickets.append(_ticket(_cells(line)))
        except ValueError as error:
            broken.append(BrokenLine(number, str(error)))
    return Tickets(tuple(tickets), tuple(broken))


def _lines(text: str) -> Iterator[tuple[int, str]]:
    for number, line in enumerate(text.removeprefix("\ufeff").splitlines(), 1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        if tuple(cell.strip().casefold() for cell in line[:LONGEST_LINE].split(",")) != HEAD:
            yield number, line


def _cells(line: str) -> list[str]:
    """Return the cells of a line. Raises ValueError in a sentence."""
    if len(line) > LONGEST_LINE:
        raise ValueError(f"the line has {len(line):,} characters; a ticket is one short line")
    try:
        found = next(csv.reader([line.replace("\0", "")], skipinitialspace=True), [])
    except csv.Error:
        raise ValueError("the line cannot be read; look at its quotes") from None
    return [cell.strip() for cell in found]


def _ticket(cells: list[str]) -> Ticket:
    """Read one line. Raises ValueError in a sentence."""
    if not 3 <= len(cells) <= 4:
        raise ValueError(
            f"{len(cells)} columns; write date, material, amount, place: "
            '"2026-04-02, stone-57, 14.2 tons, basement"'
        )
    day, material, amount, place = (*cells, "")[:4]
    if place.startswith(tuple(f"'{sign}" for sign in _FORMULA)):
        place = place[1:]
    if len(place) > LONGEST_PLACE or not place.isprintable():
        raise ValueError(f"the place is no short name; write at most {LONGEST_PLACE} letters")
    mass, volume = _amount(amount)
    return Ticket(_day(day), _material(material), amount, place, mass, volume)


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ValueError(f"{_short(text)} is no date; write it like 2026-04-02") from None


def _material(text: str) -> str:
    named = next((r for r in AGGREGATES.values() if r.name.casefold() == text.casefold()), None)
    row = named or find(text)
    if row is None or row.kind not in _KINDS:
        close = nearest(text, AGGREGATES)
        hint = f"did you mean {close}?" if close else f"write one of {', '.join(AGGREGATES)}"
        raise ValueError(f"{_short(text)} is no stone or sand here; {hint}")
    return row.key


def _amount(text: str) -> tuple[float | None, float | None]:
    """Return kg or m3."""
    try:
        mass = read_measure(text, "mass")
    except LengthError:
        mass = None
    if mass is not None:
        if not 0 < mass <= _LARGEST_KG:
            raise ValueError(f"{_short(text)} is no load; check the number and its unit")
        return mass, None
    try:
        volume = read_measure(text, "volume")
    except LengthError:
        raise ValueError(
            f"{_short(text)} is no amount; write it like 14.2 tons, 12 yd3, 13 t or 9 m3"
        ) from None
    if not 0 < volume <= _LARGEST_M3:
        raise ValueError(f"{_short(text)} is no load; check the number and its unit")
    return None, volume


def _short(text: str) -> str:
    return f'"{text}"' if len(text) <= 40 else f'"{text[:37]}..."'


def ticket_line(*cells: str) -> str:
    """Return a day, a material, an amount and a place as one line of a list."""
    out = StringIO()
    plain = (f"'{cell}" if cell.startswith(_FORMULA) else cell for cell in cells)
    csv.writer(out, lineterminator="").writerow(plain)
    return out.getvalue()


def with_ticket(text: str, line: str) -> str:
    """Return a list with one more ticket at its end, all its other lines as they were.

    line: as in the list. Raises ValueError in a sentence if it is no ticket.
    """
    read = [one for _, one in _lines(line)]
    if len(read) != 1:
        raise ValueError('give one ticket, like "2026-04-02, stone-57, 14.2 tons, basement"')
    ticket = _ticket(_cells(read[0]))
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    kept = text if not text or text.endswith("\n") else f"{text}\n"
    if not kept.strip():
        writer.writerow(HEAD)
    writer.writerow((ticket.day.isoformat(), ticket.material, ticket.amount, ticket.place))
    return kept + out.getvalue()
