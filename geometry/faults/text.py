"""The design file's text to a plain table, or what keeps it from being read."""

import re
import tomllib
from typing import Any

from geometry.errors import DesignError, Fault
from geometry.faults.common import At
from geometry.faults.lines import Path
from geometry.faults.records import takes_truth

# Far more than any house needs; what is larger is a mistake or a trick.
LARGEST_BYTES = 1_000_000
LONGEST_LINE = 10_000
DEEPEST = 10
# Keys of one table; values and tables in all: 20 areas of 400 corners and 200 piers are 60,000.
MOST_KEYS = 200
MOST_VALUES = 100_000
LARGEST_NUMBER = 10**12
MOST_ODD = 200

_HELP = "write key = value lines, lengths in quotes; an inch mark inside is \\\" or '5\"'"
_PLACE = re.compile(r"\s*\((?:at line (?P<line>\d+), column \d+|at end of document)\)")
_KNOWN = {
    "Cannot overwrite a value": "this key is set twice; leave one of the two out",
    "Cannot mutate immutable namespace": "this key is set twice; leave one of the two out",
    "Cannot declare": "this table is written twice; put its keys together under one [name]",
    "Duplicate inline table key": "this key is set twice inside { }; leave one of the two out",
}


def raw_design(text: str) -> dict[str, Any]:
    """Return the TOML text as plain tables. Raises DesignError in one sentence."""
    _sizes(text)
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise DesignError((_not_toml(str(error), text),)) from None
    except RecursionError:
        raise DesignError((Fault("design", _TOO_DEEP),)) from None
    except ValueError:
        raise DesignError((Fault("design", "a number has thousands of digits"),)) from None


_TOO_DEEP = f"tables and lists lie deeper than {DEEPEST} within each other; a design needs six"
_TOO_MANY_KEYS = f"a table holds more than {MOST_KEYS} keys; no part of a house has so many"
_TOO_MANY = f"the file holds more than {MOST_VALUES:,} values; no house has so many"


def cleaned(text: str) -> str:
    """Return the text without the byte order mark and with plain line ends."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n")


def _sizes(text: str) -> None:
    if len(text) > LARGEST_BYTES:
        sentence = "the file is larger than 1 MB; a design is a few pages of text"
        raise DesignError((Fault("design", sentence),))
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > LONGEST_LINE:
            sentence = f"the line has {len(line):,} characters; break it into lines under 10,000"
            raise DesignError((Fault("design", sentence, number),))


def _not_toml(message: str, text: str) -> Fault:
    place = _PLACE.search(message)
    line = int(place["line"]) if place and place["line"] else len(text.rstrip().split("\n"))
    reason = _PLACE.sub("", message)[:120]
    known = next((words for start, words in _KNOWN.items() if reason.startswith(start)), "")
    reason = reason[:1].lower() + reason[1:]
    return Fault("design", known or f"this is not TOML: {reason}; {_HELP}", line)


def odd_values(raw: dict[str, Any]) -> list[At]:
    """Return the values their key never takes: true, false, and numbers beyond any house.

    Raises DesignError for tables within tables without end, and for more than any house holds.
    """
    found: list[At] = []
    waiting: list[tuple[Path, Any]] = [((), raw)]
    met = 0
    while waiting and len(found) < MOST_ODD:
        path, value = waiting.pop()
        inner = _within(path, value)
        waiting += inner
        met += len(inner)
        if met > MOST_VALUES:
            raise DesignError((Fault("design", _TOO_MANY),))
        if isinstance(value, bool):
            if not takes_truth(path):
                word = str(value).lower()
                found.append(At(path, f"{word} does not fit here; this key takes no true or false"))
        elif isinstance(value, int | float) and not abs(value) < LARGEST_NUMBER:
            found.append(At(path, "this is no number for a house; check its digits"))
    return found


def _within(path: Path, value: Any) -> list[tuple[Path, Any]]:
    """Return what a table or list holds, by path. Raises DesignError for what no house holds."""
    if len(path) > DEEPEST:
        raise DesignError((Fault("design", _TOO_DEEP),))
    if isinstance(value, dict):
        if len(value) > MOST_KEYS:
            raise DesignError((Fault("design", _TOO_MANY_KEYS),))
        return [((*path, key), inner) for key, inner in value.items()]
    if isinstance(value, list):
        if len(value) > MOST_VALUES:
            raise DesignError((Fault("design", _TOO_MANY),))
        return [((*path, number), inner) for number, inner in enumerate(value)]
    return []
