"""Rules of the trade: common practice, no source, but for the levelling example."""

from pathlib import Path

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import Report, report
from geometry.units import FOOT, INCH

DESIGN = """
[project]
name = "invented"
[datum]
top_of_footing = "{footing} ft"
instrument = "{laser} ft"
[floor]
tie = "{tie}"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "4 in", role = "base" }},
    {{ name = "sand", material = "sand-c33", thickness = "1/2 in", role = "blinding" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 24 ft", "0, 24 ft"]
[[area.pier]]
at = "15 ft, 12 ft"
"""


def reported(footing: str = "100", laser: str = "104.25", tie: str = "sand top at TOF") -> Report:
    return report(lay_out(read_design(DESIGN.format(footing=footing, laser=laser, tie=tie))))


def row(found: Report, interface: str) -> tuple[float, float, float]:
    """Level in inches, elevation in feet, rod reading in feet."""
    r = next(r for r in found.levels if r.interface == interface)
    assert r.rod_reading_m is not None
    return r.level_m / INCH, r.elevation_m / FOOT, r.rod_reading_m / FOOT


def test_piers_stand_six_inches_above_top_of_footing() -> None:
    # Common practice, no source: stone and sand up to TOF, 2 in foam on it, 4 in concrete on
    # that; piers stand 6 in above TOF to be flush.
    found = reported()
    assert row(found, "column P1 top")[0] == pytest.approx(6, abs=1e-9)
    assert row(found, "slab top (finished floor)")[0] == pytest.approx(6, abs=1e-9)
    flush = next(f for f in found.findings if f.id == "pier-flush")
    assert flush.severity == "fine"


def test_rod_readings_of_a_crew_s_table() -> None:
    # Worked by hand, laser 4'-3" above TOF: subgrade -4 1/2" reads 4'-7 1/2"; stone -1/2" reads
    # 4'-3 1/2"; sand at TOF 4'-3"; foam +2" 4'-1"; slab +6" 3'-9".
    found = reported()
    wanted = {
        "subgrade": (-4.5, 4 + 7.5 / 12),
        "stone top": (-0.5, 4 + 3.5 / 12),
        "sand top": (0, 4.25),
        "foam top": (2, 4 + 1 / 12),
        "slab top (finished floor)": (6, 3.75),
    }
    for interface, (level, rod) in wanted.items():
        assert row(found, interface)[0] == pytest.approx(level, abs=1e-9)
        assert row(found, interface)[2] == pytest.approx(rod, abs=1e-9)


@pytest.mark.parametrize(("elevation", "rod"), [("451.46", 6.14), ("452.10", 5.50)])
def test_published_levelling_example(elevation: str, rod: float) -> None:
    # A levelling how-to page: benchmark 452.78 + backsight 4.82 = 457.60 height of instrument;
    # a foresight of 6.14 is 451.46; to set 452.10 the rod must read 5.50.
    laser = 452.78 + 4.82
    assert laser == pytest.approx(457.60, abs=1e-9)
    found = reported(footing=elevation, laser=f"{laser:.2f}")
    assert row(found, "top of footing")[1:] == pytest.approx((float(elevation), rod), abs=1e-9)


def test_the_start_file_follows_the_rule() -> None:
    start = Path(__file__).parents[2] / "geometry" / "start.toml"
    found = report(lay_out(read_design(start.read_text(encoding="utf-8"))))
    top = next(r for r in found.levels if r.interface == "slab top (finished floor)")
    sheet = 10 / 1000 * INCH  # the 10 mil sheet lies under the foam
    assert top.level_m == pytest.approx(6 * INCH + sheet, abs=1e-9)
