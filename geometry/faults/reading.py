"""Faults found while reading: unknown keys, wrong kinds of value, missing names."""

from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any, get_args

from pydantic import BaseModel, ValidationError

from geometry.errors import Fault
from geometry.faults.places import Path, in_words, line_of
from geometry.project import Design

_MANY = {"too_short": "too few entries", "too_long": "too many entries"}


def reading_faults(error: ValidationError, raw: Any, lines: Mapping[Path, int]) -> list[Fault]:
    """Return one fault for each thing pydantic refused."""
    faults = []
    rows = [(clean_path(tuple(row["loc"]), raw), row) for row in error.errors(include_url=False)]
    for path, row in rows:
        if row["type"] == "too_short" and any(
            p[: len(path)] == path and p != path for p, _ in rows
        ):
            continue  # only short because its own entries were refused
        sentence = _sentence(row["type"], path, row)
        faults.append(Fault(in_words(path, raw) or "design", sentence, line_of(path, lines)))
    return faults


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


def _sentence(kind: str, path: Path, row: Any) -> str:
    context: dict[str, Any] = row.get("ctx") or {}
    value = row.get("input")
    if kind == "design":
        return str(context["sentence"])
    if kind == "extra_forbidden":
        return _unknown(path)
    if kind == "missing":
        return f"{path[-1]} is missing; add a line `{path[-1]} = ...`"
    if kind == "literal_error":
        return f"{value!r} is not known; write one of {context['expected']}"
    if kind in _MANY:
        return f"{_MANY[kind]}: {_count(context)}"
    return _plain(kind, value, context)


def _plain(kind: str, value: Any, context: dict[str, Any]) -> str:
    limits = [f"{k.replace('_', ' ')} {v}" for k, v in _LIMITS(context)]
    if limits:
        return f"{value!r} is out of range; give a number {' and '.join(limits)}"
    wanted = {
        "string_type": "a text in quotes", "int_parsing": "a whole number", "int_type": "a whole number",
        "int_from_float": "a whole number", "float_parsing": "a number", "float_type": "a number",
        "bool_type": "true or false", "tuple_type": "a list in [ ]", "model_type": "a table of keys",
        "model_attributes_type": "a table of keys", "dict_type": "a table of keys", "finite_number": "a number",
    }.get(kind, "something else")  # fmt: skip
    return f"{_short(value)} does not fit here; give {wanted}"


def _LIMITS(context: dict[str, Any]) -> list[tuple[str, Any]]:  # noqa: N802
    words = {"ge": "of at least", "gt": "above", "le": "of at most", "lt": "below"}
    return [(words[k], context[k]) for k in words if k in context]


def _short(value: Any) -> str:
    text = repr(value)
    return text if len(text) <= 40 else text[:37] + "..."


def _count(context: dict[str, Any]) -> str:
    least, most = context.get("min_length"), context.get("max_length")
    wanted = f"at least {least}" if least is not None else f"at most {most}"
    return f"there are {context.get('actual_length')}, give {wanted}"


def _unknown(path: Path) -> str:
    known = _keys_at(path[:-1])
    close = get_close_matches(str(path[-1]), known, n=1, cutoff=0.5)
    hint = f"did you mean {close[0]}?" if close else f"known here: {', '.join(known)}"
    return f"{path[-1]} is not known here; {hint}"


def _keys_at(path: Path) -> list[str]:
    """Return the keys a table may hold, found by walking the models along the path."""
    model: type[BaseModel] = Design
    for step in path:
        if isinstance(step, int):
            continue
        fields = {f.alias or name: f for name, f in model.model_fields.items()}
        inner = _model_in(fields[step].annotation) if step in fields else None
        if inner is None:
            return []
        model = inner
    return [f.alias or name for name, f in model.model_fields.items()]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in get_args(annotation):
        found = _model_in(inner)
        if found:
            return found
    return None
