"""The figures of a card: thickness, fall, holes, mark on the pole, and what to order."""

from collections.abc import Iterator

from geometry.measures import show_tons
from geometry.site.records import Amount, Stage
from geometry.units import show_area, show_volume, to_unit
from viz.figures.stage.holes import pipe_end
from viz.sheets.card_cells import Cell
from viz.sheets.card_levels import LISTED
from viz.sheets.card_print import Printed

# Shorter lengths of pipe are said in feet and inches.
_SHORT_M = 3.0
_SAME_M = 5e-5
# Stages that are of no level of their own: their levels stand on the card of the inverts.
_BARE = ("pipe", "backfill")


def facts(said: Printed, stage: Stage) -> tuple[Cell, ...]:
    """Return thickness, fall, holes, pole mark and amounts, each to be read from afar."""
    return (*_facts(said, stage), *_amounts(said, stage))


def _facts(said: Printed, stage: Stage) -> Iterator[Cell]:
    if stage.thickness and stage.key != "pit":
        key = f"card.thickness_{stage.key}"
        head = said.say(key if said.language.knows(key) else "card.thickness")
        yield Cell(head, _span(said, *stage.thickness))
    if stage.fall is not None and stage.key != "inverts":
        key = "card.fall_pit" if stage.key == "pit" else "card.fall"
        yield Cell(said.say(key), said.fall(stage.fall))
    if stage.key == "backfill":
        yield from _filled(said, stage)
    elif stage.key not in (*LISTED, *_BARE):
        top = stage.shots[0]
        yield Cell(said.say("card.pole"), said.level(top.above_tof), (said.say("card.from_tof"),))
    drain = said.drain(stage)
    if stage.key == "pipe" and drain:
        key = stage.instructions[-1]
        end = tuple(pipe_end(drain.drain.holes.rows, (9.0, -9.5), 4.8))
        yield Cell(said.say("card.holes"), said.say(f"big.{key}"), drawn=end)


def _filled(said: Printed, stage: Stage) -> Iterator[Cell]:
    figures = said.figures(stage.figures)
    if "wall_stone" in stage.instructions:
        yield Cell(said.say("card.stone_wide"), figures["wide"])
    away = said.say("card.away", length=figures["away"])
    yield Cell(said.say("card.grade"), figures["fall"], (away,))


def _span(said: Printed, low: float, high: float) -> str:
    if high - low < _SAME_M:
        return said.thick(high)
    return said.say("card.span", low=said.thick(low), high=said.thick(high))


def _amounts(said: Printed, stage: Stage) -> Iterator[Cell]:
    for amount in stage.amounts:
        if not _small(amount):
            yield _amount(said, amount)


def _small(amount: Amount) -> bool:
    """Whether an amount is one of many small ones, which stand in a line."""
    pipe = amount.key == "solid_pipe"
    return amount.unit == "pieces" or amount.key == "tape" or (pipe and amount.shared)


def pieces(said: Printed, stage: Stage) -> tuple[tuple[str, str], ...]:
    """Return the small things: how many or how much of each, and what it is."""
    return tuple(_piece(said, amount) for amount in stage.amounts if _small(amount))


def _piece(said: Printed, amount: Amount) -> tuple[str, str]:
    if amount.unit == "pieces":
        return f"{amount.count:g}", _thing(said, amount)
    own = _measured(said, amount) if amount.shared else _bought(said, amount)
    return own, _thing(said, amount)


def _thing(said: Printed, amount: Amount) -> str:
    key, _, angle = amount.key.partition(":")
    return said.say(f"amount.{key}", material=said.language.material(amount.material), angle=angle)


def _amount(said: Printed, amount: Amount) -> Cell:
    """Return what to order large; what lies in place, and by weight, under it."""
    notes = [said.say("card.in_place", amount=_measured(said, amount))]
    several = amount.area and len(said.layout.areas) > 1
    head = _thing(said, amount)
    head = f"{head}, {amount.area}" if several and amount.key in ("sheet", "tape") else head
    if amount.mass_kg:
        low, high = (show_tons(m, said.system) for m in amount.mass_kg)
        notes.append(said.language.units(
            high if low == high
            else said.say("card.span", low=low.split()[0], high=high)))  # fmt: skip
    if amount.shared:
        floors = amount.key in ("sheet", "tape")
        notes.append(said.say(f"card.shared_{'floors' if floors else 'drains'}"))
    return Cell(said.say("card.to_order", thing=head), _bought(said, amount), tuple(notes))


def _measured(said: Printed, amount: Amount) -> str:
    if amount.unit == "m3":
        return said.language.units(show_volume(amount.in_place, said.system))
    if amount.unit == "m2":
        return said.language.units(show_area(amount.in_place, said.system))
    if said.system == "metric":
        return f"{amount.in_place:,.1f} m"
    if amount.in_place < _SHORT_M:
        return said.length(amount.in_place)
    return said.language.units(f"{to_unit(amount.in_place, 'm', 'ft'):,.0f} ft")


def _bought(said: Printed, amount: Amount) -> str:
    if amount.sold in ("yd3", "m3"):
        cubic = amount.count
        cubic = to_unit(cubic, "yd**3", "m**3") if amount.sold == "yd3" else cubic
        return said.language.units(show_volume(cubic, said.system))
    one = "sold_one" if amount.count == 1 else "sold"
    return f"{amount.count:g} {said.say(f'{one}.{amount.sold}')}"
