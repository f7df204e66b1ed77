"""The words of the app in another language: the English words are the keys.

English is what stands in the code and has no file. Another language is one file in the folder
`app`, named by its code. Names of materials and of parts come from the files crews' pages speak.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from geometry.materials.catalogue import find
from viz.language.reader import NATIVE, language

FOLDER = Path(__file__).parent / "app"


@cache
def screen_codes() -> tuple[str, ...]:
    """Return the codes of the languages the app speaks, the native one first."""
    return (NATIVE, *sorted(file.stem for file in FOLDER.glob("*.toml")))


@cache
def screen_words(code: str) -> Mapping[str, str]:
    """Return a language's words by the English ones; none for the native language.

    code: one of `screen_codes`.
    """
    if code == NATIVE:
        return {}
    text = (FOLDER / f"{code}.toml").read_text(encoding="utf-8")
    return {**_named(code), **tomllib.loads(text)}


def _named(code: str) -> dict[str, str]:
    """Return the names of parts and of materials."""
    own, native = language(code).words, language(NATIVE).words
    parts = {native[key]: said for key, said in own.items() if key.startswith("role.")}
    keys = (key.removeprefix("material.") for key in own if key.startswith("material."))
    return parts | {row.name: own[f"material.{key}"] for key in keys if (row := find(key))}
