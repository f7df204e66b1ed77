"""What is finished: one small file a design, named by its content and the program's version."""

import json
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from geometry.designfile import FileError, load, save
from viz.batch.designs import Asked
from viz.batch.outcome import FORMAT, Outcome, from_json, program

RESULTS, SETS = "results", "sets"
_LONGEST = 80


@dataclass(frozen=True)
class Store:
    """The folder a batch writes into. Every file is written whole or not at all."""

    folder: Path

    def key(self, asked: Asked) -> str:
        """Return what names a design's result: its text, its changes, the program's version."""
        told = json.dumps([FORMAT, program(), asked.text, asked.edits, asked.unread])
        return sha256(told.encode()).hexdigest()

    def kept(self, key: str) -> Outcome | None:
        """Return the outcome that is kept under a key; None without a sound one."""
        try:
            return from_json(load(self._result(key)))
        except FileError:
            return None

    def keep(self, key: str, outcome: Outcome) -> None:
        """Keep an outcome. Raises FileError."""
        save(self._result(key), outcome.to_json())

    def _result(self, key: str) -> Path:
        return self.folder / RESULTS / f"{key}.json"

    def keep_set(self, name: str, pdf: bytes) -> None:
        """Keep a design's permit set. Raises FileError."""
        save(self.set_file(name), pdf)

    def has_set(self, name: str) -> bool:
        """Whether a design's permit set was written."""
        return self.set_file(name).exists()

    def set_file(self, name: str) -> Path:
        """Return the file of a design's permit set: its name, folders kept, odd signs replaced."""
        parts = [_plain(part) for part in name.split("/")]
        return self.folder / SETS / Path(*parts).with_name(f"{parts[-1]}.pdf")


def _plain(part: str) -> str:
    """Return a name that every system takes for a file; a long one, or a changed one, is marked."""
    kept = "".join(c if c.isalnum() or c in " ._-," else "-" for c in part).strip(" .")
    if kept == part and len(kept) <= _LONGEST:
        return kept
    return f"{kept[:_LONGEST]}-{sha256(part.encode()).hexdigest()[:6]}"
