"""One drain in numbers, as the report carries it: way, levels, rules, slope, strength, cleaning."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_stone import developed_width
from geometry.layout.inverts import invert_rows, outlet_words
from geometry.layout.lay import Layout
from geometry.water.cleanouts import Cleaning, cleaning
from geometry.water.height_figures import HeightFigures, SlopeFigures, height_figures, slope_figures
from geometry.water.strength import DrainStrength, pipe_strength


class _Row(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Invert(_Row):
    """One invert: along the route, against the project's TOF, as elevation, as rod reading."""

    names: tuple[str, ...]
    along_m: float
    level_m: float
    elevation_m: float
    rod_reading_m: float | None


class BleederFigures(_Row):
    """The pipes through the footing that empty a drain."""

    pipe: str
    count: int
    invert_m: float
    length_m: float


class DrainFigures(_Row):
    """One drain in numbers."""

    name: str
    area: str
    line: Literal["outside", "inside"]
    outlets: tuple[str, ...]
    pipe: str
    length_m: float
    fall_m_per_m: float
    longest_run_m: float
    outlet_invert_m: float
    high_invert_m: float
    holes: int
    wrap_developed_width_m: float
    inverts: tuple[Invert, ...]
    bleeders: BleederFigures | None
    heights: HeightFigures | None
    slope: SlopeFigures | None
    strength: DrainStrength | None
    cleanouts: Cleaning | None


def drains_figures(layout: Layout) -> tuple[DrainFigures, ...]:
    """Return every drain's figures, the one in view first."""
    return tuple(_figures(view, view.drain) for view in layout.views() if view.drain)


def _figures(view: Layout, drain: DrainLayout) -> DrainFigures:
    return DrainFigures(
        name=drain.title,
        area=drain.area.name,
        line=drain.drain.line,
        outlets=tuple(outlet_words(view, drain, n) for n in range(len(drain.lows))),
        pipe=drain.pipe.key,
        length_m=drain.run_length,
        fall_m_per_m=drain.drain.fall,
        longest_run_m=drain.longest,
        outlet_invert_m=drain.outlet_invert,
        high_invert_m=drain.high_invert,
        holes=drain.hole_count,
        wrap_developed_width_m=developed_width(drain),
        inverts=_inverts(view, drain),
        bleeders=_bleeders(view, drain),
        heights=height_figures(view),
        slope=slope_figures(view),
        strength=pipe_strength(view),
        cleanouts=cleaning(view),
    )


def _inverts(view: Layout, drain: DrainLayout) -> tuple[Invert, ...]:
    return tuple(
        Invert(
            names=row.names,
            along_m=row.along,
            level_m=row.level,
            elevation_m=row.elevation,
            rod_reading_m=row.rod,
        )
        for row in invert_rows(view, drain)
    )


def _bleeders(view: Layout, drain: DrainLayout) -> BleederFigures | None:
    laid = view.bleeders_of(drain)
    if not laid:
        return None
    return BleederFigures(
        pipe=laid[0].pipe.key,
        count=len(laid),
        invert_m=bleeder_invert(drain),
        length_m=laid[0].length,
    )
