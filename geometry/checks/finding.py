"""One form for every check's result."""

from dataclasses import dataclass
from typing import Literal

from geometry.sources import Source

Severity = Literal["fine", "look", "stop"]


@dataclass(frozen=True)
class Finding:
    """What was found about a subject, what is asked, by whom, how grave, and what to do."""

    id: str
    severity: Severity
    subject: str
    found: str
    asked: str
    source: Source
    advice: str
