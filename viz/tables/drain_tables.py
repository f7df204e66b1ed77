"""Tables of a drain's heights, of the rules on them, of its slope budget and its inverts."""

from dataclasses import dataclass
from typing import Literal

from geometry.units import (
    System,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_rod,
)
from geometry.water.drain_figures import DrainFigures
from geometry.water.height_figures import (
    HeightFigures,
    RoomFigures,
    RuleFigures,
    SizeFigures,
    SlopeFigures,
)
from viz.tables.table import Table

# What each height is called for people, from the report's own names.
NAMES = {
    "trench bottom": "trench bottom",
    "pipe underside": "pipe underside",
    "invert": "invert",
    "lowest hole": "lowest hole, where water runs in",
    "highest hole": "highest hole, upper edge",
    "crown": "top of pipe",
    "stone top": "stone top",
    "footing bottom": "footing bottom",
    "base underside": "floor's base, underside",
    "TOF": "top of footing",
    "slab underside": "slab underside",
    "slab top": "finished floor",
}
REFERENCES = ("footing bottom", "base underside", "TOF", "slab underside", "slab top")
_NONE = "–"
State = Literal["met", "not met", "nothing to hold it to"]


@dataclass(frozen=True)
class RuleLine:
    """One rule in words: how it stands, what it asks, its limit, both ends, whence it is known."""

    state: State
    title: str
    limit: str
    low: str
    high: str
    source: str
    note: str = ""


@dataclass(frozen=True)
class RuleSetLines:
    """The rules of one set; asked: whether this job is held to them, else they are to compare."""

    title: str
    asked: bool
    lines: tuple[RuleLine, ...]


def heights(figures: HeightFigures, system: System) -> Table:
    """Return every height from the top down, against the drained area's TOF, at both ends."""
    tof = figures.references_m["TOF"]
    rows = [(NAMES[name], low, figures.high_m[name]) for name, low in figures.low_m.items()]
    known = [name for name in REFERENCES if name in figures.references_m]
    rows += [(NAMES[n], figures.references_m[n], figures.references_m[n]) for n in known]
    rows.sort(key=lambda row: (-row[2], -row[1]))
    said = ((n, show_level(a - tof, system), show_level(b - tof, system)) for n, a, b in rows)
    return Table(("Height against TOF", "Low point", "High point"), tuple(said))


def first_water(figures: HeightFigures, system: System) -> Table:
    """Return the level at which water starts to run in, holes as laid and the pipe rolled over."""
    rows = []
    water, tof = figures.first_water, figures.references_m["TOF"]
    for words, levels in (
        ("holes as laid", water.as_laid_m),
        ("rolled half round", water.turned_m),
    ):
        if levels:
            rows.append((words, *(show_level(level - tof, system) for level in levels)))
    return Table(("Water runs in at", "Low point", "High point"), tuple(rows))


def rules(figures: HeightFigures, system: System) -> Table:
    """Return every rule with its limit and its verdict at the low and at the high point."""
    tof = figures.references_m["TOF"]
    rows = [
        (
            whose(rule),
            rule.title,
            _limit(rule, tof, system),
            *rule_verdicts(rule, system),
            rule.source,
        )
        for rule in figures.rules
    ]
    rows += [
        (whose(size), size.title, show_length(size.least_m, system), *_size(size, system),
         size.source)
        for size in figures.sizes
    ]  # fmt: skip
    order = list(dict.fromkeys(whose(rule) for rule in figures.rules))
    rows.sort(key=lambda row: order.index(row[0]))
    return Table(("Rules", "Rule", "Limit", "Low point", "High point", "Source"), tuple(rows))


def by_set(figures: HeightFigures, system: System) -> tuple[RuleSetLines, ...]:
    """Return the rule sets beside each other; those this job is held to come first."""
    tof = figures.references_m["TOF"]
    sets = {rule.rules: rule.asked for rule in figures.rules}
    sets |= {size.rules: size.asked for size in figures.sizes}
    shown = [
        RuleSetLines(
            title,
            asked,
            (
                *(_rule_line(r, tof, system) for r in figures.rules if r.rules == title),
                *(_size_line(s, system) for s in figures.sizes if s.rules == title),
            ),
        )
        for title, asked in sets.items()
    ]
    return tuple(sorted(shown, key=lambda one: not one.asked))


def _rule_line(rule: RuleFigures, tof: float, system: System) -> RuleLine:
    ends = (rule.met_low, rule.met_high)
    state: State = "met" if all(ends) else "not met"
    if None in ends:
        state = "nothing to hold it to"
    verdicts = rule_verdicts(rule, system)
    return RuleLine(state, rule.title, _limit(rule, tof, system), *verdicts, rule.source, rule.note)


