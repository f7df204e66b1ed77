"""The still pictures of a design: which there are, what each shows, and how it is drawn."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from geometry.errors import BedcourseError
from geometry.layout.drain import DrainLayout
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.site.records import Stage
from geometry.site.stages import stages
from geometry.solids.solid import Solid
from geometry.units import show_length, show_level
from viz.figures.pipe.words import clock, fine
from viz.job import Job
from viz.language.reader import NATIVE, language
from viz.pictures import larger_half_kept, still_view
from viz.scene.drainlength import flaps, from_below, opened
from viz.scene.profile import Profile, profile_of, square_cut
from viz.scene.staged import Standing, pictured, standing
from viz.scene.view import Kind, Size, View
from viz.words import material_name, part_words, size

SIZE: Size = (1600, 1200)
UPRIGHT: Size = (1080, 1440)
HOUSE: Mapping[str, Kind] = {"whole": "whole", "cutaway": "cutaway", "exploded": "exploded"}
BELOW, OPENED, STAGE = "drain-from-below", "wrap-opened", "stage"
# Levels of a stage that its picture says; more would bury the part.
_MOST_LEVELS = 3
# So many times as long are trench and pipe in an upright picture.
_LONGER, _LONGER_PIPE = 2.2, 1.5
_NOT_SAID = ("under", "trench", "pocket")


@dataclass(frozen=True)
class Still:
    """One picture: the name of its file and of it on the command line, and its title."""

    name: str
    title: str


def stills(work: Job) -> tuple[Still, ...]:
    """Return every picture of a design: the house, its drain, and each stage of the build."""
    return tuple(_all(work))


def _all(work: Job) -> Iterator[Still]:
    yield Still("whole", "The whole foundation")
    yield Still("cutaway", "Cut open")
    yield Still("exploded", "Pulled apart in build order")
    if work.layout.drain:
        yield Still(BELOW, "Drain pipe and its holes")
        yield Still(OPENED, "Fabric wrap, open")
    numbers = pictured(work.layout)
    for number, stage in enumerate(numbers, 1):
        key = stages(work.layout)[stage].key.replace("_", "-")
        yield Still(f"{STAGE}-{number:02}-{key}", _stage_title(work, number, len(numbers)))


def still_named(work: Job, name: str) -> Still:
    """Return a picture by its name. Raises BedcourseError with the names there are."""
    found = stills(work)
    for still in found:
        if still.name == name:
            return still
    names = ", ".join(still.name for still in found)
    raise BedcourseError(f"{name!r} is not a picture of this design; choose one of: {names}")


def still_png(
    work: Job, name: str, size: Size = SIZE, beat: Callable[[], None] | None = None
) -> bytes:
    """Return a picture as PNG. Raises NoPictures, BedcourseError in one sentence.

    beat: called now and then while it is drawn; what it raises stops the drawing.
    """
    from viz.scene.worker import still

    solids, view = shown(work, name, upright=size[1] > size[0])
    return still(solids, view, size, beat)


def shown(work: Job, name: str, upright: bool = False) -> tuple[tuple[Solid, ...], View]:
    """Return the bodies of a picture and how they are looked at. Raises BedcourseError.

    upright: the picture is taller than wide.
    """
    title = still_named(work, name).title
    if name in HOUSE:
        line = next(iter(work.cuts.values()))
        view = still_view(work.layout, work.foundation, HOUSE[name], line)
        return (*work.foundation.solids, work.foundation.excavation), view
    if name == BELOW:
        return _below(work, _profile(work), title, upright)
    if name == OPENED:
        return _opened(work, _profile(work), title, upright)
    return _staged(work, pictured(work.layout)[int(name.split("-")[1]) - 1], title)


def _profile(work: Job) -> Profile:
    drain = work.layout.drain
    lines = (*work.cuts.values(), square_cut(drain)) if drain else ()
    found = profile_of(drain, work.foundation, lines) if drain else None
    if found is None:
        raise BedcourseError("no cut of this house meets its drain square, so it is not drawn")
    return found


def _below(
    work: Job, profile: Profile, title: str, upright: bool
) -> tuple[tuple[Solid, ...], View]:
    made = from_below(profile, _LONGER_PIPE if upright else 1.0)
    key = profile.drain.key
    drain, words = profile.drain.drain, part_words(work.layout, work.foundation)
    labels = {
        f"{key}/pipe": words[f"{key}/pipe"],
        f"{key}/holes": "\n".join(("Holes", _holes(work, profile.drain))),
        f"{key}/stone": words[f"{key}/stone"],
        f"{key}/wrap": f"Fabric wrap\n{material_name(drain.wrap.material)}, cut back",
    }
    tilt = 52.0 if drain.holes.rows and min(map(abs, drain.holes.rows)) > 90 else -52.0
    view = View(
        "as given", labels=labels, turn=-10.0 if upright else -24.0, tilt=tilt, loose=made.loose,
        dark=made.dark, title=title if tilt > 0 else f"{title}, seen from below",
    )  # fmt: skip
    return made.solids, view


def _holes(work: Job, drain: DrainLayout) -> str:
    holes = drain.drain.holes
    rows = ", ".join(clock(row).replace(" o'clock", "") for row in sorted(holes.rows))
    across = fine(holes.diameter, work.system)
    return f"{across}, every {size(holes.spacing, work.system)}\nrows at {rows} o'clock"


def _opened(
    work: Job, profile: Profile, title: str, upright: bool
) -> tuple[tuple[Solid, ...], View]:
    made = opened(profile, _LONGER if upright else 1.0)
    drain, key = profile.drain, profile.drain.key
    words, system = part_words(work.layout, work.foundation), work.system
    inner, outer = (show_length(flap.length, system) for flap in flaps(profile))
    lap = size(drain.drain.wrap.overlap, system)
    side = "footing" if drain.shelf <= 0 else "wall"
    labels = {
        f"{key}/pipe": words[f"{key}/pipe"],
        f"{key}/stone": words[f"{key}/stone"],
        f"{key}/wrap": f"Fabric wrap\n{material_name(drain.drain.wrap.material)}, laid first",
        f"{key}/flap inner": f"Flap at the {side}\n{inner}; the two lap {lap} when closed",
        f"{key}/flap outer": f"Flap at the trench\n{outer}",
        "footing": words["footing"],
        "ground/excavation": "Undisturbed ground",
    } | {part: "Foundation wall" for part in words if part.endswith("/wall")}
    view = View(
        "as given",
        labels=labels,
        turn=9.0 if upright else 18.0,
        tilt=42.0,
        loose=made.loose,
        fitted=True,
        title=title,
    )
    return made.solids, view


def _staged(work: Job, number: int, title: str) -> tuple[tuple[Solid, ...], View]:
    found = standing(work.layout, work.foundation, number)
    stage = stages(work.layout)[number]
    view = View(
        "cutaway",
        cut=larger_half_kept(work.layout, _cut_of(work, found)),
        labels=_stage_words(work, stage, found),
        ghosts=found.ghosts,
        dug=True,
        focus=frozenset(found.laid),
        fitted=True,
        title=title,
    )
    return found.solids, view


def _cut_of(work: Job, found: Standing) -> CutLine:
    """The first straight cut that meets what the stage lays; the first of all if none does."""
    laid = [s for s in found.solids if s.label.part in found.laid]
    straight = [line for line in work.cuts.values() if not line.jogs]
    meeting = (line for line in straight if laid and cut(laid, line))
    return next(meeting, next(iter(work.cuts.values())))


def _stage_title(work: Job, number: int, count: int) -> str:
    stage = stages(work.layout)[pictured(work.layout)[number - 1]]
    name = language(NATIVE).say(f"stage.{stage.key}")
    drains = {drain.key: drain.title for drain in work.layout.drains}
    where = drains.get(stage.drain, "") if len(drains) > 1 else ""
    if not stage.drain and len(stage.areas) < len(work.layout.areas):
        where = ", ".join(stage.areas)
    head = f"Stage {number} of {count}: {name}"
    return f"{head}, {where}" if where else head


def _stage_words(work: Job, stage: Stage, found: Standing) -> dict[str, str]:
    """What is laid with its levels, and what it lies against by name alone."""
    words = part_words(work.layout, work.foundation)
    named = {part: text.split("\n")[0] for part, text in words.items()}
    around = [part for part in words if part == "footing" or part.endswith("/wall")]
    labels = {part: named[part] for part in around}
    labels |= {part: words[part] for part in found.laid if part in words}
    main = stage.parts[1 if stage.key == "bedding" else 0]
    if stage.key == "subgrade":
        labels[main] = "Undisturbed ground"
    if main in labels:
        labels[main] = "\n".join((labels[main], *_levels(work, stage)))
    return labels


def _levels(work: Job, stage: Stage) -> Iterator[str]:
    """The stage's levels against TOF, each once."""
    said = language(NATIVE)
    told: dict[str, None] = {}
    for shot in stage.shots:
        if shot.key not in _NOT_SAID:
            name = "top" if shot.key == "top" else said.say(f"level.{shot.key}").lower()
            told[f"{name} {show_level(shot.level, work.system)}"] = None
    yield from list(told)[:_MOST_LEVELS]
