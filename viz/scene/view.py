"""What a still shall show."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from geometry.sections.face import CutLine

Kind = Literal["whole", "cutaway", "exploded", "face the cut", "as given"]
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
    ghosts: ids of parts that show so as well.
    loose: ids of parts that are heaps of pieces, drawn without edges.
    dark: ids of parts drawn in ink, such as what is seen through a hole.
    dug: a cutaway shows the hole, the ground around it and the fill that is in.
    focus: ids of the parts a cutaway's closer look is for; its first footing without any.
    fitted: the viewer may walk and look down otherwise where this fills the picture better.
    title: stands over the picture.
    without: roles to leave out, besides those the kind leaves out itself.
    """

    kind: Kind
    cut: CutLine | None = None
    window: Window | None = None
    labels: Mapping[str, str] = field(default_factory=dict)
    turn: float = -30.0
    tilt: float = 35.0
    stage: int | None = None
    ghosts: frozenset[str] = frozenset()
    loose: frozenset[str] = frozenset()
    dark: frozenset[str] = frozenset()
    dug: bool = False
    focus: frozenset[str] = frozenset()
    fitted: bool = False
    title: str = ""
    without: frozenset[str] = frozenset()
