"""The design file: text to a sound design or all its faults, edits that keep comments, saving."""

import os
import tempfile
from pathlib import Path as FilePath
from typing import IO, Any

from pydantic import ValidationError

from geometry.errors import BedcourseError, DesignError, Fault
from geometry.faults.common import At, Words
from geometry.faults.find import faults, own_faults
from geometry.faults.lines import Path, lines_by_path
from geometry.faults.mending import mended, stands
from geometry.faults.places import fault_at, in_words, single, written_at
from geometry.faults.reading import reading_faults, refused_paths
from geometry.faults.text import LARGEST_BYTES, MOST_ODD, cleaned, odd_values, raw_design
from geometry.project import Design, inherited

# Leaving refused values out can bring up a few more, such as a list that is now missing.
ATTEMPTS = 3
MOST_FAULTS = 50


class FileError(BedcourseError):
    """A file that cannot be opened, decoded or written."""


def read_design(text: str) -> Design:
    """Return the design a TOML text describes. Raises DesignError with every fault at once."""
    text = cleaned(text)
    raw = raw_design(text)
    design, found = _read(raw)
    if not found and design is not None:
        found = faults(design)
    if found or design is None:
        lines = lines_by_path(text)
        raise DesignError(_in_order([fault_at(*at, raw, lines) for at in _once(found, raw)]))
    return design


def _read(raw: dict[str, Any]) -> tuple[Design | None, list[At]]:
    """Return the design with stand-ins for refused values, and all that was refused.

    What else is wrong is looked for as well, as far as it does not hang on refused values.
    """
    context = {"numbers": _numbers(raw)}
    refused = odd_values(raw)
    if len(refused) >= MOST_ODD:
        return None, refused
    sound = mended(raw, [at.path for at in refused])
    left_out = [at.path for at in refused]
    design = None
    for _ in range(ATTEMPTS):
        try:
            design = Design.model_validate(sound, context=context)
            break
        except ValidationError as error:
            whole = inherited(sound)
            rows = reading_faults(error, whole, _words(raw))
            written = [At(written_at(at.path, raw), at.sentence) for at in rows]
            refused += [at for at in written if at.path not in left_out]
            left_out += [written_at(path, raw) for path in refused_paths(error, whole)]
            sound = mended(sound, left_out)
    if refused and design is not None:
        others = [At(written_at(at.path, raw), at.sentence) for at in own_faults(design)]
        refused += [at for at in others if stands(at.path, left_out)]
    return design, refused


def _words(raw: dict[str, Any]) -> Words:
    project = raw.get("project")
    metric = isinstance(project, dict) and project.get("units") == "metric"
    return Words("metric" if metric else "ft-in")


def _numbers(raw: dict[str, Any]) -> Any:
    project = raw.get("project")
    unit = project.get("numbers") if isinstance(project, dict) else None
    return unit if unit in ("ft", "in", "m", "mm") else None


def _once(found: list[At], raw: dict[str, Any]) -> list[At]:
    """Return the faults less those that repeat, for another area, what the house's table says."""
    kept: dict[tuple[Path, str], At] = {}
    for at in found:
        home, alone = written_at(at.path, raw), single(at.path, raw)
        kept.setdefault((home, "" if home != alone else at.sentence), at)
    return list(kept.values())


def _in_order(found: list[Fault]) -> tuple[Fault, ...]:
    """Return the faults once each, from the top of the file down; not more than one can read."""
    unique = sorted(dict.fromkeys(found), key=lambda fault: fault.line or 0)
    if len(unique) > MOST_FAULTS:
        unique[MOST_FAULTS:] = [Fault("design", "more faults follow; mend these first")]
    return tuple(unique)


def load(path: FilePath) -> str:
    """Return the text of a design file or a list. Raises FileError in one sentence."""
    return decoded(load_bytes(path), str(path))


def load_bytes(path: FilePath, largest: int = LARGEST_BYTES) -> bytes:
    """Return what a file holds, so many bytes at most. Raises FileError in one sentence."""
    try:
        # Not by its size: a pipe or a device tells none.
        with path.open("rb") as file:
            return limited(file, str(path), largest)
    except (OSError, ValueError) as error:
        raise FileError(f"{path} cannot be read: {_reason(error)}") from None


def limited(file: IO[bytes], name: str, largest: int = LARGEST_BYTES) -> bytes:
    """Return what an open file holds. Raises FileError where it is larger than so many bytes."""
    data = file.read(largest + 1)
    if len(data) > largest:
        raise FileError(f"{name} is larger than {largest // 10**6} MB; is it the right file?")
    return data


def decoded(data: bytes, name: str) -> str:
    """Return bytes as text. Raises FileError where they are not UTF-8."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(f"{name} is not UTF-8 text; save it as UTF-8") from None


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
    except (OSError, ValueError) as error:
        raise FileError(f"{path} cannot be written: {_reason(error)}") from None


def _reason(error: OSError | ValueError) -> str:
    """Return why in words; a ValueError comes of a sign that no name of a file can hold."""
    words = error.strerror if isinstance(error, OSError) else "no file can have this name"
    return (words or type(error).__name__).lower()


def edited(text: str, path: Path, value: Any) -> str:
    """Return the text with one value set, comments and order kept; None takes the key out.

    Tables on the way are made where missing. Raises DesignError if the text is not TOML.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    raw_design(text)
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
