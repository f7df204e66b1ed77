"""The floor's layers: material and thickness of each, one more, one less, another order."""

from collections.abc import Mapping
from typing import Any

import streamlit as st

from geometry.layering import FROM_BELOW, Row, moved, thickness_steps, with_layer, without_layer
from geometry.materials.catalogue import AGGREGATES, BOARDS, CONCRETES, SHEETS
from geometry.units import System
from viz.panels import rows, state
from viz.panels.fields import (
    Field,
    choice_field,
    heard,
    hold,
    key_of,
    names,
    say_faults,
    text_field,
)
from viz.panels.spoken import escaped, later, named, said
from viz.panels.state import Path

_CHOICES: Mapping[str, Mapping[str, Any]] = {
    "base": AGGREGATES, "blinding": AGGREGATES, "retarder": SHEETS, "insulation": BOARDS,
    "slab": CONCRETES, "fill": AGGREGATES,
}  # fmt: skip
_ROLES = later({
    "fill": "Fill below the stone",
    "base": "Stone: a bed that drains and does not draw water up",
    "blinding": "Sand: a smooth bed for sheet and boards",
    "retarder": "Vapor retarder: keeps the ground's damp out of the slab",
    "insulation": "Rigid foam: keeps the slab from the cold ground",
    "slab": "Concrete slab",
})  # fmt: skip


def layers(path: Path) -> None:
    """Show the layers listed at a path of the file, from the top down."""
    found = state.value(path)
    if not isinstance(found, list):
        st.caption(
            said("The usual floor: 6 in stone, 1/2 in sand, retarder, 2 in foam, 4 in slab.")
        )
        st.button(said("Change its layers"), on_click=state.edit, args=(path, rows.usual_layers()))
        return
    st.caption(said("Layers, from the top down"))
    listed = [row for row in found if isinstance(row, dict)]
    for number in reversed(range(len(found))):
        if isinstance(found[number], dict):
            _layer(path, number, found[number])
    if len(listed) == len(found):
        with st.popover(said("Change the layers"), icon=":material/layers:", width="stretch"):
            _order(path, listed)


def _layer(home: Path, number: int, layer: Row) -> None:
    path, name = (*home, number), str(layer.get("name", "layer"))
    role = str(layer.get("role"))
    left, right = st.columns([3, 2])
    with left:
        choice_field(
            Field((*path, "material"), escaped(said(name.capitalize()))),
            names(_CHOICES.get(role, {})),
        )
    with right:
        text_field(
            Field((*path, "thickness"), said("Thickness, {layer}", layer=escaped(said(name))))
        )
    _slide((*path, "thickness"), name, role)
    say_faults(path)


def _slide(path: Path, name: str, role: str) -> None:
    """Show a slider along the thicknesses one can buy or place."""
    steps = thickness_steps(role, str(state.value(path)), _system())
    if steps is None:
        return
    key = f"slide {key_of(path)}"
    hold(key, steps[1])
    st.select_slider(
        said("Slide the thickness, {layer}", layer=escaped(said(name))), steps[0], key=key,
        label_visibility="collapsed",
        on_change=heard(key, steps[1], lambda step: state.edit(path, step)),
    )  # fmt: skip


def _order(path: Path, listed: list[Row]) -> None:
    """Show what adds a layer, moves one or takes one out."""
    for number in reversed(range(len(listed))):
        name = str(listed[number].get("name", number + 1))
        with st.container(horizontal=True, vertical_alignment="center"):
            st.markdown(escaped(said(name.capitalize())), width="stretch")
            for icon, help_, change in (
                ("arrow_upward", later("Move up"), moved(listed, number, 1)),
                ("arrow_downward", later("Move down"), moved(listed, number, -1)),
                ("delete", later("Take out"), without_layer(listed, number)),
            ):
                st.button(
                    "", icon=f":material/{icon}:", help=f"{said(help_)}: {escaped(said(name))}",
                    on_click=state.edit, key=f"{help_} {key_of((*path, number))}",
                    args=(path, change), disabled=change in (listed, []),
                )  # fmt: skip
    key = f"one more {key_of(path)}"
    st.selectbox(said("One more layer"), FROM_BELOW, format_func=named(_ROLES), key=key)
    st.button(
        said("Add the layer"), key=f"add {key}",
        on_click=lambda: state.edit(path, with_layer(listed, st.session_state[key], _system())),
    )  # fmt: skip


def _system() -> System:
    return "metric" if state.metric() else "ft-in"
