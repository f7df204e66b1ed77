"""The figures under the outlet's picture: distance, invert, ground and cover at every station."""

from geometry.units import show_elevation, show_level, show_rod
from geometry.water.outlets import over_words, show_far, show_ground
from viz.figures.outlet.stage import Stage
from viz.figures.profile.rows import Row


def station_rows(stage: Stage, lettered: bool = False) -> tuple[Row, ...]:
    """Return the rows; the rod reading only where the survey has a laser.

    lettered: the stations bear letters already and need no names; a compact table leaves
    out the ground, which follows from what lies over the pipe.
    """
    run, system, datum = stage.run, stage.system, stage.datum
    far = stage.stations
    inverts = [run.invert(x) for x in far]
    grounds = [run.ground.at(x) for x in far]
    covers = [g - i - run.crown_over_invert_m for g, i in zip(grounds, inverts, strict=True)]
    rows = {} if lettered else {"Place": _names(stage)}
    rows |= {
        "From the drain": [show_far(x, system) for x in far],
        "Invert from TOF": [show_level(i, system) for i in inverts],
        "Invert, elevation": [show_elevation(datum.top_of_footing + i, system) for i in inverts],
    }
    if datum.instrument is not None:
        readings = [datum.instrument - datum.top_of_footing - i for i in inverts]
        rows["Rod reading"] = ["above the laser" if r < 0 else show_rod(r, system)
                               for r in readings]  # fmt: skip
    if not (lettered and stage.compact):
        rows["Ground from TOF"] = [show_ground(g, system) for g in grounds]
    rows["Over the pipe"] = [over_words(c, system) for c in covers]
    return tuple(Row(head, tuple((words,) for words in cells)) for head, cells in rows.items())


def _names(stage: Stage) -> list[str]:
    between = [str(number) for number in range(1, len(stage.stations) - 1)]
    last = "Open end" if stage.run.end_at_m is not None else "Last point known"
    return ["Low point", *between, last][: len(stage.stations)]
