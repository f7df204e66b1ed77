"""Rules held against the design, and the findings made of them: what is kept to stands together."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from geometry.checks.finding import Finding, Severity
from geometry.layout.lay import Layout
from geometry.rules.limit import Limit
from geometry.sources import Source


@dataclass(frozen=True)
class Ruling:
    """One rule held against one place.

    found: what is there, in words. broken: how grave it is if it is not met. where: the area, where
    there are several.
    """

    limit: Limit
    met: bool
    found: str
    advice: str = ""
    broken: Severity = "look"
    where: str = ""


def counted(layout: Layout, rulings: Iterable[Ruling]) -> list[Ruling]:
    """Return the rulings of rules that count for this job.

    A rule of a code does unless the design names other sets of rules alone.
    """
    codes = layout.design.rules.codes
    return [one for one in rulings if not (codes and one.limit.code) or one.limit.code in codes]


def ruling_findings(
    layout: Layout, key: str, subject: str, rulings: Iterable[Ruling]
) -> Iterator[Finding]:
    """Yield a finding for each broken rule, under the rule's key, and one for all that are met.

    key, subject: of the latter. One rule broken in several places is told once.
    """
    found = counted(layout, rulings)
    for limit in dict.fromkeys(one.limit for one in found if not one.met):
        yield _broken(subject, limit, [r for r in found if r.limit == limit and not r.met])
    met = [one for one in found if one.met]
    if met:
        yield _met(key, subject, met)


def _broken(subject: str, limit: Limit, places: list[Ruling]) -> Finding:
    gravest: Severity = "stop" if any(one.broken == "stop" for one in places) else "look"
    advice = dict.fromkeys(one.advice for one in places if one.advice)
    return Finding(
        limit.key, gravest, subject, _sentences(places), limit.title,
        limit.source, " ".join((limit.why, *advice)),
    )  # fmt: skip


def _met(key: str, subject: str, met: list[Ruling]) -> Finding:
    sources = dict.fromkeys(str(one.limit.source) for one in met)
    titles = dict.fromkeys(one.limit.title for one in met)
    return Finding(
        key, "fine", subject, _sentences(met), "; ".join(titles),
        Source("; ".join(sources)), "Build it so.",
    )  # fmt: skip


def _sentences(rulings: Iterable[Ruling]) -> str:
    """Return what was found as one sentence for each area, nothing said twice."""
    said: dict[str, dict[str, None]] = {}
    for one in rulings:
        said.setdefault(one.where, {})[one.found] = None
    parts = (f"{area}: {'; '.join(found)}" if area else "; ".join(found)
             for area, found in said.items())  # fmt: skip
    return " ".join(f"{part[:1].upper()}{part[1:]}." for part in parts)


def in_area(layout: Layout, area: str, ruling: Ruling) -> Ruling:
    """Return a ruling with its area's name, where there are several."""
    return replace(ruling, where=area) if len(layout.areas) > 1 else ruling
