"""Lists of tables in the design file's text: one more entry, one less, comments kept.

Where the file holds one table (`[drain]`), one more turns it into a list (`[[drain]]`).
"""

import re
import tomllib
from collections.abc import Mapping, Sequence
from typing import Any

from geometry.errors import DesignError, Fault
from geometry.faults.lines import Path, headers
from geometry.faults.places import in_words, inside
from geometry.faults.text import raw_design


def added(text: str, path: Path, entry: Mapping[str, Any]) -> str:
    """Return the text with one more entry at the end of a list of tables.

    path: of the list, such as ("drain",) or ("drain", 0, "daylight"); its last step is a key.
    entry: values of plain kinds, no tables. Raises DesignError where the text is no TOML, or where
    it is written in a way that cannot be added to.
    """
    raw = raw_design(text)
    here = inside(raw, path)
    before = _entries(here)
    wanted = [*before, dict(entry)]
    alone = inside(raw, path[:-1]) is None
    if not alone and not _under_headings(text, path if before else path[:-1]):
        return _checked(_in_line(text, path, wanted), path, wanted)
    lines = _as_list(text, path) if isinstance(here, dict) else _lines(text)
    at = _end_of(lines, () if alone else path[:-1])
    block = ["", f"[[{_name(path)}]]", *(f"{k} = {_said(v)}" for k, v in entry.items())]
    return _checked(_joined([*lines[:at], *block, *lines[at:]]), path, wanted)


def without(text: str, path: Path) -> str:
    """Return the text without one entry of a list of tables, or without a single table.

    path: of the entry, such as ("drain", 1), or of the table. Notes right above its heading go
    with it. Raises DesignError like `added`.
    """
    last = path[-1]
    home, number = (path[:-1], last) if isinstance(last, int) else (path, 0)
    rows = _entries(inside(raw_design(text), home))
    if not 0 <= number < len(rows):
        return text
    kept = [row for n, row in enumerate(rows) if n != number]
    if not _under_headings(text, home):
        return _checked(_in_line(text, home, kept), home, kept)
    lines = _lines(text)
    places = headers(text)
    for n in reversed(range(len(places))):
        line, head = places[n]
        if head[: len(path)] == path:
            end = places[n + 1][0] - 1 if n + 1 < len(places) else len(lines)
            lines[_over(lines, line - 1) : _over(lines, end)] = []
    return _checked(_joined(lines[: _trimmed(lines, len(lines))]), home, kept)


def _entries(value: Any) -> list[Any]:
    """Return the entries of a list; a single table is a list of one."""
    if isinstance(value, dict):
        return [value]
    return list(value) if isinstance(value, list) else []


def _under_headings(text: str, path: Path) -> bool:
    """Whether what a path holds stands under headings of its own, not within a line."""
    return not path or any(head[: len(path)] == path for _, head in headers(text))


def _as_list(text: str, path: Path) -> list[str]:
    """Return the lines with a single table's heading as that of a list."""
    lines, name = _lines(text), _name(path)
    start, head = next(at for at in headers(text) if at[1][: len(path)] == path)
    if head == path:
        lines[start - 1] = re.sub(r"\[(.*?)\]", r"[[\1]]", lines[start - 1], count=1)
    else:
        lines.insert(start - 1, f"[[{name}]]")
    return lines


def _end_of(lines: list[str], parent: Path) -> int:
    """Return the number of the line before which what follows the parent's tables begins."""
    end = len(lines)
    if parent:
        places = headers(_joined(lines))
        last = 1 + max(n for n, (_, head) in enumerate(places) if head[: len(parent)] == parent)
        end = places[last][0] - 1 if last < len(places) else end
    return _trimmed(lines, _over(lines, end))


def _over(lines: list[str], at: int) -> int:
    """Return where the notes right above a heading begin; at: the heading's number from 0."""
    if at >= len(lines):
        return len(lines)
    while at and lines[at - 1].lstrip().startswith("#"):
        at -= 1
    return at


def _trimmed(lines: list[str], at: int) -> int:
    while at and not lines[at - 1].strip():
        at -= 1
    return at


def _in_line(text: str, path: Path, rows: Sequence[Mapping[str, Any]]) -> str:
    """Return the text with a list that is written within a line set anew."""
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    listed = tomlkit.array()
    for row in rows:
        table = tomlkit.inline_table()
        table.update(dict(row))
        listed.append(table)
    try:
        document: Any = tomlkit.parse(text)
        here = document
        for step in path[:-1]:
            here = here[step]
        here.pop(path[-1], None)
        if rows:
            here[path[-1]] = listed
        return str(tomlkit.dumps(document))
    except (TOMLKitError, KeyError, IndexError, TypeError, AttributeError):
        return text


def _name(path: Path) -> str:
    return ".".join(step for step in path if isinstance(step, str))


def _said(value: Any) -> str:
    import tomlkit

    return str(tomlkit.item(value).as_string())


def _lines(text: str) -> list[str]:
    """Return the lines as the scanner counts them: only a line feed ends one."""
    return text.removesuffix("\n").split("\n")


def _joined(lines: Sequence[str]) -> str:
    return "\n".join(lines) + "\n" if lines else ""


def _checked(text: str, path: Path, rows: Sequence[Any]) -> str:
    """Return the text if it says what it should. Raises DesignError."""
    try:
        found = _entries(inside(tomllib.loads(text), path))
    except tomllib.TOMLDecodeError:
        found = [None]
    if found != list(rows):
        name = _name(path)
        sentence = f"cannot be changed here; write each as [[{name}]] under Design file"
        raise DesignError((Fault(in_words(path, {}) or "design", sentence),))
    return text
