"""Papers, scales, line widths and lettering against published tables, in the tables' own units."""

from fractions import Fraction
from math import sqrt

import pytest

from viz.drawing.hatches import PATTERNS
from viz.drawing.page import PAPERS
from viz.drawing.scale import SCALES
from viz.style import lines, text
from viz.style.materials import kinds

MM_PER_INCH = 25.4  # NIST SP 811

# Short and long side. ANSI A (letter) and B: table of ANSI/ASME Y14.1 on a public summary
# (en.wikipedia.org/wiki/ANSI/ASME_Y14.1). ARCH C and D: table of US architectural sizes on
# northernarchitecture.us, basic drafting standards.
INCHES = {"letter": (8.5, 11), "ANSI B": (11, 17), "ARCH C": (18, 24), "ARCH D": (24, 36)}
# ISO 216, as quoted on a public summary (graphics-cad.blogspot.com, sizes of drawings).
MILLIMETRES = {"A1": (594, 841), "A3": (297, 420), "A4": (210, 297)}

# Ratios of architects' and engineers' scales: table on helonic.com, drawing scale guide.
FEET_AND_INCHES = {
    "3\" = 1'-0\"": 4, "1 1/2\" = 1'-0\"": 8, "1\" = 1'-0\"": 12, "3/4\" = 1'-0\"": 16,
    "1/2\" = 1'-0\"": 24, "3/8\" = 1'-0\"": 32, "1/4\" = 1'-0\"": 48, "3/16\" = 1'-0\"": 64,
    "1/8\" = 1'-0\"": 96, "3/32\" = 1'-0\"": 128, "1/16\" = 1'-0\"": 192,
    "1\" = 20'-0\"": 240, "1\" = 40'-0\"": 480,
}  # fmt: skip
# ISO 5455 recommends 1:2, 1:5, 1:10 and ten times these (first of its numbers seen, table from
# memory); 1:2.5 and ten times it stand beside them on metrication.com, drafting scales.
ISO_5455, BESIDE = (2, 5, 10), 2.5
# ISO 128-20, the series of widths in mm; numbers on graphics-cad.blogspot.com, clause from memory.
ISO_128 = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0)
# ISO 3098-0, the series of heights of capitals in mm, quoted on a German summary of the standard
# (scribd.com, Beschriftung, DIN EN ISO 3098-0).
ISO_3098 = (1.8, 2.5, 3.5, 5, 7, 10, 14, 20)


@pytest.mark.parametrize("name", INCHES)
def test_inch_papers(name: str) -> None:
    short, long = INCHES[name]
    paper = PAPERS[name]
    assert (paper.height, paper.width) == pytest.approx((short * MM_PER_INCH, long * MM_PER_INCH))
    assert paper.size == f"{long:g} × {short:g} in"


@pytest.mark.parametrize("name", MILLIMETRES)
def test_a_papers(name: str) -> None:
    short, long = MILLIMETRES[name]
    paper = PAPERS[name]
    assert (paper.height, paper.width) == (short, long)
    assert paper.size == f"{long} × {short} mm"
    # ISO 216: the sides are as 1 to the square root of 2, to whole millimetres.
    assert long / short == pytest.approx(sqrt(2), abs=1 / short)


def test_every_paper_is_held_against_a_table() -> None:
    assert set(PAPERS) == set(INCHES) | set(MILLIMETRES)


def test_scales_of_feet_and_inches_have_their_published_ratios() -> None:
    assert {s.name: s.ratio for s in SCALES["ft-in"]} == FEET_AND_INCHES


@pytest.mark.parametrize("scale", SCALES["ft-in"], ids=lambda s: s.name)
def test_a_ratio_is_feet_of_the_job_over_inches_of_paper(scale) -> None:
    inches, feet = scale.name.removesuffix("'-0\"").split('" = ')
    assert scale.ratio == 12 * int(feet) / sum(map(Fraction, inches.split()))


@pytest.mark.parametrize("scale", SCALES["metric"], ids=lambda s: s.name)
def test_metric_scales_are_of_the_published_series(scale) -> None:
    assert scale.name == f"1:{scale.ratio}"
    tens = [10**n for n in range(4)]
    assert scale.ratio in {base * ten for base in (*ISO_5455, BESIDE) for ten in tens}


@pytest.mark.parametrize("system", SCALES)
def test_scales_stand_from_the_greatest_down(system: str) -> None:
    ratios = [s.ratio for s in SCALES[system]]
    assert ratios == sorted(set(ratios))


def test_line_widths_are_of_the_published_series() -> None:
    named = ("GROUND", "BORDER", "CUT", "DATUM", "SEEN", "LEADER", "DIMENSION", "HATCH", "DOT")
    assert {getattr(lines, name) for name in named} <= set(ISO_128)
    assert {mm for _, look in kinds() for mm in (look.line_mm, look.thin_mm)} <= set(ISO_128)
    assert {p.weight for patterns in PATTERNS.values() for p in patterns} <= set(ISO_128)


def test_wide_lines_are_at_least_twice_as_wide_as_narrow_ones() -> None:
    """ISO 128: the widths on a drawing are as 4:2:1, or at least 2:1 (from memory)."""
    assert lines.CUT >= 2 * lines.SEEN
    assert lines.SEEN < lines.CUT < lines.GROUND
    assert 2 * lines.DIMENSION <= lines.CUT


def test_fixed_heights_of_lettering_are_of_the_published_series() -> None:
    assert {text.SMALLEST, text.HEAD, text.TITLE} <= set(ISO_3098)
    assert min(text.body_height(p.width) for p in PAPERS.values()) >= text.SMALLEST
