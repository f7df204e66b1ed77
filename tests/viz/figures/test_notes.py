"""General notes follow the design; as a figure they keep their columns."""

from itertools import combinations

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from tests.designs import design_of, seeded_raw
from tests.houses import WITH_GARAGE, house, without
from tests.whole import networks
from viz.drawing.lettering import text_box
from viz.drawing.marks import Text
from viz.drawing.place import NoRoomError
from viz.figures.notes.figure import notes_figures
from viz.figures.notes.general import general_notes, preparers_statement

CLAIMS = ("approved", "compliant", "complies", "code-conforming")


def notes(layout: Layout) -> tuple[str, ...]:
    return general_notes(layout, report(layout))


def the(layout: Layout, start: str) -> str:
    (found,) = (note for note in notes(layout) if note.startswith(start))
    return found


@pytest.mark.parametrize(
    ("start", "says", "change", "then"),
    [
        ("Datum", "250.00 ft", ('"250 ft"', '"251.5 ft"'), "251.50 ft"),
        ("Footing, basement", '20" × 12"', ('width = "20 in"', 'width = "24 in"'), '24" × 12"'),
        ("Footing, basement", "at -1'-0\" (elevation 249.00 ft)",
         ('thickness = "12 in"', 'thickness = "14 in"'), "at -1'-2\" (elevation 248.83 ft)"),
        ("Footing bars", "2 #4 bars with 3\"", ("count = 2", "count = 3"), "3 #4 bars"),
        ("Concrete of", "3,000 psi", ("concrete-3000", "concrete-2500"), "2,500 psi"),
        ("Soil", "Well-graded gravel (GW), not tested", ('"GW"', '"unknown"'), "not stated"),
        ("Floor, basement", '4" concrete', ('"4 in", role', '"5 in", role'), '5" concrete'),
        ("Floor, basement", "15 mil vapor retarder, Class A;",
         ("e1745-a-15mil", "e1745-a-10mil"), "Class A, 10 mil;"),
        ("Foam, basement", "runs over the footing", ("foam bottom", "foam top"), "stops at"),
        ("Foam, basement", "runs over", ("bottom at TOF", "bottom at -1 in"), '1" below'),
        ("Foam, basement", "runs over", ("bottom at TOF", "bottom at +2 in"), '2" above'),
        ("Drain:", "falls 1/16 in per ft", ("1/16 in per ft", "level"), "laid level"),
        ("Drain cleanouts", "corner 3", ("[3]", "[1, 2, 3]"), "corners 1, 2 and 3"),
        ("Sump", "Pump on at 12\"", ('on = "12 in"', 'on = "14 in"'), "Pump on at 14\""),
        ("Finished grade", "+7'-0\"; falls 6\" in 10'-0\"", ('"5 %"', '"level"'), "no fall"),
    ],
)  # fmt: skip
def test_a_changed_design_changes_its_note(
    start: str, says: str, change: tuple[str, str], then: str
) -> None:
    assert says in the(house(), start)
    assert then in the(house(change), start)
    assert then not in the(house(), start)


@pytest.mark.parametrize(
    ("change", "gone", "instead"),
    [
        (without("sump"), "Drain outlet", "Where the drain's water goes"),
        (("cleanouts = [3]", ""), "Drain cleanouts", "No drain cleanouts"),
        (("count = 2", "count = 0"), "Footing bars", "No footing bars"),
        (("concrete-3000", "concrete"), "Concrete of", "Concrete strength of"),
    ],
)
def test_what_a_design_lacks_is_said(change: tuple[str, str], gone: str, instead: str) -> None:
    was, now = "\n".join(notes(house())), "\n".join(notes(house(change)))
    assert gone in was
    assert instead not in was
    assert gone not in now
    assert instead in now


def test_a_house_without_drain_claims_none() -> None:
    said = " ".join(notes(house(without("drain"), without("sump"))))
    assert "No foundation drain" in said
    for word in ("fabric wrap", "Drain stone", "Sump", "sleeve", "drain has been inspected"):
        assert word not in said
    assert "Hold points: base, vapor retarder and foam" in said
    drained = " ".join(notes(house()))
    assert "Hold points: drain, base" in drained
    assert "drain has been inspected" in drained


def test_an_edge_board_and_wall_stone_are_named() -> None:
    layout = house(
        ('tie = "foam', 'edge_board = { material = "xps-iv", thickness = "1 in" }\ntie = "foam'),
        ("[soil]", '[backfill]\nstone_top = "4 ft"\n\n[soil]'),
    )
    assert '1"' in the(layout, "Edge board")
    assert "up to +4'-0\"" in the(layout, "Against the walls")
    assert not [n for n in notes(house()) if n.startswith(("Edge board", "Against"))]


def test_two_levels_of_footings_ask_for_care() -> None:
    layout = house(WITH_GARAGE)
    assert "garage +3'-0\"" in the(layout, "Datum")
    assert "+2'-0\" (elevation 252.00 ft)" in the(layout, "Footing, garage")
    assert the(layout, "Where the dig")
    assert the(layout, "Foam, garage") == "Foam, garage: none under the floor."
    assert not [n for n in notes(house()) if n.startswith("Where the dig")]


