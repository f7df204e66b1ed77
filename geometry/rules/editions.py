"""Editions of the residential code where they differ on the sheet under a slab."""

from dataclasses import dataclass

from geometry.materials.kinds import E1745Class
from geometry.sources import Source
from geometry.units import INCH, MIL


@dataclass(frozen=True)
class SheetRule:
    """What is asked of the vapor retarder: thickness and lap in metres, a class where one is."""

    least_m: float
    e1745_class: E1745Class | None
    lap_m: float
    words: str
    source: Source

    def met(self, thickness_m: float, e1745_class: E1745Class | None) -> bool:
        """Whether a sheet is thick enough and of the class."""
        return thickness_m >= self.least_m * (1 - 1e-6) and (
            self.e1745_class is None or e1745_class == self.e1745_class
        )


@dataclass(frozen=True)
class Edition:
    """An edition by the key that `[rules] sets` names it by."""

    key: str
    title: str
    sheet: SheetRule


def _six_mil(source: Source) -> SheetRule:
    return SheetRule(6 * MIL, None, 6 * INCH, "6 mil polyethylene or its like", source)


_NEWS = "as told by a builders' association in 2024"

EDITIONS: tuple[Edition, ...] = (
    Edition("irc-2012", "IRC 2012",
            _six_mil(Source("IRC", "2012", "R506.2.3"))),
    Edition("irc-2018", "IRC 2018",
            _six_mil(Source("IRC", "2018", "R506.2.3", sure="memory"))),
    Edition("irc-2021", "IRC 2021",
            SheetRule(10 * MIL, "A", 6 * INCH, "10 mil, ASTM E1745 Class A",
                      Source("IRC", "2021", f"R506.2.3, {_NEWS}"))),
    Edition("irc-2024", "IRC 2024",
            _six_mil(Source("IRC", "2024", f"R506.3.3, {_NEWS}"))),
)  # fmt: skip


def editions(codes: frozenset[str]) -> tuple[Edition, ...]:
    """Return the editions a job is held to, by the names it gives.

    All of them where it names no code at all, or the code without an edition; none where it names
    others alone.
    """
    named = tuple(one for one in EDITIONS if one.key in codes)
    return named or (EDITIONS if not codes or "irc" in codes else ())
