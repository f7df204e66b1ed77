"""What a finding is about: the part of the house it belongs to, by its id."""

from typing import Literal

Subject = Literal["footing", "wall", "floor", "drain", "pit", "ground", "water", "whole"]

SUBJECTS: dict[Subject, str] = {
    "footing": "Footings, pads and piers",
    "wall": "Walls and their fill",
    "floor": "Floor",
    "drain": "Drain, outlet and wrap",
    "pit": "Sump pit and pump",
    "ground": "Ground, hole and grade",
    "water": "Water",
    "whole": "The whole",
}
"""The subjects in the order they are told, with their names."""

# How the ids of each subject begin; the longest beginning counts.
_BEGINS: dict[str, Subject] = {
    "footing-": "footing", "bar-cover": "footing", "pads-": "footing", "pier-": "footing",
    "wall-": "wall", "backfill-": "wall",
    "foam-": "floor", "floor-": "floor", "slab-": "floor", "retarder-": "floor",
    "tubing": "floor", "energy-": "floor", "energy-wall": "wall",
    "radon-": "floor", "board-": "floor", "sand-": "floor", "ties-": "floor",
    "drain-": "drain", "daylight-": "drain", "fabric-": "drain", "holes-": "drain",
    "pipe-": "drain", "roof-": "drain", "stone-": "drain",
    "pit-": "pit", "pump-": "pit",
    "dig-": "ground", "grade-": "ground", "grading-": "ground", "termite-": "ground",
    "foam-termites": "ground", "daylight-grade": "ground", "subgrade-": "ground",
    "floor-floats": "water", "pit-below-water-table": "water", "water-": "water",
    "rules-not-given": "whole",
}  # fmt: skip


def subject_of(finding_id: str) -> Subject:
    """Return the subject of a finding by its id; the whole for one that belongs to no part."""
    fitting = [begin for begin in _BEGINS if finding_id.startswith(begin)]
    return _BEGINS[max(fitting, key=len)] if fitting else "whole"
