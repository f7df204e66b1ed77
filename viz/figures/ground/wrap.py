"""The wrap laid flat beside a sock's girth, and the pieces to cut."""

from geometry.units import System, show_area, show_length
from geometry.water.wrapping import WrapSheet
from viz.drawing.figure import Figure, extent, figure, moved
from viz.figures.ground.bars import Bar, Group, bar_marks

TITLE = "The wrap, laid flat"
REMARK = "Full: round the stone, or along it. Hatched: the lap."
_APART = 3.0


def wrap_figure(
    sheet: WrapSheet | None, system: System, width: float, text: float
) -> Figure | None:
    """Return the wrap's width beside a sock's girth, then its pieces; None without a drain.

    Widths share a scale, and pieces another. width: mm. text: height of capitals, mm.
    """
    if sheet is None or not sheet.pieces:
        return None
    around = sheet.width_m - sheet.lap_m
    across = (
        Bar("wrap", around, show_length(round(sheet.width_m, 3), system), sheet.lap_m),
        Bar("sock", around / sheet.girth_ratio,
            show_length(round(around / sheet.girth_ratio, 3), system)),
    )  # fmt: skip
    note = (
        f"{show_area(sheet.area_m2, system)} of wrap, {show_area(sheet.sock_area_m2, system)} of "
        f"sock: {sheet.girth_ratio:.1f} times the fabric, {sheet.soil_ratio:.1f} times against soil"
    )
    marks = bar_marks([Group("Across: wrap round the stone, sock on the pipe", across, note)], None,
                      width, text)  # fmt: skip
    pieces = tuple(
        Bar(
            f"side {piece.side}",
            max(0.0, piece.length_m - sheet.bend_lap_m),
            show_length(round(piece.length_m, 3), system),
            min(sheet.bend_lap_m, piece.length_m),
        )
        for piece in sheet.pieces
    )
    length = show_length(round(sheet.length_m, 3), system)
    cut = bar_marks([Group("Along: pieces to cut", pieces, f"{length} in all")], None, width, text)
    marks += moved(cut, 0.0, extent(marks).low - _APART)
    return figure("wrap", TITLE, marks, None, REMARK)
