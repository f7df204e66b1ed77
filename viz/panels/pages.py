"""The pages, each named by a job on the site: what it shows, and which fields stand beside it."""

from collections.abc import Callable
from dataclasses import dataclass

from viz.job import Job
from viz.panels.checking import checks_page
from viz.panels.controls import (
    check_fields,
    drain_fields,
    floor_fields,
    layout_fields,
    order_fields,
    set_fields,
)
from viz.panels.floor import floor
from viz.panels.layout import layout
from viz.panels.order import order
from viz.panels.permit import permit
from viz.panels.section import section
from viz.panels.site import on_site
from viz.panels.variants import variants
from viz.panels.water import water


@dataclass(frozen=True)
class Page:
    """One page. fields: beside it; figures: whether the key figures stand under it."""

    shown: Callable[[Job], None]
    fields: Callable[[], None] | None = None
    figures: bool = False


PAGES = {
    "Layout": Page(layout, layout_fields, figures=True),
    "Floor": Page(floor, floor_fields, figures=True),
    "Drain": Page(water, drain_fields),
    "Section": Page(section),
    "On site": Page(on_site),
    "Order": Page(order, order_fields),
    "Checks": Page(checks_page, check_fields),
    "Compare": Page(variants),
    "Set": Page(permit, set_fields),
}
FIRST = "Layout"
