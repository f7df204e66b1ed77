"""What the view "Water" looks at: a job, and which of its drains."""

from dataclasses import dataclass

import streamlit as st

from geometry.layout.lay import Layout
from geometry.report import Report
from geometry.units import System
from geometry.water.drain_figures import DrainFigures
from geometry.water.emptying import daylight_outlets, pit_alone
from geometry.water.filtering import Filters, filters
from geometry.water.outlet_figures import OutletFigures, outlet_figures
from viz.job import Job
from viz.panels.spoken import said

_KEY = "water drain"


@dataclass(frozen=True)
class Looked:
    """A job with one of its drains in view: its number among the report's drains."""

    work: Job
    number: int = 0

    @property
    def layout(self) -> Layout:
        """The layout with that drain in view."""
        return self.work.layout.views()[self.number]

    @property
    def report(self) -> Report:
        """The report without what needs solids."""
        return self.work.report

    @property
    def drain(self) -> DrainFigures | None:
        """That drain's figures; None without any drain."""
        return self.report.drains[self.number] if self.report.drains else None

    @property
    def outlets(self) -> tuple[OutletFigures, ...]:
        """That drain's outlets to daylight, each beside the pit; without any, the pit alone."""
        layout = self.layout
        if layout.drain is None:
            return ()
        houses = daylight_outlets(layout) or (pit_alone(layout),)
        return tuple(outlet_figures(house.name.strip(), house) for house in houses)

    @property
    def filters(self) -> Filters:
        """What holds soil back at that drain."""
        return filters(self.layout) if self.number else self.report.filter

    @property
    def system(self) -> System:
        """The units figures are printed in."""
        return self.work.system


def chosen(work: Job, of_a_drain: bool) -> Looked:
    """Return what is looked at; of several drains, where one matters, one is chosen."""
    drains = work.report.drains
    if not of_a_drain or len(drains) < 2:
        return Looked(work)
    if st.session_state.get(_KEY, 0) >= len(drains):
        st.session_state[_KEY] = 0
    number = st.selectbox(
        said("Drain"), range(len(drains)), format_func=lambda n: drains[n].name, key=_KEY
    )
    return Looked(work, number or 0)
