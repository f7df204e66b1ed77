"""What departments ask: an invented house that answers, and one that leaves it open."""

import pytest

from geometry.checks.asked import Item
from geometry.checks.completeness import completeness
from geometry.layout.lay import Layout, lay_out
from tests.designs import design_of, seeded_raw
from tests.houses import WITH_GARAGE, house, without


def the(layout: Layout, asked: str) -> Item:
    (found,) = (i for i in completeness(layout) if i.asked.startswith(asked))
    return found


@pytest.mark.parametrize(
    ("asked", "state", "change", "field"),
    [
        ("code edition", "stated", ('code = "Invented code, 2024"', ""), "[project] code"),
        ("who prepared", "stated", ("A. Builder (invented)", ""), "[project] prepared_by"),
        ("date", "stated", ("2026-01-02", ""), "[project] date"),
        ("owner", "stated", ("B. Owner (invented)", ""), "[project] drawn_for"),
        ("address", "stated", ("1 Invented Lane", ""), "[project] address"),
        ("parcel", "stated", ("Lot 1 (invented)", ""), "[project] parcel"),
        ("datum", "stated", ('"250 ft"\ninstrument = "254 ft"', '"100 ft"'), "top_of_footing"),
        ("size and place of bars", "shown", ("count = 2", "count = 0"), "[footing] bars"),
        ("concrete strength", "stated", ('height = "8 ft"\nmaterial = "concrete-3000"',
                                         'height = "8 ft"'), "strength"),
        ("soil class", "stated", ('"GW"', '"unknown"'), "[soil] group"),
        ("slab thickness", "shown", ('"concrete-3000", thickness = "4 in", role = "slab"',
                                     '"sand-c33", thickness = "4 in", role = "fill"'),
         "role slab"),
        ("vapor retarder", "shown", ('    { name = "retarder", material = "e1745-a-15mil", '
                                     'thickness = "15 mil", role = "retarder" },\n', ""),
         "role retarder"),
        ("insulation", "shown", ('foam bottom at TOF"\nlayer = [\n    { name = "stone", material '
                                 '= "stone-57", thickness = "6 in", role = "base" },\n    { name '
                                 '= "foam", material = "xps-iv", thickness = "2 in", role = '
                                 '"insulation" },', 'slab top at +6 in"\nlayer = ['),
         "role insulation"),
        ("cleanouts", "shown", ("cleanouts = [3]", ""), "[drain] cleanouts"),
        ("where the drain empties", "shown", without("sump"), "[sump]"),
        ("sump pump", "stated", ('pump = { off = "4 in", on = "12 in" }', ""), "[sump] pump"),
        ("slope away", "shown", ('fall = "5 %"', 'fall = "level"'), "[grade] fall"),
        ("place, pad and column", "shown", without("[area.pier]"), "[[area.pier]]"),
    ],
)  # fmt: skip
def test_an_item_answered_and_left_open(
    asked: str, state: str, change: tuple[str, str], field: str
) -> None:
    assert the(house(), asked).state == state
    left_open = the(house(change), asked)
    assert left_open.state == "not stated"
    assert field in left_open.detail


def test_a_house_without_a_drain_is_asked_for_one() -> None:
    bare = house(without("drain"), without("sump"))
    assert the(house(), "pipe, size").state == "shown"
    assert the(bare, "pipe, size").state == "not stated"
    assert not [i for i in completeness(bare) if i.asked.startswith(("stone env", "cleanouts"))]


def test_steps_are_asked_only_of_a_stepped_footing() -> None:
    assert the(house(WITH_GARAGE), "steps").state == "shown"
    assert not [i for i in completeness(house()) if i.asked == "steps"]


@pytest.mark.parametrize(
    "asked",
    [
        "frost depth", "soil bearing", "reinforcement", "anchor bolts", "damp-proofing",
        "slab joints", "openings, window wells", "framing", "preparer's signature", "site plan",
        "where the pump empties",
    ],
)  # fmt: skip
def test_what_the_model_does_not_know_is_said(asked: str) -> None:
    assert the(house(), asked).state == "not covered"


