"""Pipework to buy: sticks and their cuts, fittings by angle, cleanouts, sleeve, glue."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, degrees

from geometry.layout.bleeders import Bleeder
from geometry.layout.bodies import Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.leads import LeadLayout
from geometry.layout.pipework import slant
from geometry.materials.kinds import Pipe
from geometry.project import Design
from geometry.takeoff.row import Cut, CutList, Group, Row
from geometry.takeoff.sticks import cut_runs
from geometry.takeoff.usual import factor

# Elbows are sold at these angles; a glued joint gives this much either way (common practice).
ELBOWS_DEG = (22.5, 45.0, 90.0)
PLAY_DEG = 2.0
_JOINTS = {
    "elbow": 2, "coupling": 2, "tee": 3, "cap": 1, "cleanout tee": 3, "cleanout plug": 1,
    "guard": 0,
}  # fmt: skip

Made = tuple[Row, CutList | None]


@dataclass(frozen=True, eq=False)
class Outlet:
    """A solid pipe from a tee: where it leads, and its length from the tee's leg on, metres."""

    name: str
    lead: LeadLayout
    length_m: float


@dataclass(frozen=True, eq=False)
class Drained:
    """One drain with what hangs on it: its cleanouts' risers, its solid pipes, its bleeders."""

    drain: DrainLayout
    risers: Sequence[Prism]
    outlets: Sequence[Outlet]
    bleeders: Sequence[Bleeder]

    def perforated(self) -> list[Cut]:
        """Return the perforated runs from fitting to fitting, along the fall."""
        lengths = (sum(slant(self.drain, s.start, s.end) for s in run) for run in self.drain.sticks)
        return [Cut(f"run {n}", length) for n, length in enumerate(lengths, 1)]

    def solid(self) -> list[tuple[Pipe, Cut]]:
        """Return the solid runs: risers, the pipes from the tees, the bleeders."""
        drain = self.drain
        found = [
            (drain.pipe, Cut(f"cleanout {corner}", riser.top - riser.bottom))
            for corner, riser in zip(drain.drain.cleanouts, self.risers, strict=True)
        ]
        found += [(o.lead.pipe, Cut(o.name, o.length_m)) for o in self.outlets]
        found += [(b.pipe, Cut(f"bleeder {n}", b.length)) for n, b in enumerate(self.bleeders, 1)]
        return found

    def sleeves(self) -> list[tuple[Pipe, Cut]]:
        """Return the sleeve the solid pipe passes through."""
        return [
            (lead.sleeve, Cut("through the footing", (lead.back - lead.face) * lead.stretch))
            for lead in (outlet.lead for outlet in self.outlets)
            if lead.sleeve
        ]

    def fittings(self) -> Counter[str]:
        """Return how many of each fitting, couplings apart, by what it is called at the counter."""
        drain = self.drain
        counts: Counter[str] = Counter()
        for fitting in drain.fittings:
            bend = fitting.kind == "bend"
            turn = degrees(drain.turn(fitting.corner or 0)) if bend else 0.0
            counts[elbow(turn) if bend else fitting.kind.capitalize()] += 1
        counts["Cap"] += sum(drain.capped)
        for item in ("Cleanout tee", "Cleanout plug"):
            counts[item] += len(drain.drain.cleanouts)
        counts["Guard for an open end"] += sum(o.guard for o in drain.drain.daylight)
        return counts


def pipe_rows(design: Design, drains: Sequence[Drained]) -> Iterator[Made]:
    """Yield what all drains take; pipe of one kind is cut from the same sticks."""
    perforated = [(d.drain.pipe, run) for d in drains for run in d.perforated()]
    solid = [run for d in drains for run in d.solid()]
    sticks = [
        *_sticks(design, "Perforated pipe", perforated),
        *_sticks(design, "Solid pipe", solid),
    ]
    yield from sticks
    yield from _sticks(design, "Sleeve", [run for d in drains for run in d.sleeves()])
    for pipe in dict.fromkeys(d.drain.pipe for d in drains):
        counts = sum((d.fittings() for d in drains if d.drain.pipe is pipe), Counter[str]())
        counts["Coupling"] += sum(c.joints for _, c in sticks if c.material == pipe.key)
        for item, count in counts.items():
            if count:
                yield piece_row("drain", item, pipe.key, count), None
        if not pipe.corrugated:
            yield _glue(design, pipe, counts), None


def _sticks(
    design: Design, item: str, runs: Sequence[tuple[Pipe, Cut]]
) -> Iterator[tuple[Row, CutList]]:
    for pipe in dict.fromkeys(pipe for pipe, _ in runs):
        coil = pipe.corrugated
        length = factor(design, "pipe.coil" if coil else "pipe.stick")
        cutting = cut_runs([cut for kind, cut in runs if kind is pipe], length.value)
        count = len(cutting.stocks)
        row = Row(
            "drain", item, pipe.key, "", cutting.length_m, "m", (length,), count * length.value,
            "coil" if coil else "stick", count,
        )  # fmt: skip
        yield row, CutList(item, pipe.key, length.value, cutting.stocks, cutting.joints)


def piece_row(group: Group, item: str, material: str, count: int) -> Row:
    """Return the row of things sold by the piece."""
    return Row(group, item, material, "", count, "pieces", (), count, "piece", count)


def elbow(turn_deg: float) -> str:
    """Return what an elbow is called: by the nearest angle that is sold, or special."""
    angle = min(ELBOWS_DEG, key=lambda sold: abs(sold - turn_deg))
    if abs(angle - turn_deg) <= PLAY_DEG:
        return f"Elbow {angle:g}°"
    return f"Elbow, special, {turn_deg:.0f}°"


def _glue(design: Design, pipe: Pipe, counts: Counter[str]) -> Row:
    to_can = factor(design, "pipe.joints")
    joints = sum(
        count * next((j for word, j in _JOINTS.items() if item.lower().startswith(word)), 2)
        for item, count in counts.items()
    )
    return Row(
        "drain", "Glue", pipe.key, "", joints, "pieces", (to_can,), joints, "can",
        ceil(joints / to_can.value), note="joints at fittings; primer as the maker asks",
    )  # fmt: skip
