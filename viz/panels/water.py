"""The view "Water": what comes, what carries it, the pit over the storm, and what was found."""

import streamlit as st

from viz import water_tables
from viz.export.csvfile import to_csv
from viz.job import Job
from viz.panels import cached, shown
from viz.panels.figures import verdict
from viz.tables import by_gravity

_FIGURE = "Water in the pit over the storm"


def water(work: Job) -> None:
    """Show the pit's figure, the findings on water, and every table."""
    svg = cached.pit_svg(work.text)
    if svg:
        shown.sheet(svg, _FIGURE)
    else:
        st.info("Rain or ground, and a pit, must be known before the pit can be drawn.")
    ids = water_tables.FINDINGS
    found = [f for f in work.report.findings if f.id in ids]
    st.html("".join(verdict(f) for f in by_gravity(found)))
    tables = water_tables.tables(work.report.water, work.system)
    for title, table in tables:
        st.subheader(title)
        shown.words_table(table)
    with st.container(horizontal=True):
        for title, table in tables:
            name = title.split(":")[0].lower().replace(" ", "-")
            shown.save_button(f"{title.split(':')[0]}, CSV", to_csv(table), f"{name}.csv",
                              "text/csv")  # fmt: skip
        if svg:
            shown.save_drawing(svg, "pit")