def test_metric_houses_have_metric_notes() -> None:
    said = " ".join(notes(house(('name = "Two', 'units = "metric"\nname = "Two'))))
    assert "150 mm (IRC R506.2.3)" in said
    assert "'-" not in said


def test_the_preparer_is_named_and_seals_nothing() -> None:
    said = " ".join(preparers_statement(house()))
    assert "for B. Owner (invented) by A. Builder (invented)" in said
    assert "not sealed" in said
    bare = house(('prepared_by = "A. Builder (invented)"', ""))
    assert "by the owner or builder" in " ".join(preparers_statement(bare))


@pytest.mark.parametrize("seed", [9, 12, 22])
def test_random_houses_get_notes_that_claim_nothing(seed: int) -> None:
    raw = seeded_raw(seed)
    assert raw is not None
    layout = lay_out(design_of(raw))
    found = notes(layout)
    assert all(note.endswith(".") for note in found)
    assert len(set(found)) == len(found)
    said = " ".join((*found, *preparers_statement(layout))).lower()
    assert not [word for word in CLAIMS if word in said]


@pytest.mark.parametrize("height", [float("inf"), 120.0, 60.0])
@pytest.mark.parametrize("numbered", [True, False])
def test_notes_keep_their_column_and_count_on_in_pieces(height: float, numbered: bool) -> None:
    given = notes(house())
    pieces = notes_figures("n", "N", given, 2.5, 90.0, height, numbered)
    texts = [[m for m in piece.marks if isinstance(m, Text)] for piece in pieces]
    for own, piece in zip(texts, pieces, strict=True):
        boxes = [text_box(t) for t in own]
        assert not [1 for a, b in combinations(boxes, 2) if a.overlaps(b)]
        assert piece.box.left >= -1e-6
        assert piece.box.right <= 90.0 + 1e-6
        assert piece.box.height <= height + 1e-6
    said = " ".join(t.words for own in texts for t in own)
    numbers = [f"{n}. " if numbered else "" for n in range(1, len(given) + 1)]
    assert said == " ".join(n + note for n, note in zip(numbers, given, strict=True))
    assert [p.title for p in pieces] == ["N"] + ["N, continued"] * (len(pieces) - 1)
    assert (len(pieces) > 1) == (height < 200)


def test_notes_too_small_or_too_narrow_are_refused() -> None:
    with pytest.raises(ValueError, match="smaller than"):
        notes_figures("n", "N", ("a",), 2.0, 90.0)
    with pytest.raises(NoRoomError, match="larger paper"):
        notes_figures("n", "N", ("a",), 2.5, 15.0)
    with pytest.raises(NoRoomError, match="larger paper"):
        notes_figures("n", "N", ("a long note " * 20,), 2.5, 60.0, 20.0)


def about(name: str) -> str:
    return "\n".join(notes(lay_out(networks.network(name))))


def test_notes_say_what_each_drain_empties_into() -> None:
    both = about("both to the pit")
    assert "Inside drain, basement: PVC D2729" in both
    assert "Outside drain, basement: PVC D2729" in both
    assert "straight under the floor, to the sump" in both
    assert "the outside drain, basement empties through 18 pipes PVC Schedule 40, 3 in" in both
    assert "at most 7'-0\" apart, invert -0'-7\"" in both
    assert "they end in the stone of the inside drain, basement" in both
    out = about("pit and two to daylight")
    assert "through a sleeve (PVC Schedule 40, 6 in) cast into the footing, to the sump" in out
    assert "Drain outlet to daylight 2: PVC D2729, 4 in, solid, falls 1/4 in per ft" in out
    assert "at least 1'-0\" of ground wanted over it" in out
    assert "guarded against animals" in out
    upper = about("upper to lower stone")
    assert "(outside drain, garage): the open end at invert +3'-6 1/8\"" in upper
    assert "common practice, no source" in upper


def test_bars_are_bent_round_what_pierces_the_footing() -> None:
    def bars(name: str) -> str:
        return the(lay_out(networks.network(name)), "Footing bars")

    assert "bent round the bleeders." in bars("both to the pit")
    assert "bent round the sleeve of the pipe to the sump." in bars("pit and two to daylight")
    assert "bent" not in bars("inside")


def test_air_under_the_floor_is_told_where_its_base_vents_to_daylight() -> None:
    assert "radon" in about("both to daylight")
    for name in ("daylight", "both to the pit", "upper to daylight"):
        assert "radon" not in about(name)


def test_water_that_goes_nowhere_is_told_of_its_own_drain() -> None:
    text = networks.TEXTS["inside"].replace(networks.PIT, "")
    (words,) = (n for n in notes(lay_out(read_design(text))) if "not stated: to be" in n)
    assert words.startswith("Where the drain's water goes")
