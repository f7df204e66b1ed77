"""Tables within a line, and room between headings, as a builder's file has them."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import tomlkit

from geometry.faults.lines import headers


def inline(row: Mapping[str, str]) -> Any:
    """Return a table within a line: `{ width = "12 in" }`."""
    return tomlkit.parse(f"row = {_braced(row)}\n")["row"]


def listed(rows: Sequence[Mapping[str, str]]) -> Any:
    """Return a list of tables, one a line."""
    lines = "".join(f"    {_braced(row)},\n" for row in rows)
    return tomlkit.parse(f"rows = [\n{lines}]\n")["rows"]


def spaced(before: str, after: str) -> str:
    """Return a text that was changed with an empty line over each heading that lost its own."""
    old = before.split("\n")
    follows = set(pairwise(old))
    lines = after.split("\n")
    for number, _ in reversed(headers(after)):
        over = lines[number - 2] if number > 1 else ""
        if over.strip() and not over.startswith("#") and (over, lines[number - 1]) not in follows:
            lines.insert(number - 1, "")
    return "\n".join(lines)


def _braced(row: Mapping[str, str]) -> str:
    pairs = (f"{key} = {tomlkit.item(value).as_string()}" for key, value in row.items())
    return f"{{ {', '.join(pairs)} }}"
