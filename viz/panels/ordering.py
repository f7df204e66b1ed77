"""The controls of the order: what turns a thing in place into a thing to buy."""

from typing import NamedTuple

import streamlit as st

from geometry.parts.usual import USUAL
from geometry.units import System
from viz.panels import state
from viz.panels.fields import Field, alone, pair, three_way, whole
from viz.panels.spoken import later, said
from viz.tables.order_tables import show_factor


class _Asked(NamedTuple):
    """A factor: its key in the file, its label, and what it is for."""

    key: str
    label: str
    more: str = ""


_LOOSE = later({
    "stone": ("Washed stone", "clean stone settles little when it is raked and walked in"),
    "sand": ("Sand", "loose sand shrinks under the plate"),
    "soil": ("Soil back", "loose soil shrinks under the plate, clay the most"),
})  # fmt: skip
_ROWS: dict[str, tuple[tuple[_Asked, _Asked], ...]] = {
    "Trucks": (
        (_Asked("truck.volume", "Truck holds", "what the body takes, struck level"),
         _Asked("truck.weight", "Truck carries", "by law; the lesser of both decides")),
    ),
    "Concrete": (
        (_Asked("concrete.loss", "Concrete lost", "spilt, left in drum and pump"),
         _Asked("concrete.slab_variation", "Slab thicker by",
                "than drawn, on the mean: subgrade is never flat")),
        (_Asked("concrete.footing_variation", "Footings wider by",
                "where earth is the form it caves and is dug wide"),
         _Asked("concrete.wall_variation", "Wall forms give by", "they bow under wet concrete")),
        (_Asked("concrete.step", "Supplier rounds up to"),
         _Asked("concrete.truck", "Mixer holds")),
    ),
    "Boards, rolls and sticks": (
        (_Asked("board.width", "Board width"), _Asked("board.length", "Board length")),
        (_Asked("board.spare", "Boards to spare", "broken corners, wrong cuts"),
         _Asked("sheet.lap", "Retarder laps", "sheet on sheet, taped")),
        (_Asked("sheet.roll_width", "Retarder roll, width"),
         _Asked("sheet.roll_length", "Retarder roll, length")),
        (_Asked("fabric.roll_width", "Fabric roll, width", "wide enough to wrap in one piece"),
         _Asked("fabric.roll_length", "Fabric roll, length")),
        (_Asked("pipe.stick", "Pipe, a stick is", "of stiff pipe"),
         _Asked("pipe.coil", "Pipe, a coil is", "of corrugated pipe")),
        (_Asked("bars.stick", "Bars, a stick is"), _Asked("bars.lap", "Bars lap, diameters")),
    ),
}  # fmt: skip
_OWN = later("the catalogue's")


def ordering() -> None:
    """Show the factors of the order; an empty one is usual, and the order says whence."""
    st.caption(said("Ask your suppliers. What is left empty is usual, and the order says so."))
    for kind, (label, more) in _LOOSE.items():
        pair(
            _field(_Asked(f"{kind}.compaction", said("{what}, shrinks", what=said(label)), more)),
            _field(
                _Asked(
                    f"{kind}.waste",
                    said("{what}, lost", what=said(label)),
                    "in the yard, in mud, at edges",
                )
            ),
        )
        weight = "loose, from your supplier: tons for a yard; wet stone weighs more"
        alone(
            Field(
                ("order", kind, "density"),
                said("{what}, weight", what=said(label)),
                "a usual range",
                weight,
            )
        )
    for title, rows in _ROWS.items():
        st.caption(said(title))
        for first, second in rows:
            pair(_field(first), _field(second), how={"lap": {"meant": whole}})
    three_way(Field(("order", "board", "reuse"), "Offcuts of boards are laid",
                    help="not said: they are"))  # fmt: skip
    alone(Field(("order", "currency"), "Currency", "none", "the word printed behind your prices"))


def _field(asked: _Asked) -> Field:
    group, name = asked.key.split(".")
    return Field(("order", group, name), asked.label, _usual(asked.key), asked.more)


def _usual(key: str) -> str:
    """Return the usual figure in the design's own units."""
    system: System = "metric" if state.value(("project", "units")) == "metric" else "ft-in"
    if key not in USUAL:
        return _OWN
    factor = USUAL[key].factor(system == "metric")
    return f"{factor.value:g}" if factor.unit == "diameters" else show_factor(factor, system)
