"""Which of the things that departments ask of foundation drawings this design answers."""

from collections.abc import Iterator

from geometry.checks.asked import (
    CHESTERFIELD,
    CROOKSTON,
    EL_DORADO,
    GRAND,
    HILLSBOROUGH,
    MORGAN_HILL,
    SEVERAL,
    Ask,
    Item,
)
from geometry.checks.asked_concrete import footing_items, pier_items, wall_items
from geometry.checks.asked_floor import drain_items, floor_items, grade_items
from geometry.layout.lay import Layout
from geometry.project import Datum
from geometry.units import show_elevation

_SET, _SITE = "Set", "Site"


def completeness(layout: Layout) -> tuple[Item, ...]:
    """Return every item with its state, in the order a reviewer reads: set, site, then parts.

    It lists what is on the drawings; whether that is enough is the department's to say.
    """
    return (
        *_set_items(layout),
        *_site_items(layout),
        *footing_items(layout),
        *wall_items(layout),
        *pier_items(layout),
        *floor_items(layout),
        *drain_items(layout),
        *grade_items(layout),
    )


def _set_items(layout: Layout) -> Iterator[Item]:
    about = layout.design.project
    yield Ask(_SET, "scale and scale bar, dimensioned", GRAND).shown("every sheet")
    yield Ask(_SET, "sheet index", SEVERAL).shown("first sheet")
    yield Ask(_SET, "room for the department's stamp", SEVERAL).shown("every sheet")
    yield Ask(_SET, "code edition", CHESTERFIELD).given(about.code, "[project] code")
    yield Ask(_SET, "who prepared the drawings", CHESTERFIELD).given(
        about.prepared_by, "[project] prepared_by"
    )
    yield Ask(_SET, "preparer's address and telephone", CHESTERFIELD).outside("add by hand")
    yield Ask(_SET, "preparer's signature", MORGAN_HILL).outside("sign by hand")
    yield Ask(_SET, "date", SEVERAL).given(about.date, "[project] date")
    yield Ask(_SET, "hold points for inspection", SEVERAL).shown("notes")


def _site_items(layout: Layout) -> Iterator[Item]:
    about, datum = layout.design.project, layout.design.datum
    yield Ask(_SITE, "owner", EL_DORADO).given(about.drawn_for, "[project] drawn_for")
    yield Ask(_SITE, "address", EL_DORADO).given(about.address, "[project] address")
    yield Ask(_SITE, "parcel", EL_DORADO).given(about.parcel, "[project] parcel")
    yield Ask(_SITE, "north arrow as on the site plan", HILLSBOROUGH).shown(
        f"plan; {datum.north:g}° clockwise from straight up"
    )
    ask = Ask(_SITE, "datum and its elevation on the site", SEVERAL)
    elevation = show_elevation(datum.top_of_footing, about.units)
    if datum.top_of_footing == Datum().top_of_footing:
        usual = f"{elevation} stands where no survey is given; "
        yield ask.empty("[datum] top_of_footing", usual)
    else:
        yield ask.stated(f"top of footing at {elevation}")
    yield Ask(_SITE, "site plan with lot lines and setbacks", CROOKSTON).outside("add it")
