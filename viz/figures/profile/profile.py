"""The drain's profile: unrolled along the pipe, heights enlarged, every place with its figures."""

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from viz.drawing.figure import Figure, figure
from viz.drawing.scale import Scale
from viz.figures.profile.levels import named_levels
from viz.figures.profile.piece import Piece, all_of, branches
from viz.figures.profile.places import places
from viz.figures.profile.unrolled import Unrolled
from viz.figures.profile.view import View, taller

# The height a picture is best read at, mm, and where there is little room for it.
_GOOD_HEIGHT, _LOW_HEIGHT = 70.0, 50.0


def profile_parts(layout: Layout) -> int:
    """Return in how many parts the profile can be drawn, one a branch; 0 without a drain."""
    return len(branches(layout.drain)) if layout.drain else 0


def profile_figure(
    layout: Layout,
    scale: Scale,
    text: float,
    tall: int | None = None,
    part: int | None = None,
    compact: bool = False,
    widest: float = float("inf"),
) -> Figure | None:
    """Return the profile of the drain in view; None without a drain.

    scale: of lengths along the pipe. tall: how many times larger heights are drawn, chosen for a
    picture that is well read unless given. text: height of capitals, mm. part: one branch alone,
    from 0; all of the drain unless given. compact: narrow sides and a lower picture. widest: the
    width in mm the figure tries to stay in: places too many for columns get a table. Raises
    IndexError for a part that is not there.
    """
    drain = layout.drain
    if drain is None:
        return None
    piece = all_of(drain) if part is None else branches(drain)[part]
    span = _span(layout, drain)
    if tall is None:
        good = _LOW_HEIGHT if compact else _GOOD_HEIGHT
        tall = taller((span[1] - span[0]) * scale.per_metre, good)
    view = View(scale.per_metre, tall)
    marks = Unrolled(layout, piece, view, span, text, compact, widest).marks()
    name = f"{drain.key.replace(' ', '-')}-profile" + ("" if part is None else f"-{part + 1}")
    titled = [drain.title] if len(layout.drains) > 1 else []
    titled += [] if part is None else [_passed(layout, piece, part)]
    title = ", ".join(("Drain profile", *titled))
    return figure(name, title, marks, scale, _remark(layout, piece, tall))


def _span(layout: Layout, drain: DrainLayout) -> tuple[float, float]:
    """Return the lowest and the highest level of the picture, metres."""
    levels = named_levels(layout)
    low, high = levels[0].level, levels[-1].level
    low = min(low, drain.outlet_invert)
    return low, max(high, drain.high_invert + drain.bore + drain.radius)


def _remark(layout: Layout, piece: Piece, tall: int) -> str:
    times = f"Heights drawn {tall} times larger than lengths."
    heights = times if tall > 1 else "Heights and lengths drawn at one scale."
    words = f"{heights} Unrolled along the pipe, seen from outside the house."
    if layout.bleeders_at(piece.drain):
        words += " Bleeders seen end on, behind the pipe."
    breaks = ("", " The pipe goes on at the break.", " The pipe goes on at both breaks.")
    return words + breaks[len(piece.cuts)]


def _passed(layout: Layout, piece: Piece, part: int) -> str:
    """Return in words which way round a branch goes: the corners along it, ends included."""
    corners = [place.corner for place in places(layout, piece) if place.corner is not None]
    if not corners:
        return f"part {part + 1}"
    if len(corners) == 1:
        return f"by corner {corners[0]}"
    between = "and" if len(corners) == 2 else "to"
    return f"corners {corners[0]} {between} {corners[-1]}"
