"""What building departments publish that they ask of drawings: the form of one item, the lists.

The lists are web pages of departments; the department's own list governs. `SEVERAL` stands for
what those of Mankato MN, Winchester VA, Honolulu HI, Contra Costa CA and Siskiyou CA have been
told to ask, not read by us page by page.
"""

from dataclasses import dataclass
from typing import Literal

from geometry.sources import Source

State = Literal["shown", "stated", "not stated", "not covered"]

HILLSBOROUGH = Source("published list: Hillsborough CA", clause="Foundation Plan")
NEEDHAM = Source("published list: Needham MA", clause="General Building Plans")
CROOKSTON = Source("published list: Crookston MN", clause="Residential Plan Submittal")
CHESTERFIELD = Source("published list: Chesterfield VA", clause="Information Required on the Plans")
EL_DORADO = Source("published list: El Dorado County CA", clause="Residential Building Plan")
GRAND = Source("published list: Grand County CO", clause="Applying for a Building Permit")
AUGUSTA = Source("published list: Augusta County VA", clause="Check List For Plans")
ALBERTVILLE = Source("published list: Albertville MN", clause="Single Family Dwelling Handout")
MORGAN_HILL = Source("published list: Morgan Hill CA", clause="Plans & Specifications")
SEVERAL = Source("published list: several departments", sure="second-hand")


@dataclass(frozen=True)
class Item:
    """One thing that is asked for, and how this design stands to it.

    state: "shown" on the drawings from the model; "stated" by the design file; "not stated", a
    field is empty; "not covered", the model does not know it. detail: where it is, or what to do.
    """

    topic: str
    asked: str
    state: State
    detail: str
    source: Source


@dataclass(frozen=True)
class Ask:
    """One thing that is asked for, before a design answers."""

    topic: str
    asked: str
    source: Source

    def shown(self, detail: str) -> Item:
        """Return the item as drawn from the model."""
        return self._item("shown", detail)

    def stated(self, detail: str) -> Item:
        """Return the item as said by the design file."""
        return self._item("stated", detail)

    def empty(self, field: str, why: str = "") -> Item:
        """Return the item as left open: which field to fill in."""
        return self._item("not stated", f"{why}fill in {field}")

    def outside(self, detail: str) -> Item:
        """Return the item as unknown to the model."""
        return self._item("not covered", detail)

    def given(self, value: str, field: str) -> Item:
        """Return the item as said by the design file, or as left open where it says nothing."""
        return self.stated(value) if value else self.empty(field)

    def _item(self, state: State, detail: str) -> Item:
        return Item(self.topic, self.asked, state, detail, self.source)
