"""Stone over holes, sand on stone, fabric against soil: what each figure means, in words."""

import pytest

from geometry.checks.filter import fabric_finding, holes_finding, sand_finding
from geometry.formulas.fabric_filter import FHWA, M288
from geometry.formulas.granular_filter import FAA, FEMA
from geometry.sources import Source
from geometry.water.filter import CurveSizes, SoilFabric, Verdict
from geometry.water.grains import FineOnCoarse, HoleFit

Ratios = tuple[float | None, float | None]
NOT_KNOWN = "Ask the supplier for the grading"
FINER = "Small stone can pass or plug them"


def holes(d85: Ratios, d50: Ratios, d15: Ratios = (0.1, 0.2)):
    """Ratios of grain to hole at the fine and the coarse edge; all are asked to be 1 or more."""
    rows = ((0.85, d85, True), (0.5, d50, True), (0.15, d15, False))
    return holes_finding(
        tuple(HoleFit(share, 0.0127, *ratios, 1.0, judged, "x") for share, ratios, judged in rows)
    )


@pytest.mark.parametrize(
    ("d85", "d50", "severity", "begins", "source", "advice"),
    [
        ((1.5, 2.0), (1.0, 1.2), "fine", "Stone over hole of 0.5 in (12.7 mm): D85 1.50 fine edge, "
         "2.00 coarse edge; D50 1.00 fine edge, 1.20 coarse edge.", FAA, "Lay it so."),
        ((1.5, 2.0), (0.8, 1.2), "look", "At the fine edge of its grading 50%", FEMA, FINER),
        ((1.5, 2.0), (0.8, 0.9), "look", "At either edge of its grading 50% or more", FEMA, FINER),
        ((0.8, 1.1), (None, 1.0), "look", "At the fine edge of its grading 85%", FAA, FINER),
        ((0.8, 0.9), (1.2, 1.2), "look", "At either edge of its grading 85% or more", FAA, FINER),
        ((0.7, 0.7), (0.6, 0.6), "look", "50% or more of the stone, as delivered, is", FEMA, FINER),
        ((1.4, 1.4), (1.2, 1.2), "fine", "Stone over hole of 0.5 in (12.7 mm): D85 1.40 as "
         "delivered; D50 1.20 as delivered.", FAA, "Lay it so."),
        ((None, 2.0), (1.1, 1.2), "look", "Stone over hole of 0.5 in (12.7 mm): D85 not known fine "
         "edge, 2.00 coarse edge;", FAA, NOT_KNOWN),
    ],
)  # fmt: skip
def test_stone_over_holes_by_both_edges_of_its_grading(
    d85: Ratios, d50: Ratios, severity: str, begins: str, source: Source, advice: str
) -> None:
    found = holes(d85, d50)
    assert found.severity == severity
    assert found.found.startswith(begins)
    assert found.source == source
    assert found.advice.startswith(advice)


def test_one_size_that_is_too_small_throughout_says_either_edge() -> None:
    """D85 at the fine edge alone, D50 at both: some of it is too small whatever is delivered."""
    assert holes((0.9, 1.1), (0.6, 0.8)).found.startswith("At either edge of its grading 50%")
    # As delivered only where every size that is too small is one figure.
    assert holes((0.9, 0.9), (0.6, 0.8)).found.startswith("At either edge")


def test_the_size_that_is_too_small_is_marked_and_d15_is_only_spoken_of() -> None:
    found = holes((1.5, 2.0), (0.8, 1.2)).found
    assert "D50 0.80 fine edge, 1.20 coarse edge (too small)." in found
    assert "D85 1.50 fine edge, 2.00 coarse edge;" in found
    assert "D15 0" not in found
    assert "(too small)" in holes((0.7, 0.7), (1.2, 1.2)).found


@pytest.mark.parametrize(
    ("worst", "best", "severity", "sinks", "said"),
    [
        (5.0, 3.0, "fine", "", "3.0 at best, 5.0 at worst"),
        (5.0, 5.0, "fine", "", "5.0 as delivered"),
        (7.0, 3.0, "look", " at its coarse edge: the upper sinks", "3.0 at best, 7.0 at worst"),
        (9.0, 6.0, "look", ": the upper sinks", "6.0 at best, 9.0 at worst"),
        (7.0, None, "look", ": the upper sinks", "7.0 as far as the gradings are known"),
        (4.0, None, "look", "", "4.0 as far as the gradings are known"),
        (None, 3.0, "look", "", "3.0 as far as the gradings are known"),
        (None, None, "look", "", "not known"),
    ],
)
def test_sand_on_stone_holds_only_where_both_edges_say_so(
    worst: float | None, best: float | None, severity: str, sinks: str, said: str
) -> None:
    """At most five times: D15 of the filter over d85 of what it holds."""
    found = sand_finding(FineOnCoarse("cellar", "sand-c33", "stone-57", worst, best, 5.0))
    assert found.severity == severity
    assert found.found.endswith(f"D15 of the lower over D85 of the upper: {said}.")
    head = "Washed stone, No. 57 is no filter for "
    assert found.found.startswith(head if sinks else "D15")
    assert f"{sinks} into its voids. D15" in found.found or not sinks
    assert ("coarse edge" in found.found) == ("coarse edge" in sinks)
    assert found.advice.startswith("Lay it so." if severity == "fine" else "Lay fabric or a choker")


def fabric(verdict: Verdict, woven: bool = False, curve: CurveSizes | None = None, known=True):
    limits = ((0.15, 0.4), (2.2e-4, 2.5e-4), (0.1, 0.2)) if known else (None, None, None)
    row = SoilFabric(
        "ground", "ML", "nonwoven-6oz", woven, 2e-4, 1.5, *limits, None, curve, verdict, ("a test",)
    )
    return fabric_finding(row)


@pytest.mark.parametrize(
    ("verdict", "severity"),
    [("suits", "fine"), ("depends", "look"), ("too open", "stop"), ("too tight", "stop"),
     ("unknown", "look")],
)  # fmt: skip
def test_a_woven_fabric_is_never_passed_silently(verdict: Verdict, severity: str) -> None:
    plain, woven = fabric(verdict), fabric(verdict, woven=True)
    assert plain.severity == severity
    assert woven.severity == ("look" if severity == "fine" else severity)
    assert "It is woven" not in plain.found
    assert "It is woven" in woven.found
    assert " Ask for: a test. " in plain.advice


def test_figures_of_a_fabric_stand_beside_what_is_asked() -> None:
    known = fabric("suits").found
    assert "opening 0.2 mm, permittivity 1.5 per s" in known
    assert "15 to 40 % passing No. 200" in known
    assert "at most 0.22 to 0.25 mm and at least 0.1 to 0.2 per s asked; it suits" in known
    assert "passing" not in fabric("unknown", known=False).found
    assert str(fabric("suits").source) == str(M288)


def test_a_grading_of_the_soil_adds_its_own_limits() -> None:
    short = fabric("suits", curve=CurveSizes(8e-4, None, 3e-4, None))
    whole = fabric("suits", curve=CurveSizes(8e-4, 1e-4, 3e-4, 2e-4))
    by = "by its grading (D85 0.8 mm) at most 0.3 mm"
    assert f"{by}; it suits" in short.found
    assert f"{by}, at least 0.2 mm lest it clog; it suits" in whole.found
    assert str(whole.source) == str(FHWA)
    assert FHWA != M288
