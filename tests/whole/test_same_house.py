"""The same house moved, turned, drawn the other way round or in other units keeps its volumes."""

from collections.abc import Callable
from typing import Any

import pytest
import tomlkit

from geometry.designfile import read_design
from geometry.project import Design
from tests.designs import Plan, Raw, design_of, seeded_raw
from tests.dice import Length, feet_inches, millimetres, said
from tests.whole.witness import Whole

SEEDS = [s for s in (6, 9, 10, 12, 58, 66, 68) if seeded_raw(s) is not None]
Place = tuple[Length, Length]


def volumes(design: Design) -> dict[str, float]:
    """Volumes by part; cleanouts together, for their names follow the corners' numbers."""
    found: dict[str, float] = {}
    for part, volume in Whole(design).volumes.items():
        key = "drain/cleanouts" if part.startswith("drain/cleanout") else part
        found[key] = found.get(key, 0.0) + volume
    return found


def moved(raw: Raw, move: Callable[[Place], Place]) -> Raw:
    """Return the design with every place on the plan moved."""
    areas = [
        {
            **a,
            "corners": [move(c) for c in a["corners"]],
            "pier": [{**p, "at": move(p["at"])} for p in a.get("pier", [])],
        }
        for a in raw["area"]
    ]
    found = {**raw, "area": areas}
    if "sump" in raw:
        found["sump"] = {**raw["sump"], "at": move(raw["sump"]["at"])}
    return found


def shifted(place: Place) -> Place:
    return Length(place[0].sixteenths + 3 * 16 * 39), Length(place[1].sixteenths - 5 * 16 * 39)


def turned(place: Place) -> Place:
    return Length(-place[1].sixteenths), place[0]


def quarter(raw: Raw) -> Raw:
    """Return the house turned by a right angle, its pads with it."""
    found = moved(raw, turned)
    for area in found["area"]:
        area["pier"] = [{**p, "width": p["depth"], "depth": p["width"]} for p in area["pier"]]
    return found


def reversed_order(raw: Raw) -> Raw:
    """Return the house with corners listed the other way; sides and corners renumbered."""
    areas: list[dict[str, Any]] = [
        {**a, "corners": list(reversed(a["corners"]))} for a in raw["area"]
    ]
    found = {**raw, "area": areas}
    if "drain" in raw:
        count = len(areas[0]["corners"])
        drain = {**raw["drain"], "low_corner": count}
        drain["cleanouts"] = [count + 1 - c for c in drain["cleanouts"]]
        if drain["sides"] != "all":
            drain["sides"] = [count - s if s < count else s for s in drain["sides"]]
        found["drain"] = drain
    return found


def alike(one: dict[str, float], two: dict[str, float]) -> None:
    assert one.keys() == two.keys()
    for part, volume in one.items():
        assert two[part] == pytest.approx(volume, rel=1e-9, abs=1e-12), part


@pytest.fixture(params=SEEDS)
def raw(request: pytest.FixtureRequest) -> Raw:
    found = seeded_raw(request.param)
    assert found is not None
    return found


def test_at_least_half_of_random_designs_are_sound() -> None:
    assert sum(seeded_raw(s) is not None for s in range(40)) >= 20


def test_moved_turned_and_reversed(raw: Raw) -> None:
    first = volumes(design_of(raw))
    alike(first, volumes(design_of(moved(raw, shifted))))
    alike(first, volumes(design_of(quarter(raw))))
    alike(first, volumes(design_of(reversed_order(raw))))


def test_metric_and_feet_inches_twins(raw: Raw) -> None:
    texts = [tomlkit.dumps(said(raw, write)) for write in (millimetres, feet_inches)]
    metric, imperial = (read_design(text) for text in texts)
    assert texts[0] != texts[1]
    alike(volumes(metric), volumes(imperial))


def test_lengths_are_written_as_said() -> None:
    plan: Plan = [(Length(0), Length(16)), (Length(-203), Length(16 * 12))]
    assert said(plan, feet_inches) == [["0 in", "1 in"], ["-1 ft 0 11/16 in", "1 ft 0 in"]]
    assert said(plan, millimetres)[1] == ["-322.2625 mm", "304.8000 mm"]
