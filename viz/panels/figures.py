"""The figures under the picture: how the foam meets the footing, and the levels that matter."""

from collections.abc import Iterator
from html import escape

import streamlit as st

from geometry.report import Found, Report
from geometry.units import System, show_elevation, show_length, show_level, show_volume
from viz.job import Job
from viz.panels.spoken import in_english, later, said
from viz.words import SEVERITIES

_ICONS = {"fine": "✓", "look": "?", "stop": "!"}
FINDINGS_IN_ENGLISH = later("The findings are in English, as on the findings' pages.")
_KEY_LEVELS = (
    ("floor", "(finished floor)", later("Finished floor")),
    ("floor", "subgrade", later("Subgrade, cut to")),
    ("footing", "footing bottom", later("Footing bottom")),
    ("drain", "high point", later("Drain invert, high")),
    ("drain", "low point", later("Drain invert, low")),
    ("sump", "inside bottom", later("Sump bottom")),
)


def figures(work: Job, area: str) -> None:
    """Show the verdicts and the key figures of one area."""
    report, system = work.report, work.system
    foam = [f for f in report.findings if f.id == "foam-meets-tof"]
    if foam:
        in_english(FINDINGS_IN_ENGLISH)
        st.html("".join(verdict(f, short=True) for f in foam))
    cells = [*_levels(report, area, system), *_sizes(report, system)]
    st.html(f'<div class="figures">{"".join(cells)}</div>')


def verdict(found: Found, short: bool = False) -> str:
    """Return a finding as HTML: mark, word, subject and what was found."""
    about = said("foam and top of footing, ") if found.id == "foam-meets-tof" else ""
    grave = said(SEVERITIES[found.severity].capitalize())
    head = f"<b>{grave}: {about}{escape(found.subject)}</b>"
    rest = "" if short else (
        f"<p>{escape(found.advice)}</p>"
        f"<small>{said('Asked')}: {escape(found.asked)} ({escape(found.source)}).</small>"
    )  # fmt: skip
    sentence = f"{found.found[:1].upper()}{found.found[1:]}"
    return (
        f'<div class="finding {found.severity}"><i>{_ICONS[found.severity]}</i><div>{head}'
        f"<p>{escape(sentence)}</p>{rest}</div></div>"
    )


def _levels(report: Report, area: str, system: System) -> Iterator[str]:
    for group, ending, name in _KEY_LEVELS:
        rows = [r for r in report.levels if r.group == group and r.interface.endswith(ending)]
        for row in [r for r in rows if r.area == area or group in ("drain", "sump")][:1]:
            level = show_level(row.level_m, system)
            height = show_elevation(row.elevation_m, system)
            yield _cell(said(name), level, said("El. {height}", height=height))


def _sizes(report: Report, system: System) -> Iterator[str]:
    for name, roles in (
        (later("Concrete, in place"), ("footing", "wall", "pad", "column", "slab")),
        (later("Stone under floors"), ("base", "fill")),
        (later("Stone at the drain"), ("drain stone",)),
        (later("Sand"), ("blinding",)),
        (later("Excavation, in place"), ("excavation",)),
    ):
        total = sum(v.volume_m3 for v in report.volumes if v.role in roles)
        yield _cell(said(name), show_volume(total, system), said("nothing added for waste"))
    if report.drain:
        length = show_length(report.drain.length_m, system)
        holes = said("{count} holes", count=f"{report.drain.holes:,}")
        yield _cell(said("Drain pipe"), length, holes)


def _cell(name: str, figure: str, note: str) -> str:
    words = f"<span>{escape(name)}</span><b>{escape(figure)}</b><small>{escape(note)}</small>"
    return f"<div>{words}</div>"