def _size_line(size: SizeFigures, system: System) -> RuleLine:
    state: State = "met" if size.met else "not met"
    limit = f"{show_length(size.least_m, system)} or more"
    return RuleLine(state, size.title, limit, *_size(size, system), size.source)


def whose(rule: RuleFigures | SizeFigures) -> str:
    """Return whose rule it is, and whether this job is not held to it."""
    return rule.rules if rule.asked else f"{rule.rules} (not asked here)"


def _limit(rule: RuleFigures, tof: float, system: System) -> str:
    return _NONE if rule.limit_m is None else show_level(rule.limit_m - tof, system)


def rule_verdicts(rule: RuleFigures, system: System) -> tuple[str, str]:
    """Return in words whether a rule is met at the low and at the high point, and by how much."""
    return (
        _verdict(rule.met_low, rule.low_spare_m, system),
        _verdict(rule.met_high, rule.high_spare_m, system),
    )


def _verdict(met: bool | None, spare: float | None, system: System) -> str:
    if met is None or spare is None:
        return "no such level here"
    size = show_length(abs(spare), system)
    if met:
        return "met" if size == show_length(0.0, system) or spare < 0 else f"met, {size} spare"
    return f"not met, {size} past"


def _size(size: SizeFigures, system: System) -> tuple[str, str]:
    there = f"{'met' if size.met else 'not met'}, {show_length(size.found_m, system)}"
    return there, there


def clash_lines(figures: HeightFigures) -> list[str]:
    """Return the rules that exclude each other, a line a pair, those this job is held to first."""
    here = [f"- {clash.sentence}" for clash in figures.clashes if clash.asked]
    others = [c for c in figures.clashes if not c.asked]
    return [*here, *(f"- {clash.sentence} (Not both asked here.)" for clash in others)]


def budget_by_rule(figures: SlopeFigures, system: System) -> Table:
    """Return the room each rule leaves, the greatest fall in it and the longest branch."""
    head = ("Rule", "Room for the fall", "Greatest fall", "Longest branch", "As designed")
    return Table(head, tuple(_room(row, system) for row in figures.by_rule))


def _room(row: RoomFigures, system: System) -> tuple[str, ...]:
    longest = row.greatest_length_m
    return (
        row.title,
        show_length(row.room_m, system),
        greatest_fall(row, system),
        "any" if longest is None else show_length(longest, system),
        fits(row.fits),
    )


def greatest_fall(row: RoomFigures, system: System) -> str:
    """Return the greatest fall that fits, in words."""
    if not row.level_fits:
        return "none, not even level"
    return show_fall(row.greatest_fall_m_per_m, system) if row.greatest_fall_m_per_m else "level"


def falls(figures: SlopeFigures, system: System) -> Table:
    """Return the falls that are asked for somewhere, the height each needs here, and if it fits."""
    rows = (
        (row.title, show_length(row.needed_m, system), fits(row.fits), row.source)
        for row in figures.falls
    )
    return Table(("Fall asked", "Needs", "Here", "Source"), tuple(rows))


def fits(yes: bool) -> str:
    """Return whether a fall fits, in a word or two."""
    return "fits" if yes else "does not fit"


def ways(figures: SlopeFigures, system: System) -> Table:
    """Return what buys room, with the room there is then and the height the fall needs."""
    rows = (
        (way.sentence, show_length(way.room_m, system), show_length(way.needed_m, system),
         fits(way.fits))
        for way in figures.ways
    )  # fmt: skip
    return Table(("What is done", "Room", "Needed", "Then"), tuple(rows))


def inverts(figures: DrainFigures, system: System) -> Table:
    """Return the inverts to set out along a drain; rod readings only where a laser is given.

    Levels against the project's top of footing. Even steps between named places have no name.
    """
    laser = any(row.rod_reading_m is not None for row in figures.inverts)
    head = ("Place", "Along the pipe", "From TOF", "Elevation", "Rod reading")
    rows = []
    for row in figures.inverts:
        rod = row.rod_reading_m
        read = "" if rod is None else "above the laser" if rod < 0 else show_rod(rod, system)
        along = show_length(round(row.along_m, 4), system, 4)
        level, elevation = show_level(row.level_m, system), show_elevation(row.elevation_m, system)
        rows.append((", ".join(row.names) or _NONE, along, level, elevation, read))
    if laser:
        return Table(head, tuple(rows))
    return Table(head[:-1], tuple(row[:-1] for row in rows))
