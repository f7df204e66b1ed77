"""The words of tables in the app's language: cells of its own words, the others as they are."""

import re
from collections.abc import Iterator
from functools import cache

from viz.panels.spoken import later, said

# Words with a name in them, the narrower first: a layer, a pier, a corner.
_SHAPED = later((
    "{of} top (finished floor)", "column {of} top", "pad {of} top", "pad {of} bottom", "{of} top",
    "drain invert, corner {of}", "Pier pad {of}", "Pier column {of}", "Cleanout at corner {of}",
    "Foundation wall, {of}",
))  # fmt: skip


def cell(words: str) -> str:
    """Return a cell as it is said; its name of a layer as well, where that is a usual one."""
    told = said(words)
    if told != words:
        return told
    return next((said(shape, of=said(name)) for shape, name in _found(words)), words)


def _found(words: str) -> Iterator[tuple[str, str]]:
    for shape, pattern in _patterns():
        if match := pattern.fullmatch(words):
            yield shape, match[1]


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    kept = ((shape, re.escape(shape).replace(re.escape("{of}"), "(.+)")) for shape in _SHAPED)
    return tuple((shape, re.compile(pattern)) for shape, pattern in kept)
