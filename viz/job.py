"""One design from its text to everything computed for it, each step once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.report import Report

if TYPE_CHECKING:
    from geometry.sections.face import CutLine
    from geometry.solids.foundation import Foundation
    from geometry.units import System


@dataclass(frozen=True)
class _Solids:
    """A layout's solids, built when they are first asked for."""

    layout: Layout

    @cached_property
    def built(self) -> Foundation:
        from geometry.solids.foundation import build

        return build(self.layout)


@dataclass(frozen=True)
class Job:
    """A sound design file's text; the rest follows from it when first asked for."""

    text: str
    layout: Layout

    @property
    def name(self) -> str:
        """The project's name."""
        return self.layout.design.project.name

    @property
    def system(self) -> System:
        """The units figures are printed in."""
        return self.layout.design.project.units

    @cached_property
    def _solids(self) -> _Solids:
        return _Solids(self.layout)

    @property
    def foundation(self) -> Foundation:
        """All solids."""
        return self._solids.built

    @cached_property
    def report(self) -> Report:
        """The report; its volumes alone ask for the solids."""
        solids = self._solids
        # Not by the job: job and report would hold each other when nobody else does.
        return Report(self.layout, lambda: solids.built)

    @cached_property
    def cuts(self) -> dict[str, CutLine]:
        """The cuts worth drawing, by name, the most telling first."""
        from geometry.sections.telling import telling_cuts

        return {c.name: c.line for c in telling_cuts(self.layout)}


def job(text: str) -> Job:
    """Return the job a design file's text describes. Raises DesignError with every fault."""
    return Job(text, lay_out(read_design(text)))
