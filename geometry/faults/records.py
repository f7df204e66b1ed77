"""What the records know of a place in the file: the keys a table may hold, a number's limits."""

from typing import Any, get_args

from pydantic import BaseModel

from geometry.faults.lines import Path
from geometry.project import Design


def keys_at(path: Path) -> list[str]:
    """Return the keys a table may hold."""
    model = _model_at(path)
    return [f.alias or name for name, f in model.model_fields.items()] if model else []


def _model_at(path: Path) -> type[BaseModel] | None:
    """Return the record of a table, found by walking the records along the path."""
    model: type[BaseModel] = Design
    for step in path:
        if isinstance(step, int):
            continue
        fields = {f.alias or name: f for name, f in model.model_fields.items()}
        inner = _model_in(fields[step].annotation) if step in fields else None
        if inner is None:
            return None
        model = inner
    return model


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in get_args(annotation):
        found = _model_in(inner)
        if found:
            return found
    return None


def limits_at(path: Path) -> list[Any]:
    """Return the limits a number's field carries."""
    model = _model_at(path[:-1])
    field = model.model_fields.get(str(path[-1])) if model else None
    return field.metadata if field else []


def takes_truth(path: Path) -> bool:
    """Return whether a key takes true or false."""
    model = _model_at(path[:-1])
    field = model.model_fields.get(str(path[-1])) if model and path else None
    return field is not None and _has_truth(field.annotation)


def _has_truth(annotation: Any) -> bool:
    return annotation is bool or any(_has_truth(inner) for inner in get_args(annotation))
