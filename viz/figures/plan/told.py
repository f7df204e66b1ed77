"""What the key of a light plan tells: areas, places of the drain, pit, steps, notes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.units import show_fall
from viz.figures.drainwords import capital, highs, to_daylight
from viz.figures.plan.bubbles import Ref
from viz.figures.plan.flat import flat_words
from viz.figures.plan.key import Entry
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.pipes import bleeder_line, flows, lead_line
from viz.figures.plan.say import away_from, free_side, house_of, named_one
from viz.figures.plan.signs import Sign
from viz.figures.plan.structure import Step, Structure
from viz.figures.plan.words import Saying
from viz.words import told_apart

_SAME_M = 1e-5
_LOW, _HIGH, _PIT, _SLEEVE, _STEP = "LP", "HP", "S", "SL", "ST"
_DAYLIGHT, _BLEEDERS = "DL", "BL"


@dataclass(frozen=True, eq=False)
class Told:
    """The signs of a design's plan, and the entries of its key."""

    layout: Layout
    made: Structure
    paper: OnPaper

    @cached_property
    def say(self) -> Saying:
        """The plan's words."""
        return Saying(self.layout)

    def signs(self) -> Iterator[Sign]:
        """Yield the signs, those with least choice of place first."""
        pit = self.layout.sump
        if pit and pit.lead:
            lead = pit.lead
            at = self.paper.point(lead.at(lead.face + 0.85 * (lead.back - lead.face))[:2])
            yield Sign(_SLEEVE, at, away=2.0)
        if pit:
            edge = self.paper.size(pit.outer, 2.0)
            yield Sign(_PIT, self.paper.point(pit.sump.at), away=edge + 0.8, start=edge)
        for drain in self.layout.drains:
            yield from self._outward_signs(drain)
        for drain in self.layout.drains:
            yield from self._drain_signs(drain)
        for letters, step in self._steps:
            spot = step.edge.interpolate(0.5, normalized=True)
            yield Sign(letters, (spot.x, spot.y), away=1.5)

    def _drain_signs(self, drain: DrainLayout) -> Iterator[Sign]:
        house = free_side(self.layout, drain, self.paper)
        for letters, station, _ in self._stations(drain):
            at = self.paper.point(drain.route.at(station))
            yield Sign(letters, at, away_from(house, at))

    def _outward_signs(self, drain: DrainLayout) -> Iterator[Sign]:
        """Yield signs at the ends of pipes to daylight, and one for the bleeders."""
        before = self._initials(drain)
        for out in to_daylight(self.layout, drain):
            at = lead_line(out.lead, self.layout, self.paper).coords[-1]
            yield Sign(f"{before}{_DAYLIGHT}{out.number or ''}", at, out.lead.along, away=1.0)
        if laid := self.layout.bleeders_of(drain):
            at = bleeder_line(named_one(laid), self.paper).coords[0]
            yield Sign(_BLEEDERS, at, away_from(house_of(self.layout, self.paper), at))

    def _initials(self, drain: DrainLayout) -> str:
        """Return the letters before a drain's signs; none where it is the only one."""
        drains = self.layout.drains
        firsts = [told_apart(d, drains)[:1].upper() for d in drains]
        number = next(n for n, d in enumerate(drains) if d is drain)
        if len(set(firsts)) == len(firsts):
            return firsts[number]
        return f"D{number + 1}-"

    def groups(self, refs: Sequence[Ref]) -> tuple[tuple[Entry, ...], ...]:
        """Return the entries of the key, those of one kind together. refs: other drawings."""
        pit = self.layout.sump
        found = (
            self._areas(),
            *(self._drain(drain) for drain in self.layout.drains),
            self._pit(pit) if pit else (),
            self._rest(),
            (Entry(lines=(" ".join([*self.say.notes(), *self._corners(), *_about(refs)]),)),),
        )
        return tuple(group for entries in found if (group := tuple(entries)))

    def _areas(self) -> Iterator[Entry]:
        for area in self.layout.areas:
            name, *lines = self.say.area(area)
            yield Entry(head=name, lines=tuple(lines))

    def _drain(self, drain: DrainLayout) -> Iterator[Entry]:
        if len(self.layout.drains) > 1:
            yield Entry(head=capital(drain.title))
        for letters, station, name in self._stations(drain):
            if not (self._many and name in self.say.corners(drain)):
                yield Entry(letters, name, self.say.invert(drain.invert(station)))
        before = self._initials(drain)
        for out in to_daylight(self.layout, drain):
            words, *lines = self.say.daylight(drain, out)
            # What stands under the drain's title needs no name of the drain before it.
            head = capital(words.split(": ", 1)[-1])
            fall = f"solid pipe falls {show_fall(out.lead.fall, self.say.system)}"
            lines = [fall] if self._many else lines
            letters = f"{before}{_DAYLIGHT}{out.number or ''}"
            yield Entry(letters, head, lines=tuple(lines))
        if self.layout.bleeders_of(drain):
            head, *lines = self.say.bleeders(drain)
            yield Entry(_BLEEDERS, head, lines=tuple(lines))
        level = ", ".join((self._falls(drain), *self.say.level_throughout(drain)))
        first = next(
            d for d in self.layout.drains if self.say.plain_pipe(d) == self.say.plain_pipe(drain)
        )
        kind, *more = self.say.plain_pipe(drain)
        if first is drain:
            yield Entry(head=kind, lines=(", ".join(more), level))
        else:
            yield Entry(lines=(f"Pipe and stone alike; {level}",))

    def _corners(self) -> Iterator[str]:
        """Yield where the inverts of plain corners are told, if the key leaves them out."""
        if self._many:
            yield "Other corners of drains, by their numbers: see the schedules of inverts."

    @cached_property
    def _many(self) -> bool:
        """Whether there are too many places for the key: several drains, or several outlets."""
        drains = self.layout.drains
        return len(drains) > 1 or any(len(drain.lows) > 1 for drain in drains)

    def _falls(self, drain: DrainLayout) -> str:
        """Return the falls of all legs in one line."""
        longest = max(flows(drain), key=lambda flow: flow.end - flow.start)
        words = self.say.fall(drain, longest)
        return f"{words} along the arrows" if drain.rise > 1e-9 else words

    def _pit(self, pit: SumpLayout) -> Iterator[Entry]:
        head, *lines = self.say.pit(pit)
        yield Entry(_PIT, head, lines=tuple(lines))
        if pit.lead:
            head, *lines = self.say.lead(pit)
            yield Entry(_SLEEVE, head, lines=tuple(lines))

    def _rest(self) -> Iterator[Entry]:
        told = set()
        for letters, step in self._steps:
            if letters not in told:
                told.add(letters)
                yield Entry(letters, f"Footing steps {self.say.size(step.rise)}")
        for pier in self.made.piers:
            if pad := self.say.pad_unless_usual(pier.area.area.piers[pier.number]):
                yield Entry(head=f"{pier.name}: pad {pad}")

    @cached_property
    def _steps(self) -> Sequence[tuple[str, Step]]:
        """Every step with its letters: steps of one height share theirs."""
        heights = list(dict.fromkeys(self.say.size(step.rise) for step in self.made.steps))
        one = len(heights) == 1
        return [
            (_STEP if one else f"{_STEP}{heights.index(self.say.size(step.rise)) + 1}", step)
            for step in self.made.steps
        ]

    def _stations(self, drain: DrainLayout) -> Iterator[tuple[str, float, str]]:
        """Yield letters, station and name of each place: at a corner the corner's number."""
        corners = [
            (fitting.station, str(drain.outline_corner(fitting.corner or 0)))
            for fitting in drain.fittings
            if fitting.kind == "bend"
        ]
        if not drain.route.closed:
            ends = ((0.0, 0), (drain.route.length, -1))
            corners += [(station, str(drain.outline_corner(n))) for station, n in ends]
        taken: set[str] = set()
        before = self._initials(drain)
        named = {**_numbered(_HIGH, tuple(highs(drain))), **_numbered(_LOW, drain.lows)}
        for station, name in self.say.stations(drain):
            plain = next((n for s, n in named.items() if abs(s - station) < _SAME_M), _HIGH)
            letters = next((n for s, n in corners if abs(s - station) < _SAME_M), plain)
            letters = before + letters
            while letters in taken:
                letters += "'"
            taken.add(letters)
            yield letters, station, name


def _numbered(letters: str, stations: Sequence[float]) -> dict[float, str]:
    """Return the letters of places of one kind, numbered where there are several."""
    if len(stations) < 2:
        return dict.fromkeys(stations, letters)
    return {station: f"{letters}{n}" for n, station in enumerate(stations, 1)}


def _about(refs: Sequence[Ref]) -> Iterator[str]:
    """Yield how the names of other drawings are read, by one of them."""
    for ref in refs[:1]:
        yield f"{flat_words(ref)}: drawing {ref.number} on sheet {ref.sheet}."
