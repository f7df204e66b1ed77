"""Faults found while reading: unknown keys, wrong kinds of value, missing names."""

import re
from difflib import get_close_matches
from typing import Any

from pydantic import ValidationError

from geometry.faults.common import At, Words
from geometry.faults.floors import ROLE_SPAN
from geometry.faults.lines import Path
from geometry.faults.records import keys_at, limits_at

LONGEST_SENTENCE = 400
# More refused values than one can mend at a time are left for the next reading.
MOST_ROWS = 200
QUOTE = '"'
_MANY = {"too_short": "too few entries", "too_long": "too many entries"}
_RANGE = re.compile(r"out of range; give (?P<low>.+?) to (?P<high>.+?)(?:, such as (?P<like>.+))?$")
_WANTED = {
    "string_type": "a text in quotes", "int_parsing": "a whole number",
    "int_type": "a whole number", "int_from_float": "a whole number",
    "float_parsing": "a number", "float_type": "a number", "finite_number": "a number",
    "tuple_type": "a list in [ ]", "model_type": "a table of keys",
    "model_attributes_type": "a table of keys", "dict_type": "a table of keys",
    "bool_type": "true or false",
}  # fmt: skip


def reading_faults(error: ValidationError, raw: Any, words: Words) -> list[At]:
    """Return one fault for each thing pydantic refused.

    raw: the design's tables, the house's keys written under each area's own.
    """
    rows = [(clean_path(tuple(row["loc"]), raw), row) for row in _rows(error)]
    holding = {path[:end] for path, _ in rows for end in range(len(path))}
    meant = {_meant(path) for path, row in rows if row["type"] == "extra_forbidden"}
    found: dict[Path, At] = {}
    for path, row in rows:
        # What holds a refused entry is not at fault itself; nor is a key missing that is misspelt.
        if path not in found and path not in holding and path not in meant:
            found[path] = At(path, _cut(_sentence(row["type"], path, row, words)))
    return list(found.values())


def refused_paths(error: ValidationError, raw: Any) -> list[Path]:
    """Return the path of everything pydantic refused."""
    return [clean_path(tuple(row["loc"]), raw) for row in _rows(error)]


def _rows(error: ValidationError) -> list[Any]:
    return list(error.errors(include_url=False)[:MOST_ROWS])


def _meant(path: Path) -> Path:
    """Return the path a misspelt key most likely means; an empty key if none is close."""
    close = get_close_matches(str(path[-1]), keys_at(path[:-1]), n=1)
    return (*path[:-1], *(close or [""]))


def _cut(sentence: str) -> str:
    return sentence if len(sentence) <= LONGEST_SENTENCE else f"{sentence[:LONGEST_SENTENCE]}..."


def clean_path(loc: Path, raw: Any) -> Path:
    """Leave out of a path what pydantic adds to it (names of union members and validators)."""
    path: list[str | int] = []
    here = raw
    for number, step in enumerate(loc):
        last = number == len(loc) - 1
        inside = isinstance(here, dict) and step in here
        within = isinstance(here, list) and isinstance(step, int) and step < len(here)
        if inside or within:
            here = here[step]
            path.append(step)
        elif last and isinstance(here, dict):
            path.append(step)
    return tuple(path)


def _sentence(kind: str, path: Path, row: Any, words: Words) -> str:
    context: dict[str, Any] = row.get("ctx") or {}
    value = row.get("input")
    if kind == "design":
        return _in_units(str(context["sentence"]), words)
    if kind == "extra_forbidden":
        return _unknown(path)
    if kind == "missing":
        return _missing(path)
    if path[-1:] == ("sides",):
        return f'{_short(value)} does not fit here; write "all" or a list such as [1, 2]'
    if kind == "literal_error":
        return f"{_short(value)} is not known; write {context['expected']}"
    if kind in _MANY:
        return f"{_MANY[kind]}: {_count(context)}"
    return _range(path, value, context) or _kind(kind, path, value)


def _in_units(sentence: str, words: Words) -> str:
    """Return a sentence about a range with its limits in the design's units."""
    found = _RANGE.search(sentence)
    if words.system == "ft-in" or not found:
        return sentence
    if found["low"] == "level":
        return sentence[: found.start()] + "out of range; give level to 25 %, such as 1 %"
    span = words.span(found["low"], found["high"])
    like = f", such as {words.limit(found['like'], up=True)}" if found["like"] else ""
    return f"{sentence[: found.start()]}out of range; give {span}{like}"


def _missing(path: Path) -> str:
    needs = {
        "project": 'add a table [project] with name = "..."',
        "area": "add a table [[area]] with name and corners",
        "corners": 'add corners = ["0, 0", "36 ft, 0", ...], in order round the house',
        "at": 'add at = "18 ft, 14 ft", its centre on the plan',
        "name": 'add name = "..." with a short name',
        "material": 'add material = "..." with a material of the catalogue, such as "stone-57"',
        "thickness": 'add thickness = "4 in" or what it measures in place',
        "off": 'add off = "4 in", the water above the pit\'s bottom at which the pump stops',
        "on": 'add on = "12 in", the water above the pit\'s bottom at which the pump starts',
        "point": 'add point = "crown" or another point of the drain',
        "level": 'add level = "footing bottom", "slab bottom -2 in" or another level',
        "length": 'add length = "40 ft", the pipe from the pump with its fittings counted in',
        "inside": 'add inside = "1.6 in", what the pipe measures inside',
        "sieves": 'add sieves = ["1 in, 100 %", "1/2 in, 40 %", "No. 4, 5 %"], as tested',
        "role": f"add role = one of {', '.join(ROLE_SPAN)}",
    }
    if path[0] == "height_rule":
        needs["at"] = 'add at = "at or below" or "at or above"'
    key = str(path[-1])
    return f"{key} is missing; {needs.get(key, f'add {key} = ...')}"


def _range(path: Path, value: Any, context: dict[str, Any]) -> str:
    if "ge" not in context and "le" not in context:
        return ""
    low, high = context.get("ge"), context.get("le")
    for limit in limits_at(path):
        low, high = getattr(limit, "ge", low), getattr(limit, "le", high)
    if low is None or high is None:
        wanted = f"at least {low:g}" if high is None else f"at most {high:g}"
    else:
        wanted = f"{low:g} to {high:g}"
    return f"{_short(value)} is out of range; give {wanted}"


def _kind(kind: str, path: Path, value: Any) -> str:
    name = path[-1] if path else "design"
    if kind == "tuple_type" and isinstance(value, dict):
        return f"this is one table where a list is needed; write [[{name}]] in double brackets"
    if kind == "model_type" and isinstance(value, list):
        return f"this is a list where one table is needed; write [{name}] in single brackets, once"
    return f"{_short(value)} does not fit here; give {_WANTED.get(kind, 'a text in quotes')}"


def _short(value: Any) -> str:
    """Return a value as it stands in the file, cut to a few words."""
    if isinstance(value, dict):
        return "a table"
    text = f'"{value}"' if isinstance(value, str) else str(value)
    return text if len(text) <= 40 else text[:37] + "..."


def _count(context: dict[str, Any]) -> str:
    least, most = context.get("min_length"), context.get("max_length")
    wanted = f"at least {least}" if least is not None else f"at most {most}"
    return f"there are {context.get('actual_length')}, give {wanted}"


def _unknown(path: Path) -> str:
    meant = str(_meant(path)[-1])
    hint = f"did you mean {meant}?" if meant else f"known here: {', '.join(keys_at(path[:-1]))}"
    return f"{_short(path[-1]).strip(QUOTE)} is not known here; {hint}"
