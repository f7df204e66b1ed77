"""Lists of the design file that grow by a button: prices, own rules, gradings as delivered."""

from collections.abc import Callable, Mapping
from typing import Any, get_args

import streamlit as st

from geometry.designlists import added, without
from geometry.materials.catalogue import AGGREGATES
from geometry.parts.order import Unit
from geometry.rules.height_rule import DrainPoint, Sense
from viz.panels import state
from viz.panels.fields import (
    Field,
    alone,
    choice,
    lines_field,
    names,
    number,
    say_own_faults,
)
from viz.panels.spoken import said
from viz.panels.state import Path

_PRICES: Path = ("order", "price")
_RULES: Path = ("height_rule",)
_GRADINGS: Path = ("grading",)


def prices() -> None:
    """Show what suppliers told: a price for a unit of a thing."""
    st.caption(said("Prices that you were told; the order adds them up."))
    first = {"of": "stone-57", "each": 0.0, "per": "ton"}
    _entries(_PRICES, _price, said("Add a price"), first)


def height_rules() -> None:
    """Show the rules of one's own on the drain's height."""
    st.caption(said("Rules of your own office on the drain's height."))
    first = {"name": "top of pipe", "point": "crown", "at": "at or below", "level": "slab bottom"}
    _entries(_RULES, _rule, said("Add a rule"), first)


def gradings() -> None:
    """Show the gradings of stone and sand as they were delivered."""
    st.caption(said("Stone or sand as it was delivered, instead of its standard's band."))
    first = {"material": "stone-57", "sieves": ["1 in, 100 %", "1/2 in, 35 %", "No. 4, 4 %"]}
    _entries(_GRADINGS, _grading, said("Add a grading"), first)


def _entries(
    home: Path, show: Callable[[Path], None], add: str, first: Mapping[str, Any]
) -> None:  # fmt: skip
    """Show every entry with what takes it out, and a button that adds one more."""
    value = state.value(home)
    rows = value if isinstance(value, list) else []
    for place in range(len(rows)):
        here = (*home, place)
        with st.container(border=True):
            say_own_faults(here)
            show(here)
            st.button(said("Take out"), key=f"take out {here}", on_click=_out, args=(here,))
    st.button(add, key=f"add to {home}", on_click=_add, args=(home, first))


def _add(home: Path, first: Mapping[str, Any]) -> None:
    state.change(lambda text: added(text, home, first))


def _out(here: Path) -> None:
    state.change(lambda text: without(text, here))


def _price(here: Path) -> None:
    alone(Field((*here, "of"), "Thing", help="a material's key, or an item as the order names it"))
    alone(Field((*here, "each"), "Price"), meant=number)
    sold = "the unit it is sold by, as the order counts it"
    choice(Field((*here, "per"), "For each", help=sold), _same(get_args(Unit)))


def _rule(here: Path) -> None:
    alone(Field((*here, "name"), "Name of the rule"))
    choice(Field((*here, "point"), "Point of the drain"), _same(get_args(DrainPoint)))
    choice(Field((*here, "at"), "Lies"), _same(get_args(Sense)))
    alone(Field((*here, "level"), "Level", help="such as slab bottom -1 in, or TOF"))
    alone(Field((*here, "why"), "Who asks it", "", "and where it is written"))


def _grading(here: Path) -> None:
    choice(Field((*here, "material"), "Material"), names(AGGREGATES))
    sieves = "one a line: the opening or the US number, and the share that passes"
    lines_field(Field((*here, "sieves"), "Sieves", "No. 4, 4 %", sieves))


def _same(keys: tuple[str, ...]) -> dict[str, str]:
    return {key: key for key in keys}
