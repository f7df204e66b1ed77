"""What the plan says of areas, drain, pit and piers."""

from collections import Counter
from collections.abc import Iterator
from functools import cached_property

from geometry.layout.areas import AreaLayout
from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M
from geometry.layout.footings import pier_name
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.parts.pier import Pier
from geometry.units import System, show_elevation, show_fall, show_length, show_level
from viz.figures.drainwords import ToDaylight, capital, ends_open, highs, tee_words
from viz.figures.plan.pipes import Flow
from viz.words import size, told_apart

NORTH = "N"
# More sizes of pads than this are told in the notes.
_FEW = 2
_SAME = 10 * SAME_STATION_M


class Saying:
    """Words in one design's system, with its survey datum."""

    def __init__(self, layout: Layout) -> None:
        """Keep what every word needs."""
        self.layout = layout
        self.system: System = layout.design.project.units
        self._datum = layout.design.datum.top_of_footing

    def level(self, level: float) -> str:
        """Return a level against the project's top of footing."""
        return show_level(level, self.system)

    def elevation(self, level: float) -> str:
        """Return a level as project elevation."""
        return f"El. {show_elevation(self._datum + level, self.system)}"

    def both(self, level: float) -> str:
        """Return a level both ways."""
        return f"{self.level(level)} ({self.elevation(level)})"

    def size(self, metres: float) -> str:
        """Return a size; whole inches up to three feet are said in inches, as the trade does."""
        return size(metres, self.system)

    def area_narrow(self, area: AreaLayout) -> tuple[str, ...]:
        """Return an area's block with every elevation on a line of its own."""
        rows = [row.replace(" (", "\n(") for row in self.area(area)]
        return tuple(line for row in rows for line in row.split("\n"))

    def area(self, area: AreaLayout) -> tuple[str, ...]:
        """Return an area's block."""
        slab = next((x for x in area.floor.layers if x.role == "slab"), area.floor.layers[-1])
        named = "Slab" if slab.role == "slab" else slab.name.capitalize()
        return (
            area.name.upper(),
            f"TOF {self.both(area.tof)}",
            f"Finished floor {self.both(area.finished_floor)}",
            f"Subgrade {self.both(area.subgrade)}",
            f"{named} {self.size(slab.thickness)}, wall {self.size(area.wall.thickness)}",
            f"Footing {self.size(area.footing.width)} × {self.size(area.footing.thickness)}",
        )

    def invert(self, level: float) -> tuple[str, str]:
        """Return an invert's two lines."""
        return f"INV {self.level(level)}", self.elevation(level)

    def pad(self, pier: Pier) -> str:
        """Return a pad's size."""
        sizes = (pier.width, pier.pad_depth, pier.thickness)
        return " × ".join(map(self.size, sizes))

    @cached_property
    def _pads(self) -> list[tuple[str, str]]:
        """Every pier's name and the size of its pad."""
        rows = [(a, n, p) for a in self.layout.areas for n, p in enumerate(a.area.piers)]
        return [(pier_name(area, number), self.pad(pier)) for area, number, pier in rows]

    @cached_property
    def _kinds(self) -> list[str]:
        """The sizes of pads, the commonest first."""
        return [size for size, _ in Counter(size for _, size in self._pads).most_common()]

    def pad_unless_usual(self, pier: Pier) -> str:
        """Return a pad's size; empty where the notes tell it."""
        size = self.pad(pier)
        return size if len(self._kinds) <= _FEW and size != self._kinds[0] else ""

    def _about_pads(self) -> Iterator[str]:
        if len(self._kinds) > _FEW:
            yield f"Pier pads: {', '.join(f'{name} {size}' for name, size in self._pads)}."
        elif self._kinds:
            more = " unless noted" if len(self._kinds) > 1 else ""
            yield f"Pier pads {self._kinds[0]}{more}."

    def pipe(self, drain: DrainLayout) -> tuple[str, ...]:
        """Return what the drain's pipe is, under its title where there are several drains."""
        titled = (capital(drain.title),) if len(self.layout.drains) > 1 else ()
        return (*titled, *self.plain_pipe(drain))

    def plain_pipe(self, drain: DrainLayout) -> tuple[str, ...]:
        """Return what the drain's pipe is, where it lies, and its stone."""
        name = drain.pipe.name.split(", ", 1)[-1]
        wide = self.size(drain.drain.stone.width)
        return (
            f"Perforated {name}",
            f"middle {self.size(drain.drain.offset)} off footing face",
            f"in washed stone {wide} wide, fabric round it",
        )

    def of(self, drain: DrainLayout, name: str) -> str:
        """Return a place's name, with its drain's where there are several."""
        short = told_apart(drain, self.layout.drains)
        return f"{capital(short)}: {name[0].lower()}{name[1:]}" if short else name

    def level_throughout(self, drain: DrainLayout) -> tuple[str, ...]:
        """Return the one invert of a level pipe, where its corners do not tell it."""
        if self._tells_corners(drain):
            return ()
        level, elevation = self.invert(drain.outlet_invert)
        return f"{level} throughout", elevation

    def _tells_corners(self, drain: DrainLayout) -> bool:
        """Whether every corner has its invert: of several drains one that lies level has one."""
        return len(self.layout.drains) < 2 or drain.rise > 1e-9

    def daylight(self, drain: DrainLayout, out: ToDaylight) -> tuple[str, ...]:
        """Return the words of a solid pipe that leads to open air."""
        run, pipe = out.run, out.lead.pipe.name.split(", ", 1)[-1]
        reach = show_length(run.reach_m, self.system, 4)
        ends = f"open end {reach} from the drain, INV {self.level(run.end_invert_m)}"
        if run.end_at_m is None:
            ends = f"does not come out within {reach}"
        return (
            self.of(drain, f"To {out.name}{'' if run.at_once else ', see outlet'}"),
            f"solid {pipe}, falls {show_fall(out.lead.fall, self.system)}",
            ends,
        )

    def bleeders(self, drain: DrainLayout) -> tuple[str, ...]:
        """Return count, pipe, spacing and invert of the pipes through the footing."""
        laid = self.layout.bleeders_of(drain)
        pipe, apart = laid[0].pipe.name.split(", ", 1)[-1], drain.drain.bleeders.spacing
        many = f"{len(laid)} bleeders" if len(laid) > 1 else "1 bleeder"
        return (
            f"{many} through the footing",
            f"{pipe}, at most {self.size(apart)} apart",
            f"INV {self.both(bleeder_invert(drain))}",
        )

    def fall(self, drain: DrainLayout, flow: Flow) -> str:
        """Return a leg's fall."""
        if drain.rise <= 1e-9:
            return "laid level"
        fall = abs(drain.invert(flow.start + 1e-6) - drain.invert(flow.end - 1e-6))
        return f"falls {show_fall(fall / (flow.end - flow.start), self.system)}"

    def pit(self, pit: SumpLayout) -> tuple[str, ...]:
        """Return the pit's words."""
        words = [f"Sump {self.size(pit.sump.diameter)} inside", f"bottom {self.both(pit.floor)}"]
        if pit.lead:
            words.append(f"pipe in, INV {self.level(pit.lead.end_invert)}")
        return tuple(words)

    def lead(self, pit: SumpLayout) -> tuple[str, ...]:
        """Return the words of the sleeve and the pipe through it."""
        if pit.lead is None:
            return ()
        fall = show_fall(pit.lead.fall, self.system)
        if pit.lead.sleeve is None:
            return (f"Solid pipe falls {fall}",)
        sleeve = pit.lead.sleeve.name.split(", ", 1)[-1]
        return (f"Sleeve {sleeve}", f"solid pipe falls {fall}")

    def stations(self, drain: DrainLayout) -> Iterator[tuple[float, str]]:
        """Yield the stations of the drain that carry an invert, each with its name."""
        cleanouts = [drain.corner_station(c) for c in drain.drain.cleanouts]
        found: list[tuple[float, list[str]]] = []
        for station, name in self._named(drain):
            same = next((n for s, n in found if abs(s - station) < _SAME), None)
            if same is None:
                found.append((station, [name]))
            else:
                same.append(name[0].lower() + name[1:])
        for station, names in found:
            if any(abs(station - c) < _SAME for c in cleanouts):
                names.append("CO")
            yield station, ", ".join(names)

    def corners(self, drain: DrainLayout) -> frozenset[str]:
        """Return the names of corners at which there is nothing but a bend."""
        bends = (f for f in drain.fittings if f.kind == "bend")
        return frozenset(f"Corner {drain.outline_corner(f.corner or 0)}" for f in bends)

    def _named(self, drain: DrainLayout) -> Iterator[tuple[float, str]]:
        yield from self._lows(drain)
        for station in highs(drain):
            yield station, "High point"
        if not self._tells_corners(drain):
            for corner in drain.drain.cleanouts:
                yield drain.corner_station(corner), f"Corner {corner}"
            return
        for fitting in drain.fittings:
            if fitting.kind == "bend":
                yield fitting.station, f"Corner {drain.outline_corner(fitting.corner or 0)}"
        if not drain.route.closed:
            for number, station in ((0, 0.0), (-1, drain.route.length)):
                over = ", over lower stone" if ends_open(drain, station) else ""
                yield station, f"End at corner {drain.outline_corner(number)}{over}"

    def _lows(self, drain: DrainLayout) -> Iterator[tuple[float, str]]:
        """Yield the low points; of a drain that bleeders empty everywhere none."""
        if drain.drain.outlet == "bleeders" and not self._tells_corners(drain):
            return
        for low in drain.lows:
            out = tee_words(self.layout, drain, low)
            plain = out == "the pit" and len(drain.lows) == 1
            tee = ", tee" if plain else f", tee to {out}"
            yield low, f"Low point{tee}" if out else "Low point"

    def notes(self) -> tuple[str, ...]:
        """Return the plan's own notes, each a sentence."""
        found = [
            "Dimensions to outside face of foundation wall.",
            "Two-dot chain line: foot of excavation.",
            f"Levels from project top of footing (TOF), {self.elevation(0.0)}.",
        ]
        if self.layout.drains:
            found.append("INV: inside bottom of pipe.")
        cleaned = [d for d in self.layout.drains if d.drain.cleanouts]
        if cleaned:
            to = dict.fromkeys("finished floor" if d.inside else "grade" for d in cleaned)
            found.append(f"CO: cleanout to {' or '.join(to)}.")
        vent = self.layout.vent
        if vent:
            found.append(
                "Ring round a dot: vent for soil gas, "
                f"{vent.pipe.name.split(', ', 1)[-1]}, from the stone up through the slab; capped "
                "until it goes on through the roof."
            )
        return (*found, *self._about_pads())
