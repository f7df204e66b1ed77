"""Faults of names and notes: empty, endless, not printable, or said twice."""

from collections.abc import Iterator

from geometry.faults.common import At
from geometry.faults.lines import Path
from geometry.parts.floor import Floor
from geometry.project import About, Design

LONGEST = 60
LONGEST_LINE = 120
LONGEST_NOTE = 2000
# A layer of this name would hide the level "footing bottom".
TAKEN = "footing"


def name_faults(design: Design) -> Iterator[At]:
    """Yield names that no label or title block could carry."""
    yield from _title_block(design.project)
    yield from text_faults(("soil", "note"), design.soil.note, LONGEST_NOTE)
    yield from text_faults(("wall", "kind"), design.wall.kind, LONGEST)
    yield from _floor(("floor",), design.floor)
    for number, area in enumerate(design.areas):
        path = ("area", number)
        yield from _name((*path, "name"), area.name)
        if area.wall:
            yield from text_faults((*path, "wall", "kind"), area.wall.kind, LONGEST)
        if area.floor:
            yield from _floor((*path, "floor"), area.floor)
        for place, pier in enumerate(area.piers):
            yield from text_faults((*path, "pier", place, "name"), pier.name, LONGEST)
    yield from _drains(design)
    yield from _own_rules(design)
    yield from _area_twice(design)


def _title_block(about: About) -> Iterator[At]:
    yield from _name(("project", "name"), about.name)
    for key in ("address", "prepared_by", "note"):
        yield from text_faults(("project", key), getattr(about, key), LONGEST_NOTE)
    for key in ("drawn_for", "code"):
        yield from text_faults(("project", key), getattr(about, key), LONGEST_LINE)
    for key in ("parcel", "date", "revision"):
        yield from text_faults(("project", key), getattr(about, key), LONGEST)


def _name(path: Path, text: str) -> Iterator[At]:
    if not text:
        yield At(path, "the name is empty; write a short name in quotes")
    yield from text_faults(path, text, LONGEST)


def text_faults(path: Path, text: str, longest: int) -> Iterator[At]:
    """Yield a text that is too long, or holds what cannot be printed."""
    if len(text) > longest:
        yield At(path, f"the text has {len(text):,} characters; write at most {longest:,}")
    allowed = {"\n", "\t"} if longest == LONGEST_NOTE else set()
    if not all(letter.isprintable() or letter in allowed for letter in text):
        yield At(path, "the text holds a character that cannot be printed; leave it out")


def _floor(path: Path, floor: Floor) -> Iterator[At]:
    names: set[str] = set()
    for place, layer in enumerate(floor.layers):
        here, name = (*path, "layer", place, "name"), layer.name.lower()
        yield from _name(here, layer.name)
        if name == TAKEN:
            yield At(here, f'"{layer.name}" already means the strip footing; choose another name')
        if name and name in names:
            yield At(here, f'two layers are named "{layer.name}"; give each its own name')
        names.add(name)


def _drains(design: Design) -> Iterator[At]:
    names: set[str] = set()
    for number, drain in enumerate(design.drains):
        path: Path = ("drain", number, "name")
        yield from text_faults(path, drain.name, LONGEST)
        if drain.name and drain.name in names:
            yield At(path, f'two drains are named "{drain.name}"; give each its own name')
        names.add(drain.name)


def _own_rules(design: Design) -> Iterator[At]:
    names: set[str] = set()
    for number, rule in enumerate(design.height_rules):
        path: Path = ("height_rule", number)
        yield from _name((*path, "name"), rule.name)
        yield from text_faults((*path, "why"), rule.why, LONGEST_LINE)
        if rule.name and rule.name in names:
            sentence = f'two rules are named "{rule.name}"; give each its own name'
            yield At((*path, "name"), sentence)
        names.add(rule.name)


def _area_twice(design: Design) -> Iterator[At]:
    names: set[str] = set()
    for number, area in enumerate(design.areas):
        if area.name in names:
            sentence = f'two areas are named "{area.name}"; give each its own name'
            yield At(("area", number, "name"), sentence)
        names.add(area.name)
