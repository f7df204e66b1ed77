"""One sentence for each design against the first: what a builder gains or loses by it."""

from collections.abc import Iterator

from geometry.heat.words import show_loss
from geometry.units import System, show_length
from geometry.variants.compare import Comparison
from geometry.variants.rows import moves
from viz.variants.variant_tables import about, signed_volume, sold
from viz.words import SEVERITIES, material_name

ALIKE = "No difference: the designs say the same and give the same."
# Levels a builder asks for first, by how the level table names them.
_TOLD = (("(finished floor)", "finished floor"), ("subgrade", "subgrade"),
         ("drain invert, low point", "drain's low point"))  # fmt: skip
_STILL_M = 1e-4
_STILL_SHARE = 0.0005


def summary(found: Comparison, system: System) -> tuple[str, ...]:
    """Return a sentence for every design after the first; one alone where nothing differs."""
    if found.same:
        return (ALIKE,)
    return tuple(_sentence(found, place, system) for place in range(1, len(found.names)))


def _sentence(found: Comparison, place: int, system: System) -> str:
    told = list(_told(found, place, system))
    against = f"“{found.names[place]}” against “{found.names[0]}”"
    return f"{against}: {'; '.join(told)}." if told else f"{against}: nothing that matters here."


def _told(found: Comparison, place: int, system: System) -> Iterator[str]:
    """Yield what one design moves, the gravest first."""
    yield from _findings(found, place)
    yield from _levels(found, place, system)
    yield from _money(found, place)
    yield from _bought(found, place, system)
    yield from _warmth(found, place, system)


def _findings(found: Comparison, place: int) -> Iterator[str]:
    for severity in ("stop", "look"):
        rows = [row for row in found.findings if row.severities[place] == severity]
        worse = [about(row) for row in rows if row.way(place) in ("comes", "worse")]
        if worse:
            yield f"{SEVERITIES[severity]}: {_listed(worse)}"
        better = [
            about(row)
            for row in found.findings
            if row.severities[0] == severity and row.way(place) in ("goes", "better")
        ]
        if better:
            yield f"no more “{SEVERITIES[severity]}” for {_listed(better)}"


def _listed(subjects: list[str]) -> str:
    unique = list(dict.fromkeys(subjects))
    if len(unique) > 2:
        return f"{'; '.join(unique[:1])} and {len(unique) - 1} more"
    return " and ".join(unique)


def _levels(found: Comparison, place: int, system: System) -> Iterator[str]:
    for ending, name in _TOLD:
        by: dict[str, float] = {}
        for row in found.levels:
            move = moves(row.levels_m)[place]
            if row.interface.endswith(ending) and move is not None and abs(move) > _STILL_M:
                by.setdefault(row.area, move)
        for area, move in by.items():
            way = "higher" if move > 0 else "lower"
            where = f" of {area}" if len(by) > 1 else ""
            yield f"{name}{where} {show_length(abs(move), system)} {way}"


def _money(found: Comparison, place: int) -> Iterator[str]:
    before, after = found.costs[0], found.costs[place]
    if before and after and (by := sum(after) / 2 - sum(before) / 2):
        way = "dearer" if by > 0 else "cheaper"
        yield f"{abs(by):,.2f} {found.currency}".strip() + f" {way}"


def _bought(found: Comparison, place: int, system: System) -> Iterator[str]:
    """Yield what is bought most otherwise: the first line of stone, of concrete, of the rest."""
    groups: dict[str, str] = {}
    for row in found.order:
        unit, count, before = row.sold[place], row.counts[place], row.counts[0]
        name = material_name(row.material) if row.item == row.material else row.item.lower()
        if unit is None or count is None or before is None or unit != row.sold[0]:
            bought = count if unit and count else before if row.sold[0] else None
            which = unit or row.sold[0]
            if bought is not None and which is not None:
                way = "more" if unit else "less"
                groups.setdefault(row.group, f"{name}: {sold(bought, which)} {way}")
        elif abs(count - before) > _STILL_SHARE * max(count, before):
            way = "more" if count > before else "less"
            groups.setdefault(row.group, f"{name}: {sold(abs(count - before), unit)} {way}")
    if groups:
        yield from list(groups.values())[:3]
        return
    for volume in found.materials[:1]:
        move = moves(volume.volumes_m3)[place]
        if move:
            yield f"{material_name(volume.material)}: {signed_volume(move, system)} in place"


def _warmth(found: Comparison, place: int, system: System) -> Iterator[str]:
    losses = [row.values for row in found.warmth if row.what == "loss"]
    known = [v for v in losses if v[0] is not None and v[place] is not None]
    before = sum(v[0] or 0.0 for v in known)
    by = sum(v[place] or 0.0 for v in known) - before
    if before and abs(by) / before > _STILL_SHARE:
        way = "more" if by > 0 else "less"
        yield f"heat lost to the ground {show_loss(abs(by), system)} {way} ({by / before:+.1%})"
