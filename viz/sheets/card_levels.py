"""The levels of a card: large beside the picture, and in a list."""

from functools import partial

from geometry.site.records import Place, Shot, Stage
from geometry.site.shots import shot
from geometry.units import show_rod
from viz.figures.stage.flags import Flag
from viz.sheets.card_cells import Entry
from viz.sheets.card_print import Printed

_SAME_M = 5e-4
# Levels that are the same all along, so that a mark in the picture tells the truth.
_FLAGGED = {
    "subgrade": ("subgrade", "trench"), "bedding": ("trench", "bedding"), "pipe": (), "inverts": (),
    "drain_stone": ("top",), "backfill": ("wall_stone", "grade_wall"), "pit": ("rim",),
}  # fmt: skip
# Stages with levels to list.
LISTED = ("subgrade", "bedding", "inverts", "pit")


def flags(said: Printed, stage: Stage) -> tuple[Flag, ...]:
    """Return the levels that stand big beside the picture: TOF, and the stage's own."""
    layout = said.layout
    area = said.area(stage)
    tof = shot(layout, "tof", area, area.tof)
    own = _flagged(said, stage)
    same = next((s for s in own if abs(s.level - tof.level) < _SAME_M), None)
    several = len({a.tof for a in layout.areas}) > 1
    name = said.say("card.tof_of", area=area.name) if several else said.say("card.tof")
    if same:
        name = f"{said.say(f'level.{same.key}')} = {said.say('card.tof')}"
    found = [_flag(said, s, said.say(f"level.{s.key}")) for s in own if s is not same]
    return (*found, _flag(said, tof, name, datum=True))


def _flagged(said: Printed, stage: Stage) -> list[Shot]:
    """Return the levels that are true where the picture is cut."""
    keys, area = _FLAGGED.get(stage.key, ("top",)), said.area(stage).name
    return [
        s for s in stage.shots if s.key in keys and s.area == area and s.drain in ("", stage.drain)
    ]


def _flag(said: Printed, found: Shot, name: str, datum: bool = False) -> Flag:
    figure, note = _reading(said, found)
    if datum:
        elevation = said.elevation(found.elevation)
        note = said.say("card.elevation", elevation=elevation)
    return Flag(found.level, name, figure, note, datum)


def _reading(said: Printed, found: Shot) -> tuple[str, str]:
    """Return what is read at arm's length, and the line under it."""
    level = said.level(found.above_tof)
    if found.rod is None:
        elevation = said.elevation(found.elevation)
        return level, said.say("card.elevation", elevation=elevation)
    if found.rod < 0:
        return level, said.say("card.above_laser", area=found.area)
    return show_rod(found.rod, said.system), said.say("card.pole_from", level=level)


def entries(said: Printed, stage: Stage) -> tuple[Entry, ...]:
    """Return the levels of a stage that do not stand beside its picture."""
    if stage.key not in LISTED:
        return ()
    beside = _flagged(said, stage)
    return tuple(
        Entry(_shot_name(said, stage, found), *_entry(said, found))
        for found in stage.shots
        if found not in beside
    )


def _entry(said: Printed, found: Shot) -> tuple[str, str, str]:
    """Return a reading, and the level where that is not the reading itsaid."""
    figure, note = _reading(said, found)
    if found.rod is None:
        elevation = said.elevation(found.elevation)
        return figure, note, elevation
    if found.rod < 0:
        return figure, note, ""
    level = said.level(found.above_tof)
    return figure, said.say("card.pole_short", level=level), level


def _shot_name(said: Printed, stage: Stage, found: Shot) -> str:
    if found.places:
        places = ", ".join(map(partial(_place, said), found.places))
        return places[:1].upper() + places[1:]
    name = said.say(f"level.{found.key}")
    if found.drain and not stage.drain and len(said.layout.drains) > 1:
        drain = next(d for d in said.layout.drains if d.key == found.drain)
        return f"{name}: {said.drain_title(drain)}"
    if stage.key == "subgrade" and not found.drain and len(said.layout.areas) > 1:
        return name if found.key == "pocket" else f"{name}, {found.area}"
    return name


def _place(said: Printed, place: Place) -> str:
    if place.number is None:
        return said.say(f"place.{place.key}")
    return said.say(f"place.{place.key}_number", number=str(place.number))
