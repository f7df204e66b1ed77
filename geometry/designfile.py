"""The design file: TOML text to a sound design or all its faults, edits that keep comments, saving."""

import os
import tempfile
import tomllib
from collections.abc import Mapping
from pathlib import Path as FilePath
from typing import Any

from pydantic import ValidationError

from geometry.errors import BedcourseError, DesignError, Fault
from geometry.faults.find import faults
from geometry.faults.places import Path, in_words, line_of, lines_by_path
from geometry.faults.reading import clean_path, reading_faults
from geometry.project import Design

# Far more than any house needs; a larger file is a mistake or a trick.
LARGEST_BYTES = 1_000_000


class FileError(BedcourseError):
    """A file that cannot be opened, decoded or written."""


def read_design(text: str) -> Design:
    """Return the design a TOML text describes. Raises DesignError with every fault at once."""
    raw = _toml(text)
    lines = lines_by_path(text)
    context = {"numbers": _numbers(raw)}
    try:
        design = Design.model_validate(raw, context=context)
    except ValidationError as error:
        found = reading_faults(error, raw, lines)
        raise DesignError(tuple(found + _rest(raw, error, lines, context))) from None
    found = [_placed(path, sentence, raw, lines) for path, sentence in faults(design)]
    if found:
        raise DesignError(tuple(found))
    return design


def _toml(text: str) -> dict[str, Any]:
    if len(text) > LARGEST_BYTES:
        raise DesignError(
            (Fault("design", "the file is larger than 1 MB; a design is a few pages of text"),)
        )
    try:
        return tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except tomllib.TOMLDecodeError as error:
        raise DesignError(
            (Fault("design", f"this is not TOML: {str(error)[:200]}; {_TOML_HELP}"),)
        ) from None
    except RecursionError:
        raise DesignError((Fault("design", "the tables are nested too deep to read"),)) from None


_TOML_HELP = (
    "write key = value lines, with lengths in quotes; an inch mark inside is written \\\" or '5 in'"
)


def _numbers(raw: dict[str, Any]) -> Any:
    project = raw.get("project")
    unit = project.get("numbers") if isinstance(project, dict) else None
    return unit if unit in {"ft", "in", "m", "mm"} else None


def _placed(path: Path, sentence: str, raw: Any, lines: Mapping[Path, int]) -> Fault:
    return Fault(in_words(path, raw), sentence, line_of(path, lines))


def _rest(
    raw: dict[str, Any], error: ValidationError, lines: Mapping[Path, int], context: Any
) -> list[Fault]:
    """Return the faults of everything else: refused keys are left out and the rest looked at again."""
    mended = raw
    for row in error.errors(include_url=False):
        path = clean_path(tuple(row["loc"]), raw)
        mended = _without(mended, path[:-1] if row["type"] == "missing" else path)
    mended = {**mended, "project": {"name": "unnamed", **(mended.get("project") or {})}}
    try:
        design = Design.model_validate(mended, context=context)
    except ValidationError:
        return []
    return [_placed(path, sentence, raw, lines) for path, sentence in faults(design)]


def _without(raw: Any, path: Path) -> Any:
    """Return raw data less what stands at a path; inside a list, less the whole list."""
    if not path:
        return raw
    step, rest = path[0], path[1:]
    if isinstance(raw, dict) and step in raw:
        if not rest or (isinstance(raw[step], list) and len(rest) == 1):
            return {k: v for k, v in raw.items() if k != step}
        return {**raw, step: _without(raw[step], rest)}
    if isinstance(raw, list) and isinstance(step, int) and step < len(raw):
        return [*raw[:step], _without(raw[step], rest), *raw[step + 1 :]]
    return raw


def load(path: FilePath) -> str:
    """Return a design file's text. Raises FileError in one sentence."""
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise FileError(f"{path} is larger than 1 MB; a design is a few pages of text")
        return path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(f"{path} is not UTF-8 text; save it as UTF-8") from None
    except OSError as error:
        raise FileError(f"{path} cannot be read: {_reason(error)}") from None


def save(path: FilePath, content: str | bytes) -> None:
    """Write a file whole or not at all: beside it first, then in its place. Raises FileError."""
    data = content.encode() if isinstance(content, str) else content
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            FilePath(name).chmod(0o644)
            FilePath(name).replace(path)
        except BaseException:
            FilePath(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise FileError(f"{path} cannot be written: {_reason(error)}") from None


def _reason(error: OSError) -> str:
    return (error.strerror or type(error).__name__).lower()


def edited(text: str, path: Path, value: Any) -> str:
    """Return the text with one value set, comments and order kept; None takes the key out.

    Tables on the way are made where missing. Raises DesignError if the text is not TOML.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    _toml(text)
    try:
        document = tomlkit.parse(text)
        here: Any = document
        for step in path[:-1]:
            if isinstance(step, str) and step not in here:
                here[step] = tomlkit.table()
            here = here[step]
        if value is None:
            here.pop(path[-1], None)
        else:
            here[path[-1]] = value
        return tomlkit.dumps(document)
    except (TOMLKitError, KeyError, IndexError, TypeError) as error:
        raise DesignError(
            (Fault(in_words(path, {}), f"cannot be changed here: {error}"),)
        ) from None


def start_text() -> str:
    """Return a first design file: ten lines that matter, the rest as comments."""
    return (FilePath(__file__).parent / "start.toml").read_text(encoding="utf-8")
