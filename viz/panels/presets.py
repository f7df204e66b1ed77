"""Ready beginnings: a choice, a few fields, one button that puts it into the design's text."""

from base64 import b64encode
from collections.abc import Callable, Mapping
from html import escape
from typing import Protocol

import streamlit as st

from geometry.errors import DesignError
from geometry.planfile.read import bare_of, system_of
from geometry.presets.draining import with_drain
from geometry.presets.drains import DRAINS
from geometry.presets.floors import FLOORS, with_floor
from geometry.presets.shapes import SHAPES, Shape, Size, sized
from geometry.presets.shaping import with_shape
from geometry.sources import Source
from geometry.units import System
from viz.drawing.alone import alone
from viz.export.svg import to_svg
from viz.figures.plan.shape import shape_figure
from viz.panels import state
from viz.panels.fields import broken
from viz.panels.refusals import change, say_refused
from viz.panels.spoken import named, said

_PICTURE_MM, _TEXT_MM = (84.0, 54.0), 3.0
_SHAPE, _FLOOR, _DRAIN = "preset shape", "preset floor", "preset drain"


class _Preset(Protocol):
    @property
    def name(self) -> str: ...
    @property
    def about(self) -> str: ...
    @property
    def source(self) -> Source: ...


def shape_presets() -> None:
    """Show the shapes with their sizes; the button makes the plan anew in the chosen one."""
    st.session_state.setdefault(_SHAPE, next(iter(SHAPES)))
    key = st.segmented_control(
        said("Shape"),
        list(SHAPES),
        format_func=named({key: one.name for key, one in SHAPES.items()}),
        key=_SHAPE,
        required=True,
    )
    shape = SHAPES[key or next(iter(SHAPES))]
    system = system_of(state.raw())
    st.caption(said(shape.about))
    # The picture stands over the fields it follows from.
    over = st.container()
    words = _sizes(shape, system)
    with over:
        fine = _picture(shape, words, system)
    _use(_SHAPE, said("Use this shape"), lambda text: with_shape(text, shape.key, words))
    st.caption(
        said("Makes the outline anew: further areas and piers are taken out, the pit moves.")
    )
    if fine:
        say_refused(f"{_SHAPE} refused", named=True)


def floor_presets() -> None:
    """Show the floor build-ups; the button puts the chosen one into the house's floor."""
    key = _choice(said("Build-up"), FLOORS, _FLOOR)
    _use(_FLOOR, said("Use this floor"), lambda text: with_floor(text, key))
    say_refused(f"{_FLOOR} refused")


def drain_presets() -> None:
    """Show the ways to drain; the button makes the drains so."""
    key = _choice(said("Way of the water"), DRAINS, _DRAIN)
    if DRAINS[key].outlet == "daylight":
        st.caption(said("The ground it runs under is invented at first: put in your own lot's."))
    _use(_DRAIN, said("Use this drain"), lambda text: with_drain(text, key))
    say_refused(f"{_DRAIN} refused")


def _sizes(shape: Shape, system: System) -> dict[str, str]:
    """Show the fields of a shape's sizes; return what they say."""
    words, columns = {}, st.columns(2)
    for number, size in enumerate(shape.sizes):
        with columns[number % 2]:
            key = f"{_SHAPE} {shape.key} {size.key} {system}"
            words[size.key] = _size(key, size, system)
    return words


def _size(key: str, size: Size, system: System) -> str:
    # Kept beside the widget, whose own state goes when another shape is looked at.
    kept = f"{key} kept"
    st.session_state[key] = st.session_state.get(kept, size.usual(system))

    def keep() -> None:
        st.session_state[kept] = st.session_state[key]

    usual = size.usual(system)
    return str(
        st.text_input(said(size.label), key=key, max_chars=40, on_change=keep, placeholder=usual)
        or ""
    )


def _picture(shape: Shape, words: Mapping[str, str], system: System) -> bool:
    """Draw the shape, or say what is wrong with its sizes; return whether it was drawn."""
    try:
        sizes = sized(shape, words, system, bare_of(state.raw()))
    except DesignError as error:
        for fault in error.faults:
            told = escape(f"{fault.place}: {fault.sentence}")
            st.html(f'<div class="fault"><i>!</i> {told}</div>')
        return False
    drawn = alone(shape_figure(shape.outlines(sizes), system, _PICTURE_MM, _TEXT_MM), 1.0)
    data = b64encode(to_svg(drawn).encode()).decode()
    st.html(
        f'<img alt="{escape(shape.name)}" style="display:block;width:100%;max-width:18rem"'
        f' src="data:image/svg+xml;base64,{data}">'
    )
    return True


def _choice(label: str, presets: Mapping[str, _Preset], key: str) -> str:
    """Show a choice of presets and what is said of the chosen one; return its key."""
    found = st.selectbox(
        label,
        list(presets),
        format_func=named({key: one.name for key, one in presets.items()}),
        key=key,
    )
    chosen = presets[found]
    told = f"{escape(said(chosen.about))}<br><small>{escape(str(chosen.source))}</small>"
    st.html(f'<p class="told">{told}</p>')
    return str(found)


def _use(key: str, label: str, how: Callable[[str], str]) -> None:
    st.button(label, key=f"{key} use", on_click=change, args=(f"{key} refused", how),
              disabled=broken(), type="primary")  # fmt: skip
