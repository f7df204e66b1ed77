"""A language for one layout: its figures printed in the design's own units."""

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.site.records import Figure, Stage
from geometry.sources import PRACTICE, Source
from geometry.units import (
    System,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_thickness,
)
from viz.language.reader import Language

# The title of what is practice, and known from memory alone.
_PRACTICE = "common practice"


@dataclass(frozen=True)
class Printed:
    """A language and the layout it speaks of."""

    layout: Layout
    language: Language

    @property
    def system(self) -> System:
        """The units lengths are printed in."""
        return self.layout.design.project.units

    def say(self, key: str, **figures: str) -> str:
        """Return the words of a key."""
        return self.language.say(key, **figures)

    def thick(self, metres: float) -> str:
        """Return a thickness."""
        return self.language.units(show_thickness(metres, self.system))

    def length(self, metres: float) -> str:
        """Return a length."""
        return self.language.units(show_length(metres, self.system))

    def level(self, metres: float) -> str:
        """Return a level against an area's TOF."""
        return show_level(metres, self.system)

    def elevation(self, metres: float) -> str:
        """Return an elevation."""
        return self.language.units(show_elevation(metres, self.system))

    def fall(self, fall: float) -> str:
        """Return a fall, or the word for level."""
        if fall == 0:
            return self.say("card.level")
        return self.language.units(show_fall(fall, self.system))

    def figures(self, figures: Sequence[Figure]) -> dict[str, str]:
        """Return the figures of a sentence by the names of their places."""
        return {figure.name: self._figure(figure) for figure in figures}

    def _figure(self, figure: Figure) -> str:
        if figure.kind == "count":
            return f"{figure.value:g}"
        if figure.kind == "share":
            return f"{figure.value * 100:.3g} %"
        return self.fall(figure.value) if figure.kind == "fall" else self.length(figure.value)

    def source(self, source: Source) -> str:
        """Return where a sentence is from and how sure that is, in brackets."""
        if source.title in (PRACTICE.title, _PRACTICE):
            said = self.say("card.practice")
        else:
            said = ", ".join(filter(None, (source.title, source.edition, source.clause)))
        if source.sure == "memory":
            said = self.say("card.from_memory", source=said)
        if source.sure == "second-hand":
            said = self.say("card.second_hand", source=said)
        return self.say("card.source", source=said)

    def drain(self, stage: Stage) -> DrainLayout | None:
        """Return the drain a stage belongs to."""
        return next((d for d in self.layout.drains if d.key == stage.drain), None)

    def area(self, stage: Stage) -> AreaLayout:
        """Return the area whose top of footing a stage is measured from."""
        drain = self.drain(stage)
        return drain.area if drain else self.layout.area(stage.areas[0])

    def drain_title(self, drain: DrainLayout) -> str:
        """Return what a drain is called."""
        line = self.say(f"line.{drain.drain.line}")
        return drain.drain.name or self.say("card.drain_of", line=line, area=drain.area.name)
