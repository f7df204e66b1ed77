"""The choice of a small paper, kept from page to page."""

from typing import get_args

import streamlit as st

from viz.job import Job
from viz.panels.spoken import said
from viz.sheets.upright import SmallName, carried_paper


def paper_choice(work: Job) -> SmallName:
    """Show the choice of small papers."""
    papers: tuple[SmallName, ...] = get_args(SmallName)
    usual = papers.index(carried_paper(work.system))
    return st.selectbox(
        said("Paper"), papers, index=usual, key=f"small paper {work.system}", width=110
    )
