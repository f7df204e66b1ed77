"""One table of materials: every picture, on paper and in three dimensions, reads it.

Hatches follow common drafting practice in the spirit of ISO 128-50; tones are our own choice,
told apart by their lightness as well as their hue.
"""

from dataclasses import dataclass, replace
from typing import Literal

from geometry.label import Label, Role
from geometry.materials.catalogue import find
from geometry.materials.kinds import Kind
from viz.style.lines import CUT, SEEN

HatchName = Literal[
    "stone", "sand", "solid", "cross", "concrete", "dashes", "blank",
    "earth", "backfill", "topsoil", "diagonal", "steel", "water",
]  # fmt: skip


@dataclass(frozen=True)
class Look:
    """How one material is shown.

    pattern: the name of its pattern in words. fill: tint on paper. solid: colour in 3D.
    ink: colour of the hatch. line_mm: weight of its cut outline. thin_mm, dash: the heavy line
    that stands for it where it is too thin to outline.
    """

    pattern: str
    fill: str
    solid: str
    ink: str
    hatch: HatchName
    line_mm: float = 0.35
    thin_mm: float = 0.5
    dash: tuple[float, ...] = ()


_KINDS: dict[str, Look] = {
    "concrete": Look("dots and small triangles", "#e8e3da", "#bab2a6", "#5e584f", "concrete", CUT),
    "stone": Look("packed ovals", "#dde5ea", "#8d9fad", "#4d5f6c", "stone"),
    "sand": Look("fine dots", "#f6e9be", "#dcc27c", "#7d682a", "sand"),
    "sheet": Look("heavy black line", "#2a2a2c", "#2a2a2c", "#2a2a2c", "solid", CUT, 1.00),
    "board": Look("crossed diagonals", "#fcf9ee", "#f1ead3", "#6a6553", "cross"),
    "fabric": Look(
        "heavy dashed line", "#2f5a3d", "#2f5a3d", "#2f5a3d", "dashes", SEEN, 0.70, (2.4, 1.3)
    ),
    "pipe": Look("blank", "#fbfaf5", "#ebe9e0", "#3c3c3c", "blank"),
    "soil": Look("bundles of three strokes", "#e2d0ba", "#8b6b4b", "#634a31", "earth", SEEN),
    "plastic": Look("close diagonals", "#e4e7e8", "#7c868b", "#454d51", "diagonal"),
    "bar": Look("solid", "#4a4f54", "#5c6268", "#4a4f54", "steel"),
    "water": Look("level strokes", "#d9e9f4", "#4682b0", "#2f628c", "water", SEEN),
}

_KIND_OF_ROLE: dict[Role, Kind] = {
    "footing": "concrete", "wall": "concrete", "pad": "concrete", "column": "concrete",
    "slab": "concrete", "base": "stone", "blinding": "sand", "retarder": "sheet",
    "insulation": "board", "edge board": "board", "fill": "stone", "pipe": "pipe",
    "fitting": "pipe", "cleanout": "pipe", "lead": "pipe", "sleeve": "pipe", "bleeder": "pipe",
    "drain stone": "stone", "pit stone": "stone", "wall stone": "stone", "wrap": "fabric",
    "basin": "plastic", "lid": "plastic", "vent": "pipe", "backfill": "soil", "grading": "soil",
    "excavation": "soil",
}  # fmt: skip

# Moved soil must be told from undisturbed ground, whatever soil it is.
_MOVED_SOIL: dict[str, dict[str, str]] = {
    "backfill": {
        "pattern": "sparse strokes", "fill": "#f0e5d6", "solid": "#ab8963", "hatch": "backfill"
    },
    "grading": {
        "pattern": "upright strokes", "fill": "#e3dcc6", "solid": "#71643f", "hatch": "topsoil"
    },
}  # fmt: skip

# Pours made on different days differ a little in three dimensions, so their joints show.
_CONCRETE_SOLID: dict[str, str] = {
    "footing": "#a89f92", "pad": "#a89f92", "column": "#b2a99c", "slab": "#c8c1b6"
}  # fmt: skip


def look(role: Role, material_kind: str | None = None) -> Look:
    """Return how a part is shown; a kind not in the table falls back on the role's usual kind."""
    kind = material_kind if material_kind in _KINDS else _KIND_OF_ROLE[role]
    found = _KINDS[kind]
    if kind == "soil" and role in _MOVED_SOIL:
        return replace(found, **_MOVED_SOIL[role])  # type: ignore[arg-type]
    if kind == "concrete" and role in _CONCRETE_SOLID:
        return replace(found, solid=_CONCRETE_SOLID[role])
    return found


def look_of(label: Label) -> Look:
    """Return how a labelled part is shown, by the kind of its material in the catalogue."""
    row = find(label.material)
    return look(label.role, row.kind if row else None)


def kinds() -> tuple[tuple[str, Look], ...]:
    """Return every kind with its look, in the table's order."""
    return tuple(_KINDS.items())
