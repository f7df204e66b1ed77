"""Floor build-ups that are built often, as ordered layers with the tie that places them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from geometry.designfile import edited
from geometry.faults.places import inside
from geometry.faults.text import raw_design
from geometry.planfile.read import system_of
from geometry.presets.writing import inline, listed, spaced
from geometry.sources import PRACTICE, Source
from geometry.units import System

_ACI = Source("ACI 302.1R", clause="sheet right under the slab", sure="memory")


@dataclass(frozen=True)
class Course:
    """One layer as the file writes it; material and thickness in feet-inches, then metric."""

    name: str
    role: str
    feet: tuple[str, str]
    metric: tuple[str, str]

    def row(self, system: System) -> dict[str, str]:
        """Return the layer as the file has it."""
        material, thickness = self.metric if system == "metric" else self.feet
        return {
            "name": self.name, "material": material, "thickness": thickness, "role": self.role
        }  # fmt: skip


@dataclass(frozen=True)
class FloorPreset:
    """A build-up from the bottom up, and the tie that places it.

    about: one sentence for who builds it so and why. joints, tubing: spacing of the slab's joints
    and of heating tubes, in feet-inches, then metric; none where the file shall not say.
    """

    key: str
    name: str
    about: str
    courses: tuple[Course, ...]
    tie: str
    source: Source = PRACTICE
    joints: tuple[str, str] | None = None
    tubing: tuple[str, str] | None = None


def _stone(inches: str = "6 in", millimetres: str = "200 mm") -> Course:
    return Course("stone", "base", ("stone-57", inches), ("gravel-16-32", millimetres))


def _foam(inches: str, millimetres: str, name: str = "foam") -> Course:
    return Course(name, "insulation", ("xps-iv", inches), ("xps-300", millimetres))


def _slab(inches: str, millimetres: str, material: str = "concrete") -> Course:
    return Course("slab", "slab", (material, inches), ("concrete-c25", millimetres))


_SAND = Course("sand", "blinding", ("sand-c33", "1/2 in"), ("sand-0-4", "20 mm"))
_SHEET = Course("retarder", "retarder", ("poly-10mil", "10 mil"), ("pe-0.2mm", "0.2 mm"))
_TOUGH = Course("retarder", "retarder", ("e1745-a-15mil", "15 mil"), ("pe-0.2mm", "0.2 mm"))

FLOORS: Mapping[str, FloorPreset] = {
    floor.key: floor
    for floor in (
        FloorPreset(
            "usual", "Foam over retarder on stone",
            "Most heated basements: the foam shields the sheet under it, and both run over the "
            "footing to the wall.",
            (_stone(), _SHEET, _foam("2 in", "120 mm"), _slab("4 in", "120 mm")),
            "stone top at TOF",
        ),
        FloorPreset(
            "sanded", "Foam over retarder on sand and stone",
            "For coarse or sharp stone: a thin bed of sand lets boards lie flat and spares the "
            "sheet.",
            (_stone(), _SAND, _SHEET, _foam("2 in", "120 mm"), _slab("4 in", "120 mm")),
            "sand top at TOF",
        ),
        FloorPreset(
            "sheet over foam", "Retarder over foam, right under the slab",
            "For floors that take wood or tile: no water is held between sheet and slab, and the "
            "slab needs more care in curing.",
            (_stone(), _foam("2 in", "120 mm"), _TOUGH, _slab("4 in", "120 mm")),
            "stone top at TOF",
            _ACI,
        ),
        FloorPreset(
            "radiant", "Heated slab on thick foam",
            "Heating tubes in the slab: twice the foam, so that the warmth goes up and not down.",
            (_stone(), _SHEET, _foam("4 in", "160 mm"), _slab("5 in", "140 mm")),
            "stone top at TOF",
            tubing=("9 in", "200 mm"),
        ),
        FloorPreset(
            "no foam", "Garage or workshop, no foam",
            "Unheated floors under wheels: a thicker slab on stone, the sheet against damp, joints "
            "cut close.",
            (_stone(), _SHEET, _slab("5 in", "150 mm", "concrete-3500")),
            "stone top at TOF",
            joints=("10 ft", "3 m"),
        ),
        FloorPreset(
            "two courses", "Two courses of boards, joints staggered",
            "For cold places: no joint of the upper boards lies over one of the lower, so no crack "
            "runs through.",
            (
                _stone(), _SHEET, _foam("2 in", "60 mm", "lower foam"),
                _foam("2 in", "60 mm", "upper foam"), _slab("4 in", "120 mm"),
            ),
            "stone top at TOF",
        ),
    )
}  # fmt: skip


def with_floor(text: str, key: str) -> str:
    """Return the design's text with the house's floor built up so, comments and all else kept.

    Areas with layers of their own keep theirs. Raises DesignError where the text cannot be
    changed, KeyError for an unknown key.
    """
    floor = FLOORS[key]
    raw = raw_design(text)
    system = system_of(raw)
    place = 1 if system == "metric" else 0
    before = text
    text = edited(
        text, ("floor", "layer"), listed([course.row(system) for course in floor.courses])
    )
    text = edited(text, ("floor", "tie"), floor.tie)
    if floor.joints:
        text = edited(text, ("floor", "joints"), floor.joints[place])
    changed = _with_tubing(text, inside(raw, ("floor", "tubing")), floor, place)
    return spaced(before, changed)


def _with_tubing(text: str, before: Any, floor: FloorPreset, place: int) -> str:
    path = ("floor", "tubing")
    if floor.tubing is None:
        return text if before is None else edited(text, path, None)
    if isinstance(before, dict):
        return edited(text, (*path, "spacing"), floor.tubing[place])
    return edited(text, path, inline({"spacing": floor.tubing[place]}))
