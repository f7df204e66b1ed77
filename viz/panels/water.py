"""The view "Water": heights, soil and filter, pipe, wall, cleanouts, the pit; the picture first."""

import streamlit as st

from viz.export.csvfile import to_csv
from viz.job import Job
from viz.panels import looked, shown
from viz.panels.looked import Looked
from viz.panels.pairs import Picture, show
from viz.panels.rulesets import rule_sets
from viz.panels.spoken import said
from viz.panels.waterpictures import pictures
from viz.panels.waterstages import STAGES, Stage, Titled
from viz.tables import drain_tables, soil_tables

_KEY = "water stage"


def water(work: Job) -> None:
    """Show one stage: pictures, findings, its caution, then the tables and their files."""
    name = shown.stage_choice(list(STAGES), _KEY)
    stage = STAGES[name]
    at = looked.chosen(work, stage.of_a_drain)
    found = pictures(work.text, name, at.number)
    for picture in found:
        show(picture)
    if not found:
        st.info(said(stage.unknown))
    _findings(work, stage)
    _beside(at, name)
    tables = [(title, table) for title, table in stage.tables(at) if table.rows]
    for title, table in tables:
        st.subheader(said(title))
        shown.rows(table)
    _files(tables, found)


def _findings(work: Job, stage: Stage) -> None:
    """Show what was found, the gravest first, and the caution that belongs to it."""
    found = [f for f in work.report.findings if f.id.startswith(stage.findings)]
    shown.verdicts(found)
    shown.caution(*stage.caution)


def _beside(at: Looked, name: str) -> None:
    """Show what belongs to one stage alone: the rule sets, what was counted for the pipes."""
    drain = at.drain
    if name == "Heights" and drain and drain.heights:
        st.subheader(said("Rule sets beside each other"))
        lines = drain_tables.clash_lines(drain.heights)
        sets = drain_tables.by_set(drain.heights, at.system)
        rule_sets(sets, tuple(line.removeprefix("- ") for line in lines))
    if name == "Pipe strength" and drain and drain.strength:
        counted = soil_tables.counted(drain.strength, at.system)
        st.caption(said("Counted: {what}", what=counted))


def _files(tables: Titled, found: tuple[Picture, ...]) -> None:
    """Show buttons that save the tables and the pictures."""
    with st.container(horizontal=True):
        for title, table in tables:
            short, told = (words.split(":")[0].split(",")[0] for words in (title, said(title)))
            file = f"{short.lower().replace(' ', '-')}.csv"
            shown.save_button(f"{told}, CSV", to_csv(table), file, "text/csv")
        for picture in found:
            st.markdown(f"{said(picture.title)}:", width="content")
            shown.save_drawing(picture.wide, picture.name)
