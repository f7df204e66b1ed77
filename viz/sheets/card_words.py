"""What a card says, in the words of a language: figures printed in the design's own units."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.measures import show_tons
from geometry.site.records import Amount, Caution, Figure, Hold, Place, Shot, Stage
from geometry.site.shots import shot
from geometry.site.stages import stages
from geometry.sources import Source
from geometry.units import (
    System,
    show_area,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_rod,
    show_thickness,
    show_volume,
    to_unit,
)
from viz.figures.stage.flags import Flag
from viz.figures.stage.holes import pipe_end
from viz.language.reader import Language
from viz.sheets.card_blocks import Cell, Entry, Held

_SAME_M = 5e-4
# Levels that are the same all along, so that a mark in the picture tells the truth.
_FLAGGED = {
    "subgrade": ("subgrade", "trench"), "bedding": ("trench", "bedding"), "pipe": (), "inverts": (),
    "drain_stone": ("top",), "backfill": ("wall_stone", "grade_wall"), "pit": ("rim",),
}  # fmt: skip
_LISTED = ("subgrade", "bedding", "inverts", "pit")
# Stages that are of no level of their own: their levels stand on the card of the inverts.
_BARE = ("pipe", "backfill")


@dataclass(frozen=True)
class Words:
    """A language for one layout: all that its cards say."""

    layout: Layout
    language: Language

    @property
    def _system(self) -> System:
        return self.layout.design.project.units

    def say(self, key: str, **figures: str) -> str:
        """Return the words of a key."""
        return self.language.say(key, **figures)

    def title(self, stage: Stage) -> str:
        """Return what a stage is called, numbered where it goes on over several cards."""
        name = self.say(f"stage.{stage.key}")
        same = [
            s
            for s in stages(self.layout)
            if (s.key, s.drain) == (stage.key, stage.drain) and stage.key == "inverts"
        ]
        return f"{name} {same.index(stage) + 1}/{len(same)}" if len(same) > 1 else name

    def named(self, stage: Stage) -> str:
        """Return what the picture calls the thing that is laid, with its thickness."""
        key = "role.drain_stone" if stage.key == "drain_stone" else f"stage.{stage.key}"
        name = self.say("stage.pipe" if stage.key == "inverts" else key)
        name = name[:1].upper() + name[1:]
        if stage.drain or stage.key == "pit" or stage.thickness is None:
            return name
        return f"{name} {self.thick(stage.thickness[1])}"

    def under_title(self, stage: Stage, number: int, count: int) -> str:
        """Return the line under a title: where it is, and which card of how many."""
        of = self.say("card.number", number=str(number), count=str(count))
        return f"{self._where(stage)}. {of}."

    def _where(self, stage: Stage) -> str:
        drain = self._drain(stage)
        if drain:
            return self._drain_title(drain)
        everywhere = len(stage.areas) == len(self.layout.areas)
        if everywhere and (len(stage.areas) > 1 or stage.key in ("subgrade", "backfill")):
            return self.say("card.house")
        return self.say("card.floor_of", areas=", ".join(stage.areas))

    def _drain(self, stage: Stage) -> DrainLayout | None:
        return next((d for d in self.layout.drains if d.key == stage.drain), None)

    def _drain_title(self, drain: DrainLayout) -> str:
        line = self.say(f"line.{drain.drain.line}")
        return drain.drain.name or self.say("card.drain_of", line=line, area=drain.area.name)

    def thick(self, metres: float) -> str:
        """Return a thickness."""
        return self.language.units(show_thickness(metres, self._system))

    def _length(self, metres: float) -> str:
        return self.language.units(show_length(metres, self._system))

    def _level(self, metres: float) -> str:
        return show_level(metres, self._system)

    def _figures(self, figures: Sequence[Figure]) -> dict[str, str]:
        return {figure.name: self._figure(figure) for figure in figures}

    def _figure(self, figure: Figure) -> str:
        if figure.kind == "count":
            return f"{figure.value:g}"
        if figure.kind == "share":
            return f"{figure.value * 100:.3g} %"
        if figure.kind == "fall":
            return self._fall(figure.value)
        return self._length(figure.value)

    def _fall(self, fall: float) -> str:
        if fall == 0:
            return self.say("card.level")
        return self.language.units(show_fall(fall, self._system))

    def flags(self, stage: Stage) -> tuple[Flag, ...]:
        """Return the levels that stand big beside the picture: TOF, and the stage's own."""
        layout = self.layout
        area = self._area(stage)
        tof = shot(layout, "tof", area, area.tof)
        own = self._flagged(stage)
        same = next((s for s in own if abs(s.level - tof.level) < _SAME_M), None)
        several = len({a.tof for a in layout.areas}) > 1
        name = self.say("card.tof_of", area=area.name) if several else self.say("card.tof")
        if same:
            name = f"{self.say(f'level.{same.key}')} = {self.say('card.tof')}"
        found = [self._flag(s, self.say(f"level.{s.key}")) for s in own if s is not same]
        return (*found, self._flag(tof, name, datum=True))

    def _area(self, stage: Stage) -> AreaLayout:
        drain = self._drain(stage)
        return drain.area if drain else self.layout.area(stage.areas[0])

    def _flagged(self, stage: Stage) -> list[Shot]:
        """Return the levels that are true where the picture is cut."""
        keys, area = _FLAGGED.get(stage.key, ("top",)), self._area(stage).name
        return [
            s
            for s in stage.shots
            if s.key in keys and s.area == area and s.drain in ("", stage.drain)
        ]

    def _flag(self, found: Shot, name: str, datum: bool = False) -> Flag:
        figure, note = self._reading(found)
        if datum:
            elevation = self.language.units(show_elevation(found.elevation, self._system))
            note = self.say("card.elevation", elevation=elevation)
        return Flag(found.level, name, figure, note, datum)

    def _reading(self, found: Shot) -> tuple[str, str]:
        """Return what is read at arm's length, and the line under it."""
        level = self._level(found.above_tof)
        if found.rod is None:
            elevation = self.language.units(show_elevation(found.elevation, self._system))
            return level, self.say("card.elevation", elevation=elevation)
        if found.rod < 0:
            return level, self.say("card.above_laser")
        return show_rod(found.rod, self._system), self.say("card.pole_from", level=level)

    def entries(self, stage: Stage) -> tuple[Entry, ...]:
        """Return the levels of a stage that do not stand beside its picture."""
        if stage.key not in _LISTED:
            return ()
        beside = self._flagged(stage)
        return tuple(
            Entry(self._shot_name(stage, found), *self._entry(found))
            for found in stage.shots
            if found not in beside
        )

    def _entry(self, found: Shot) -> tuple[str, str, str]:
        """Return a reading, and the level where that is not the reading itself."""
        figure, note = self._reading(found)
        if found.rod is None or found.rod < 0:
            return figure, note, ""
        level = self._level(found.above_tof)
        return figure, self.say("card.pole_short", level=level), level

    def _shot_name(self, stage: Stage, found: Shot) -> str:
        if found.places:
            places = ", ".join(map(self._place, found.places))
            return places[:1].upper() + places[1:]
        name = self.say(f"level.{found.key}")
        if found.drain and not stage.drain and len(self.layout.drains) > 1:
            drain = next(d for d in self.layout.drains if d.key == found.drain)
            return f"{name}, {self._drain_title(drain)}"
        if stage.key == "subgrade" and not found.drain and len(self.layout.areas) > 1:
            return name if found.key == "pocket" else f"{name}, {found.area}"
        return name

    def _place(self, place: Place) -> str:
        if place.number is None:
            return self.say(f"place.{place.key}")
        return self.say(f"place.{place.key}_number", number=str(place.number))

    def cells(self, stage: Stage) -> tuple[Cell, ...]:
        """Return thickness, fall, holes, pole mark and amounts, each to be read from afar."""
        return (*self._facts(stage), *self._amounts(stage))

    def _facts(self, stage: Stage) -> Iterator[Cell]:
        if stage.thickness and stage.key != "pit":
            key = f"card.thickness_{stage.key}"
            head = self.say(key if self.language.knows(key) else "card.thickness")
            yield Cell(head, self._span(*stage.thickness))
        if stage.fall is not None and stage.key != "inverts":
            yield Cell(self.say("card.fall"), self._fall(stage.fall))
        if stage.key == "backfill":
            yield from self._filled(stage)
        elif stage.key not in (*_LISTED, *_BARE):
            top = stage.shots[0]
            yield Cell(
                self.say("card.pole"), self._level(top.above_tof), (self.say("card.from_tof"),)
            )
        drain = self._drain(stage)
        if stage.key == "pipe" and drain:
            key = stage.instructions[-1]
            end = tuple(pipe_end(drain.drain.holes.rows, (9.0, -9.5), 4.8))
            yield Cell(self.say("card.holes"), self.say(f"big.{key}"), drawn=end)

    def _filled(self, stage: Stage) -> Iterator[Cell]:
        said = self._figures(stage.figures)
        if "wall_stone" in stage.instructions:
            yield Cell(self.say("card.stone_wide"), said["wide"])
        away = self.say("card.away", length=said["away"])
        yield Cell(self.say("card.grade"), said["fall"], (away,))

    def _span(self, low: float, high: float) -> str:
        if high - low < _SAME_M / 10:
            return self.thick(high)
        return self.say("card.span", low=self.thick(low), high=self.thick(high))

    def _amounts(self, stage: Stage) -> Iterator[Cell]:
        for amount in stage.amounts:
            if not self._small(amount):
                yield self._amount(amount)

    def _small(self, amount: Amount) -> bool:
        """Whether an amount is one of many small ones, which stand in a line."""
        pipe = amount.key == "solid_pipe"
        return amount.unit == "pieces" or amount.key == "tape" or (pipe and amount.shared)

    def pieces(self, stage: Stage) -> tuple[tuple[str, str], ...]:
        """Return the small things: how many or how much of each, and what it is."""
        return tuple(map(self._piece, filter(self._small, stage.amounts)))

    def _piece(self, amount: Amount) -> tuple[str, str]:
        if amount.unit == "pieces":
            return f"{amount.count:g}", self._thing(amount)
        own = self._measured(amount) if amount.shared else self._bought(amount)
        return own, self._thing(amount)

    def _thing(self, amount: Amount) -> str:
        key, _, angle = amount.key.partition(":")
        return self.say(
            f"amount.{key}", material=self.language.material(amount.material), angle=angle
        )

    def _amount(self, amount: Amount) -> Cell:
        """Return what to order large; what lies in place, and by weight, under it."""
        notes = [self.say("card.in_place", amount=self._measured(amount))]
        several = amount.area and len(self.layout.areas) > 1
        head = self._thing(amount)
        head = f"{head}, {amount.area}" if several and amount.key in ("sheet", "tape") else head
        if amount.mass_kg:
            low, high = (show_tons(m, self._system) for m in amount.mass_kg)
            notes.append(self.language.units(
                high if low == high
                else self.say("card.span", low=low.split()[0], high=high)))  # fmt: skip
        if amount.shared:
            floors = amount.key in ("sheet", "tape")
            notes.append(self.say(f"card.shared_{'floors' if floors else 'drains'}"))
        return Cell(self.say("card.to_order", thing=head), self._bought(amount), tuple(notes))

    def _measured(self, amount: Amount) -> str:
        if amount.unit == "m3":
            return self.language.units(show_volume(amount.in_place, self._system))
        if amount.unit == "m2":
            return self.language.units(show_area(amount.in_place, self._system))
        if self._system == "metric":
            return f"{amount.in_place:,.1f} m"
        return self.language.units(f"{to_unit(amount.in_place, 'm', 'ft'):,.0f} ft")

    def _bought(self, amount: Amount) -> str:
        if amount.sold in ("yd3", "m3"):
            cubic = amount.count
            cubic = to_unit(cubic, "yd**3", "m**3") if amount.sold == "yd3" else cubic
            return self.language.units(show_volume(cubic, self._system))
        one = "sold_one" if amount.count == 1 else "sold"
        return f"{amount.count:g} {self.say(f'{one}.{amount.sold}')}"

    def instructions(self, stage: Stage) -> str:
        """Return how a stage is laid."""
        figures = self._figures(stage.figures)
        return " ".join(self.say(f"do.{key}", **figures) for key in stage.instructions)

    def holds(self, stage: Stage) -> tuple[Held, ...]:
        """Return the hold points with who looks."""
        return tuple(self._held(hold) for hold in stage.holds)

    def _held(self, hold: Hold) -> Held:
        words = self.say(f"hold.{hold.key}", **self._figures(hold.figures))
        by = ", ".join(self.say(f"by.{who}") for who in hold.by)
        seen = f"{self.say('card.seen_by')}: {by}"
        return Held(f"{words} {self._source(hold.source)}", seen, self.say("card.name_date"))

    def cautions(self, stage: Stage) -> tuple[str, ...]:
        """Return the dangers of a stage, each with its source."""
        return tuple(map(self._caution, stage.cautions))

    def _caution(self, caution: Caution) -> str:
        words = self.say(f"caution.{caution.key}", **self._figures(caution.figures))
        return f"{words} {self._source(caution.source)}"

    def _source(self, source: Source) -> str:
        """Return where a sentence is from and how sure that is, in brackets."""
        if source.sure == "practice" or source.title == "common practice":
            said = self.say("card.practice")
        else:
            said = ", ".join(filter(None, (source.title, source.edition, source.clause)))
        if source.sure == "memory":
            said = self.say("card.from_memory", source=said)
        if source.sure == "second-hand":
            said = self.say("card.second_hand", source=said)
        return self.say("card.source", source=said)

    def foot(self) -> str:
        """Return the line at the foot of every card."""
        means = self.say("card.tof_means")
        return f"{means}. {self.say('card.picture')} {self.say('card.foot')}"

    def project(self) -> str:
        """Return whose card it is."""
        return self.layout.design.project.name
