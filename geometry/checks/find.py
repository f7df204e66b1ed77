"""Every finding on a layout, in the order it is told."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from geometry.checks.board import board_findings
from geometry.checks.cleanouts import cleanout_findings
from geometry.checks.cold import ColdConcrete
from geometry.checks.drain_rules import drain_rule_findings
from geometry.checks.energy import energy_findings
from geometry.checks.filter import drain_filter_findings, filter_findings
from geometry.checks.finding import Finding
from geometry.checks.floor_rules import floor_findings
from geometry.checks.foam import FoamVerdict, foam_finding
from geometry.checks.footing_rules import footing_findings
from geometry.checks.ground_rules import ground_findings
from geometry.checks.hillside import hillside_findings
from geometry.checks.levels import level_findings
from geometry.checks.networks import network_findings
from geometry.checks.outlets import daylight_findings
from geometry.checks.radon import radon_findings
from geometry.checks.strength import strength_findings
from geometry.checks.tubing import tubing_findings
from geometry.checks.wall import wall_findings
from geometry.checks.wall_rules import wall_rule_findings
from geometry.checks.water import water_findings
from geometry.checks.whole import whole_findings
from geometry.layout.lay import Layout

Foam = tuple[FoamVerdict, ColdConcrete]


def findings(layout: Layout, foam: Sequence[Foam]) -> Iterator[Finding]:
    """Yield what was found; foam: each area's verdict and cold concrete, in the layout's order."""
    system = layout.design.project.units
    for area, (verdict, cold) in zip(layout.areas, foam, strict=True):
        yield foam_finding(area, verdict, cold, system)
    yield from level_findings(layout)
    for view in layout.views():
        yield from _drain_findings(view)
    yield from network_findings(layout)
    yield from hillside_findings(layout)
    yield from filter_findings(layout)
    yield from wall_findings(layout)
    yield from water_findings(layout)
    yield from board_findings(layout)
    yield from footing_findings(layout)
    yield from wall_rule_findings(layout)
    yield from floor_findings(layout)
    yield from tubing_findings(layout)
    yield from energy_findings(layout)
    yield from radon_findings(layout)
    yield from ground_findings(layout)
    yield from whole_findings(layout)


def _drain_findings(view: Layout) -> Iterator[Finding]:
    """Yield the findings on the drain in view, under its own name where there are several."""
    found = (
        *drain_rule_findings(view),
        *drain_filter_findings(view),
        *strength_findings(view),
        *cleanout_findings(view),
        *daylight_findings(view),
    )
    title = view.drain.title if view.drain and len(view.drains) > 1 else "drain"
    for finding in found:
        yield replace(finding, subject=finding.subject.replace("drain", title, 1))
