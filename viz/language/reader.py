"""One language, read from its file: words by key, with places for figures.

A language is one TOML file in this folder, named by its code. Adding one is adding that file: every
key of the others, with the same places for figures, and a name for every material of the catalogue.
"""

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from geometry.errors import BedcourseError
from geometry.materials.catalogue import find

_FOLDER = Path(__file__).parent
# The catalogue and the names of parts speak this language already.
NATIVE = "en"


@dataclass(frozen=True)
class Language:
    """One language. words: text by key, tables and their keys joined by points."""

    code: str
    words: Mapping[str, str]

    @property
    def name(self) -> str:
        """What the language calls itself."""
        return self.words["name"]

    def say(self, key: str, **figures: str) -> str:
        """Return the words of a key with figures in their places. Raises KeyError."""
        return self.words[key].format(**figures)

    def knows(self, key: str) -> bool:
        """Tell whether there are words for a key."""
        return key in self.words

    def material(self, key: str) -> str:
        """Return a material's name; of one that the language lacks, the catalogue's, or the key."""
        row = find(key)
        own = self.words.get(f"material.{row.key}") if row else None
        return own or (row.name if row else key)

    def units(self, text: str) -> str:
        """Return a printed figure with its unit in this language: `1/16 in per ft`, `10 mil`."""
        return _UNIT.sub(lambda found: self.words[f"units.{found[0]}"], text)


_UNIT = re.compile(r"(?<=\d )(?:in per ft|ft²|ft³|yd³|ft|mil|tons)(?![\w²³])")


@lru_cache(maxsize=1)
def codes() -> tuple[str, ...]:
    """Return the codes of all languages, the native one first."""
    found = {file.stem for file in _FOLDER.glob("*.toml")}
    return (NATIVE, *sorted(found - {NATIVE}))


@lru_cache(maxsize=8)
def language(code: str) -> Language:
    """Return the language of a code such as "es". Raises BedcourseError for one not there."""
    known = code.strip().casefold()
    if known not in codes():
        raise BedcourseError(
            f"{code!r} is not a language here; choose one of: {', '.join(codes())}"
        )
    text = (_FOLDER / f"{known}.toml").read_text(encoding="utf-8")
    return Language(known, dict(_flat(tomllib.loads(text))))


def _flat(table: Mapping[str, Any], lead: str = "") -> Iterator[tuple[str, str]]:
    for key, value in table.items():
        if isinstance(value, dict):
            yield from _flat(value, f"{lead}{key}.")
        else:
            yield f"{lead}{key}", str(value)
