"""The form of one thing nobody has looked at yet, and who would answer it."""

from dataclasses import dataclass
from typing import Literal

Who = Literal[
    "building department", "structural engineer", "geotechnical engineer", "surveyor",
    "electrician", "owner or builder", "owner and structural engineer", "water laboratory",
    "radon measurement professional", "pest control professional", "competent person on site",
    "concrete supplier and testing laboratory", "utility locating service", "pump supplier",
    "town or county (stormwater)", "plumber and building department",
]  # fmt: skip


@dataclass(frozen=True)
class OpenPoint:
    """One thing that was not checked: what, why not, who would answer it.

    field: the key of the design file that would tell it, empty where no key can.
    """

    key: str
    what: str
    why: str
    who: Who
    field: str = ""
