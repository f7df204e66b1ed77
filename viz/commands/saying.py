"""How the command line speaks: results on standard output, progress and errors on standard error.

Whatever goes wrong is said in sentences; a traceback is never shown.
"""

import functools
import os
import sys
from collections.abc import Callable
from typing import ParamSpec

import typer

from geometry.errors import BedcourseError, DesignError

P = ParamSpec("P")

STOPS, WRONG, UNEXPECTED, INTERRUPTED = 1, 2, 3, 130

# Signs of the trade and their spelling where the terminal has ASCII alone.
_SPELT = str.maketrans({
    "²": "2", "³": "3", "×": "x", "°": " deg", "–": "-", "—": "-", "−": "-", "…": "...",
    "’": "'", "‘": "'", "“": '"', "”": '"', "≥": ">=", "≤": "<=", "±": "+/-", "µ": "u", "·": "-",
})  # fmt: skip
# Control characters in a name could move the cursor or hide text.
_CONTROL = dict.fromkeys((*range(9), *range(11, 32), *range(127, 160)))


def plain(text: str, encoding: str | None) -> str:
    """Return text that a terminal of this encoding can print, without control characters."""
    clean = text.translate(_CONTROL)
    try:
        clean.encode(encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return clean.translate(_SPELT).encode("ascii", "replace").decode("ascii")
    return clean


def say(text: str) -> None:
    """Print a result."""
    typer.echo(plain(text, sys.stdout.encoding))


def tell(text: str) -> None:
    """Print progress or an error, which must not mix with results."""
    typer.echo(plain(text, sys.stderr.encoding), err=True)


def careful(command: Callable[P, None]) -> Callable[P, None]:
    """Return the command with every error said in sentences and told by its exit code."""

    @functools.wraps(command)
    def careful_command(*args: P.args, **kwargs: P.kwargs) -> None:
        try:
            command(*args, **kwargs)
            sys.stdout.flush()
        except BrokenPipeError:
            _hush()
            raise typer.Exit(0) from None
        except (typer.Exit, typer.Abort, typer.BadParameter):
            raise
        except KeyboardInterrupt:
            tell("Stopped.")
            raise typer.Exit(INTERRUPTED) from None
        except Exception as error:  # the last door before the user
            tell(sentence(error))
            code = WRONG if isinstance(error, BedcourseError | OSError) else UNEXPECTED
            raise typer.Exit(code) from None

    return careful_command


def sentence(error: Exception) -> str:
    """Return an error in words; a design's faults one a line."""
    if isinstance(error, DesignError):
        many = len(error.faults) > 1
        head = f"The design has {len(error.faults)} faults:" if many else "The design has a fault:"
        return "\n".join((head, *(f"  {fault}" for fault in error.faults)))
    if isinstance(error, BedcourseError):
        return str(error)
    if isinstance(error, OSError):
        place = f"{error.filename}: " if error.filename else ""
        return f"{place}{(error.strerror or type(error).__name__).lower()}."
    what = " ".join(f"{type(error).__name__} {error}".split())[:200]
    return f"Something unexpected went wrong; please report it with your design file: {what}"


def _hush() -> None:
    """Whoever read our output has gone: let nothing complain when the program ends."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
