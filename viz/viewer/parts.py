"""Every part for the page: names, figures, look, and when it is built."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from geometry.label import Label
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from geometry.solids.solid import Solid
from geometry.takeoff.volumes import earthwork_volumes, part_volumes
from geometry.units import System, show_elevation, show_level, show_volume, to_unit
from viz.job import Job
from viz.language.reader import NATIVE, Language
from viz.scene.bodies import HIDING, Body, lifted
from viz.scene.staged import Built, built
from viz.style.materials import Look, look_of
from viz.viewer.ground import PART as UNDISTURBED
from viz.viewer.packing import Head
from viz.viewer.speaking import Spoken, capital, same, spoken
from viz.words import part_words

# Parts that bear their material's name, not one of their own.
_BY_MATERIAL = frozenset(("base", "blinding", "retarder", "insulation", "fill"))
# A size that is the same in every language: figures, units and the sign between two of them.
_FIGURES = re.compile(r"[-\d][\d\s'\"/.,×-]*(?:mil|mm|cm|m|in|ft)?")
_THIN = ("solid", "dashes")


def looks(solids: Sequence[Solid]) -> tuple[list[Look], dict[str, int]]:
    """Return the looks that are used, and the number of each part's."""
    found: list[Look] = []
    numbers = {}
    for solid in solids:
        look = look_of(solid.label)
        if look not in found:
            found.append(look)
        numbers[solid.label.part] = found.index(look)
    return found, numbers


def parts(
    work: Job, solids: Sequence[Solid], numbers: Mapping[str, int], heads: Sequence[Head]
) -> list[dict[str, Any]]:
    """Return the rows of all parts, in the order of the solids."""
    teller = _Teller(work, solids)
    return [
        teller.row(solid, numbers[solid.label.part], head)
        for solid, head in zip(solids, heads, strict=True)
    ]


class _Teller:
    """Tells the rows of one design's parts."""

    def __init__(self, work: Job, solids: Sequence[Solid]) -> None:
        self.layout, self.system = work.layout, work.system
        self.words = part_words(work.layout, work.foundation)
        self.lifts = _lifts(solids)
        self.volumes = _volumes(work.layout, work.foundation)
        names = (self._heading(s.label) for s in solids)
        self.shared = {name for name, count in Counter(names).items() if count > 1}

    def row(self, solid: Solid, look: int, head: Head) -> dict[str, Any]:
        label, when = solid.label, built(self.layout, solid.label)
        low, high = (float(f(solid.vertices[:, 2])) for f in (np.min, np.max))
        shown = look_of(label)
        ground = label.part == UNDISTURBED
        return {
            "id": label.part,
            "role": label.role,
            "look": look,
            "name": self._name(label),
            "full": self._full(label),
            "size": self._size(label),
            "material": spoken(lambda tongue: tongue.material(label.material)),
            "volume": same(_volume(self.volumes.get(label.part), self.system)),
            "level": [show_level(z, self.system) for z in (low, high)],
            "elevation": [same(self._elevation(z)) for z in (low, high)],
            "lift": round(self.lifts.get(label.part, 0.0), 4),
            **_when(when),
            "earth": ground or label.role in HIDING,
            "only_cut": ground,
            "thin": shown.hatch in _THIN and label.role in ("wrap", "retarder"),
            "mesh": {"shape": head.shape, "vertices": head.vertices, "faces": head.faces,
                     "low": head.low, "step": head.step},
        }  # fmt: skip

    def _elevation(self, z: float) -> str:
        return show_elevation(self.layout.design.datum.top_of_footing + z, self.system)

    def _heading(self, label: Label) -> str:
        return self.words.get(label.part, label.name).split("\n")[0]

    def _name(self, label: Label) -> Spoken:
        return spoken(lambda tongue: self._said(label, tongue))

    def _said(self, label: Label, tongue: Language) -> str:
        if label.part == UNDISTURBED:
            return tongue.say("viewer.undisturbed")
        if tongue.code == NATIVE:
            return self._heading(label)
        if label.role in _BY_MATERIAL:
            return tongue.material(label.material)
        return capital(tongue.say(f"role.{label.role.replace(' ', '_')}"))

    def _full(self, label: Label) -> Spoken:
        """Return a name that no other part bears: with what tells it from its like."""
        own = label.part.rpartition("/")[2] if self._heading(label) in self.shared else ""
        mark = re.search(r"P?\d+", own) if own else None
        tail = f" {mark[0]}" if mark else ""
        where = f", {label.area}" if label.area and len(self.layout.areas) > 1 else ""
        return spoken(lambda tongue: self._said(label, tongue) + tail + where)

    def _size(self, label: Label) -> Spoken:
        native = self.words.get(label.part, "\n").partition("\n")[2]

        def said(tongue: Language) -> str:
            if tongue.code == NATIVE:
                return native
            first = native.split(",")[0]
            return tongue.units(first) if _FIGURES.fullmatch(first) else ""

        return spoken(said)


def _when(when: Built) -> dict[str, Any]:
    return {"from": when.begins, "whole": when.finished, "partTop": when.top}


def _lifts(solids: Sequence[Solid]) -> dict[str, float]:
    """Return how far each part rises when all stand apart, metres; the ground stays."""
    shown = [s for s in solids if s.label.role not in HIDING and s.label.part != UNDISTURBED]
    before = {s.label.part: float(s.vertices[:, 2].min()) for s in shown}
    raised = lifted(tuple(Body(s.label, s.vertices, s.faces) for s in shown))
    return {
        body.label.part: float(body.vertices[:, 2].min()) - before[body.label.part]
        for body in raised
    }


def _volumes(layout: Layout, foundation: Foundation) -> dict[str, float]:
    found = (*part_volumes(layout), *earthwork_volumes(foundation))
    return {part.label.part: part.volume for part in found}


def _volume(cubic_metres: float | None, system: System) -> str:
    if cubic_metres is None:
        return ""
    shown = show_volume(cubic_metres, system)
    if system == "metric" or "yd" not in shown:
        return shown
    return f"{shown} ({to_unit(cubic_metres, 'm**3', 'ft**3'):,.1f} ft³)"
