"""What becomes of one design: its main figures, or why it has none. Runs in a worker."""

import json
import time
from dataclasses import asdict, dataclass, replace
from functools import cache
from importlib.metadata import version
from typing import Any, Literal

from pydantic import TypeAdapter

from geometry.errors import BedcourseError, DesignError
from geometry.variants.main_figures import MainFigures, main_figures
from viz.batch.designs import Asked, text_of
from viz.job import Job, job

Status = Literal["done", "faults", "cannot be read", "took too long", "died", "failed"]
FORMAT = 1


@dataclass(frozen=True)
class Outcome:
    """What became of one design.

    note: what is wrong with it, in sentences. set_note: why its permit set was not drawn.
    seconds: its own time; limit_s: that it had.
    """

    status: Status
    note: str = ""
    figures: MainFigures | None = None
    set_note: str = ""
    seconds: float = 0.0
    limit_s: float | None = None
    program: str = ""

    @property
    def finished(self) -> bool:
        """Whether it would come out the same again."""
        return self.status in ("done", "faults", "cannot be read")

    def to_json(self) -> str:
        """Return the outcome as JSON text."""
        return json.dumps({"format": FORMAT, **asdict(self)}, indent=1)


@cache
def program() -> str:
    """Return the program's version."""
    return version("bedcourse")


def from_json(text: str) -> Outcome | None:
    """Return an outcome that was kept; None where it is not one."""
    try:
        kept: dict[str, Any] = json.loads(text)
        return _kept().validate_python(kept) if kept.pop("format") == FORMAT else None
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return None


@cache
def _kept() -> TypeAdapter[Outcome]:
    return TypeAdapter(Outcome)


def outcome_of(asked: Asked, with_set: bool) -> tuple[Outcome, bytes | None]:
    """Return what becomes of a design, and its permit set as PDF where it is asked for.

    Nothing is raised: what went wrong stands in the outcome.
    """
    begun = time.perf_counter()
    drawn: bytes | None = None
    try:
        work = job(text_of(asked))
        found = Outcome("done", figures=main_figures(work.layout))
        if with_set:
            drawn, note = _set(work)
            found = replace(found, set_note=note)
    except DesignError as error:
        found = Outcome("faults", "; ".join(map(str, error.faults)))
    except Exception as error:  # one design never stops the others
        found = Outcome("failed", " ".join(f"{type(error).__name__} {error}".split())[:300])
    seconds = round(time.perf_counter() - begun, 4)
    return replace(found, seconds=seconds, program=program()), drawn


def _set(work: Job) -> tuple[bytes | None, str]:
    """Return the permit set, or why it was not drawn."""
    from viz.issue import set_pdf, usual_paper
    from viz.sheets.permit import permit_set

    try:
        return set_pdf(work, permit_set(work, usual_paper(work), None)), ""
    except BedcourseError as error:
        return None, str(error)
