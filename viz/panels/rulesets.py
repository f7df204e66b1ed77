"""The rule sets on the drain's heights beside each other, and the rules that exclude each other."""

from html import escape

import streamlit as st

from viz.panels.spoken import in_english, said
from viz.tables.drain_tables import RuleLine, RuleSetLines, State

_MARKS: dict[State, str] = {"met": "✓", "not met": "!", "nothing to hold it to": "–"}
_KINDS: dict[State, str] = {"met": "fine", "not met": "stop", "nothing to hold it to": "open"}


def rule_sets(sets: tuple[RuleSetLines, ...], clashes: tuple[str, ...]) -> None:
    """Show a card for each set, with every rule's state as a word, then what cannot be both."""
    in_english("The rules are in English, as their sources have them.")
    st.html(f'<div class="rule-sets">{"".join(map(_card, sets))}</div>')
    if clashes:
        rows = "".join(f"<li>{escape(sentence)}</li>" for sentence in clashes)
        head = escape(said("Rules that no such pipe can meet together"))
        st.html(f'<div class="clashes"><b>{head}</b><ul>{rows}</ul></div>')


def _card(one: RuleSetLines) -> str:
    asked = "" if one.asked else f"<small>{said('to compare; this job is not held to it')}</small>"
    rows = "".join(map(_line, one.lines))
    kind = "" if one.asked else ' class="compared"'
    return f"<div{kind}><b>{escape(one.title)}</b>{asked}{rows}</div>"


def _line(line: RuleLine) -> str:
    ends = line.low if line.low == line.high else f"low point {line.low}; high point {line.high}"
    found = f" Limit {escape(line.limit)}: {escape(ends)}." if line.state != _NOTHING else ""
    note = f" {escape(line.note)}" if line.note else ""
    return (
        f'<div class="rule {_KINDS[line.state]}"><i>{_MARKS[line.state]}</i><p>'
        f"<strong>{said(line.state.capitalize())}:</strong> {escape(line.title)}.{found}"
        f"<small>{note} {escape(line.source)}</small></p></div>"
    )


_NOTHING: State = "nothing to hold it to"
