"""What a still shall show."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from geometry.sections.face import CutLine

Kind = Literal["whole", "cutaway", "exploded", "face the cut"]
Size = tuple[int, int]


@dataclass(frozen=True)
class Window:
    """The piece of a cut to look at: distances along the cut line and levels, metres."""

    left: float
    right: float
    bottom: float
    top: float


@dataclass(frozen=True)
class View:
    """One still.

    cut: where to cut; asked by the kinds "cutaway" and "face the cut".
    window: for "face the cut", the piece to fill the picture with; the whole cut without it.
    labels: words by part id; a line break starts a second, lighter line.
    turn: degrees the viewer walks to the right from square in front.
    tilt: degrees the viewer looks down.
    stage: the last stage built; what comes later shows as a faint outline.
    without: roles to leave out, besides those the kind leaves out itself.
    """

    kind: Kind
    cut: CutLine | None = None
    window: Window | None = None
    labels: Mapping[str, str] = field(default_factory=dict)
    turn: float = -30.0
    tilt: float = 35.0
    stage: int | None = None
    without: frozenset[str] = frozenset()
