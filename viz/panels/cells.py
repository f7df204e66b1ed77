"""The words of tables in the app's language: cells of its own words, the others as they are."""

import re
from functools import cache

from viz.panels.spoken import later, said

# Words with a name or a count in them, the narrower first.
_SHAPED = later((
    "{of} top (finished floor)", "column {of} top", "pad {of} top", "pad {of} bottom", "{of} top",
    "drain invert, corner {of}", "Pier pad {of}", "Pier column {of}", "Cleanout at corner {of}",
    "Foundation wall, {of}", "Elbow {of}", "Tape for {of}", "Footing bars {of}",
    "{count} boards", "{count} board", "{count} rolls", "{count} roll", "{count} sticks",
    "{count} stick", "{count} pieces",
    "{count} piece", "{count} cans", "{count} can", "{count} laps",
    "Pump dead at the peak: to {of}", "U of floor, {of} of it cold",
))  # fmt: skip
# A name is of three words at most: what is longer is a sentence.
_PLACES = {"{of}": r"(?P<of>[^;\s]+(?: [^;\s]+){0,2})", "{count}": r"(?P<count>[\d,.]+)"}


def cell(words: str) -> str:
    """Return a cell as it is said, with the usual names of layers and the counts in it."""
    told = said(words)
    if told != words:
        return told
    for shape, pattern in _patterns():
        if match := pattern.fullmatch(words):
            return said(shape, **{key: said(name) for key, name in match.groupdict().items()})
    return _placed(words)


def _placed(words: str) -> str:
    """Return a thing and its place, such as a layer and its area, with the thing said."""
    thing, comma, place = words.partition(", ")
    return f"{said(thing)}, {said(place)}" if comma and place.isalpha() else words


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((shape, re.compile(_pattern(shape))) for shape in _SHAPED)


def _pattern(shape: str) -> str:
    pattern = re.escape(shape)
    for place, meant in _PLACES.items():
        pattern = pattern.replace(re.escape(place), meant)
    return pattern