def test_figures_come_from_the_levels() -> None:
    # Grade at 7 ft, footing's bottom at -1 ft, floor at 6 in and a sheet, top of wall at 8 ft.
    layout = house()
    assert "basement 8'-0\"" in the(layout, "depth below").detail
    assert "basement 6'-6\"" in the(layout, "greatest unbalanced").detail
    assert "least 1'-0\"" in the(layout, "wall above").detail
    raised = house(('at_wall = "7 ft"', 'at_wall = "7 ft 6 in"'))
    assert "basement 8'-6\"" in the(raised, "depth below").detail
    assert "basement 7'-0\"" in the(raised, "greatest unbalanced").detail
    assert 'least 6"' in the(raised, "wall above").detail


def test_a_second_area_has_its_own_figures() -> None:
    # Its wall ends at 3 ft + 4 ft 9 in, 9 in above grade; the basement's 12 in above.
    layout = house(WITH_GARAGE)
    assert 'least 9", garage' in the(layout, "wall above").detail
    # Slab on its footing: floor at 3 ft 5 in, grade at 7 ft.
    assert "garage 3'-7\"" in the(layout, "greatest unbalanced").detail
    assert the(layout, "insulation").detail.endswith("; none in garage")
    assert "none in" not in the(house(), "insulation").detail


def test_strength_and_resistance_of_foam_and_class_of_retarder() -> None:
    # ASTM C578 type IV: 25 psi, R-5 per inch; here 2 in.
    assert '2", 25 psi, R-10' in the(house(), "insulation").detail
    metric = house(('name = "Two', 'units = "metric"\nname = "Two'))
    # R-10 is 1.76 m2K/W; 25 psi is 172 kPa.
    assert "172 kPa, R 1.76 m²K/W" in the(metric, "insulation").detail
    assert "15 mil, Class A" in the(house(), "vapor retarder").detail
    plain = house(("e1745-a-15mil", "poly-15mil"))
    assert "class not stated" in the(plain, "vapor retarder").detail


def test_a_concrete_without_strength_is_named_with_its_part() -> None:
    change = (
        ('role = "slab"', 'role = "slab" '),
        ('concrete-3000", thickness', 'concrete", thickness'),
    )
    found = the(house(*change), "concrete strength")
    assert "none for slabs;" in found.detail


@pytest.mark.parametrize("seed", [None, 9, 12, 22])
def test_no_item_claims_a_verdict_and_each_has_a_source(seed: int | None) -> None:
    raw = None if seed is None else seeded_raw(seed)
    layout = house() if raw is None else lay_out(design_of(raw))
    items = completeness(layout)
    said = " ".join(f"{i.topic} {i.asked} {i.state} {i.detail} {i.source}" for i in items).lower()
    for claim in ("approved", "compliant", "complies", "passed"):
        assert claim not in said
    assert all(i.detail and i.source.title.startswith("published list: ") for i in items)
    assert len({i.asked for i in items}) == len(items)


def test_the_answering_house_leaves_nothing_open() -> None:
    assert not [i for i in completeness(house()) if i.state == "not stated"]


def test_slopes_are_told_as_they_are() -> None:
    assert the(house(), "slope and inverts").detail.endswith(": 1/16 in per ft")
    level = house(('fall = "1/16 in per ft"', 'fall = "level"'))
    assert the(level, "slope and inverts").detail.endswith(": laid level")
    # 5 % of 10 ft.
    assert the(house(), "slope away").detail.endswith(': 6" in 10\'-0"')


def test_a_floor_over_the_grade_holds_no_fill() -> None:
    # The garage's floor lies 3 ft 5 in over TOF.
    low = house(WITH_GARAGE, ('at_wall = "7 ft"', 'at_wall = "3 ft"'))
    assert 'garage 0"' in the(low, "greatest unbalanced").detail
