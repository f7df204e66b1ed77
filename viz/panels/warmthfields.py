"""Fields of the climate, the site, loads on the floor, heating tubes, coating and foot of walls."""

import streamlit as st

from geometry.materials.catalogue import PIPES
from geometry.materials.tubes import TUBES
from viz.panels import state
from viz.panels.fields import Field, alone, choice, lines_field, pair, three_way, whole
from viz.panels.spoken import later, said

_TERMITES = later({
    "": "not known", "none": "none", "slight": "slight", "moderate": "moderate",
    "heavy": "heavy", "very heavy": "very heavy",
})  # fmt: skip
_COATINGS = later(
    {"": "not known", "damp-proofing": "damp-proofing", "waterproofing": "waterproofing"}
)
_FEET = later({
    "": "not known", "slab": "the slab, poured tight", "keyway": "a keyway in the footing",
    "dowels": "dowels in the footing",
})  # fmt: skip
_ZONES = later({
    "": "not known", "1": "1", "2": "2", "3": "3", "4": "4", "4C": "4 marine", "5": "5", "6": "6",
    "7": "7", "8": "8",
})  # fmt: skip
_PATTERNS = later({"serpentine": "serpentine", "counterflow": "counterflow, a double spiral"})


def climate_fields() -> None:
    """Show the temperatures, what the ground conducts, and what else keeps the heat."""
    pair(
        Field(("climate", "inside"), "Inside", "not known",
              "68 F or 20 C: what the room is kept at; with warm tubes the floor itself is warmer"),
        Field(("climate", "outside"), "Outside, the year's mean", "not known",
              "ground lags months behind the air, so a floor loses heat to the year's mean"),
    )  # fmt: skip
    pair(
        Field(("climate", "ground_conductivity"), "Ground conducts", "by the soil's group",
              "1.5 W/mK or 0.9 Btu/h ft F: wet or dense ground carries off more than dry sand"),
        Field(("climate", "wall_resistance"), "Insulation of the walls", "none",
              "R-15 or 2.6 m2K/W: under deep grade the wall loses more than the floor's middle"),
    )  # fmt: skip
    choice(
        Field(("climate", "zone"), "Climate zone", "",
              "of the energy code, by county: it says how much foam slab and basement walls need"),
        _ZONES,
    )  # fmt: skip
    lines_field(
        Field(("climate", "unheated"), "Areas that are not heated", "all are heated",
              "names, one a line: a garage's floor loses nothing, but the room beside it does")
    )  # fmt: skip


def site_fields() -> None:
    """Show what the local office says of the place, and of the house over the footing."""
    pair(
        Field(("site", "frost_depth"), "Frost depth", "not known",
              "ask the building office: a footing above it is lifted by ice in fine soil"),
        Field(("site", "snow"), "Snow on the ground", "not known",
              "30 psf or 1.5 kPa: with the stories it says how wide the footing must be"),
    )  # fmt: skip
    alone(
        Field(("site", "stories"), "Stories on the footing", "not known",
              "1 to 3 above the basement: each one is load that the soil must carry"),
        meant=whole,
    )  # fmt: skip
    choice(
        Field(("site", "termites"), "Termites", "",
              "foam below grade is a hidden way in; where they are heavy codes forbid it outside"),
        _TERMITES,
    )  # fmt: skip
    three_way(
        Field(("site", "radon_vent"), "Vent for soil gas", "",
              "a pipe from the stone up through the roof costs little before the slab is poured "
              "and much after it")
    )  # fmt: skip


def vent_fields() -> None:
    """Show the vent pipe for soil gas: its place; once it has one, its pipe."""
    alone(
        Field(("vent", "at"), "Vent pipe on the plan", "none",
              "20 ft, 6 ft: set it where walls above let it run straight up through the roof")
    )  # fmt: skip
    if state.value(("vent",)) is None:
        return
    alone(
        Field(("vent", "stub"), "Stub over the floor", "12 in",
              "long enough to glue on to; plug it, or the house draws soil gas until it is done")
    )  # fmt: skip
    choice(
        Field(("vent", "pipe"), "Vent pipe", "sch40-3",
              "3 or 4 in: a wider pipe draws more by itself, without a fan"),
        {key: PIPES[key].name for key in ("sch40-3", "sch40-4")},
    )  # fmt: skip
    st.button(said("Take the vent pipe out"), on_click=state.edit, args=(("vent",), None))


def load_fields() -> None:
    """Show what presses on the floor and so on the foam under it."""
    alone(
        Field(("loads", "floor"), "Load on the floor", "that of rooms, 40 psf or 1.9 kPa",
              "foam creeps under load that stays: stacks and machines count, a party does not")
    )  # fmt: skip
    pair(
        Field(("loads", "point"), "Post or wheel", "none",
              "2000 lbf or 9 kN on one spot: the slab spreads it, thin slabs spread it less"),
        Field(("loads", "point_side"), "Side of its foot", '4 1/2"',
              "of a square: a wider plate under a post presses less on slab and foam"),
    )  # fmt: skip


def wall_fields() -> None:
    """Show the wall's coating and what holds its foot."""
    choice(
        Field(("wall", "coating"), "Coating outside", "",
              "damp-proofing stops damp; against standing water a wall wants waterproofing"),
        _COATINGS,
    )  # fmt: skip
    choice(
        Field(("wall", "foot"), "What holds the wall's foot", "",
              "fill pushes the foot inward before the slab is there: say what holds it until then"),
        _FEET,
    )  # fmt: skip


def joint_fields() -> None:
    """Show how far apart the slab is jointed."""
    alone(
        Field(("floor", "joints"), "Joints in the slab apart", "not said",
              "a slab shrinks and cracks: cut every 24 to 36 times its thickness, within a day")
    )  # fmt: skip


def tubing_fields() -> None:
    """Show the heating tubes: spacing, tube, pattern, loop, edge, manifold."""
    path = ("floor", "tubing")
    pair(
        Field((*path, "spacing"), "Tubes apart", "12 in",
              "nearer tubes give more heat at cooler water; the floor feels even under bare feet"),
        Field((*path, "edge"), "From the edge", "6 in",
              "keeps tubes clear of edge boards, and of whoever nails a sole plate to the slab"),
    )  # fmt: skip
    choice(
        Field((*path, "tube"), "Tube", "pex-1/2",
              "a thicker tube carries heat farther in one loop, and bends in a wider turn"),
        {key: tube.name for key, tube in TUBES.items()},
    )  # fmt: skip
    choice(
        Field((*path, "pattern"), "Pattern", "serpentine",
              "counterflow lays warm beside cool, so the floor is even; a serpentine starts warm"),
        _PATTERNS,
    )  # fmt: skip
    pair(
        Field((*path, "loop"), "Longest loop", "usual for the tube",
              "in a long loop water cools and the pump strains; all loops of about one length"),
        Field((*path, "way"), "Slab to manifold", "4 ft",
              "the tube's way up out of the slab, once: it is cut with the loop, in one piece"),
    )  # fmt: skip
    alone(
        Field((*path, "manifold"), "Manifold on the plan", "the middle of a wall",
              "12 ft, 4 ft: x, y of where loops start; put it where walls and stairs leave room")
    )  # fmt: skip
