"""The 24-hour storms against printed tables that they were not typed from."""

import numpy as np
import pytest

from geometry.formulas.storms import scs_storm

HOUR, MINUTE = 3600.0, 60.0
# Washington DOT Highway Runoff Manual M 31-16.04, Appendix 4C, Table 4C-4: type II.
WASHINGTON_II = {
    0.5: 0.005, 1.0: 0.011, 2.0: 0.022, 3.0: 0.035, 4.0: 0.048, 5.0: 0.063, 6.0: 0.080, 7.0: 0.099,
    8.0: 0.120, 8.7: 0.138, 9.0: 0.147, 9.8: 0.173, 10.0: 0.181, 10.5: 0.204, 11.0: 0.235,
    11.5: 0.283, 11.6: 0.307, 11.7: 0.354, 11.8: 0.431, 11.9: 0.568, 12.0: 0.663, 12.1: 0.682,
    12.5: 0.735, 13.0: 0.772, 14.0: 0.820, 16.0: 0.880, 18.0: 0.921, 20.0: 0.952, 22.0: 0.977,
}  # fmt: skip
# NRCS NEH 630 chapter 4, figure 4-31: greatest share of the day's rain within a time, type II.
NEH_4_31 = {
    5: 0.114, 10: 0.201, 15: 0.270, 30: 0.380, 60: 0.454,
    120: 0.538, 180: 0.595, 360: 0.707, 720: 0.841,
}  # fmt: skip
# City of Austin Drainage Criteria Manual, Table 2-6: type III, (hour, minute).
AUSTIN_III = {
    (0, 30): 0.0050, (1, 0): 0.0100, (1, 20): 0.0133, (8, 5): 0.1163, (8, 15): 0.1208,
    (8, 30): 0.1284, (8, 45): 0.1367, (9, 0): 0.1458, (9, 20): 0.1589, (16, 10): 0.8903,
    (16, 30): 0.8984, (17, 0): 0.9095, (17, 25): 0.9178,
}  # fmt: skip
# NRCS TR-20 tables (second-hand), points that the program leaves out.
TR_20_I = {1.3: 0.0227, 4.4: 0.0855, 8.3: 0.2077, 8.7: 0.2318, 12.2: 0.6944, 18.2: 0.8910}


def share(kind: str, hours: float) -> float:
    return float(scs_storm(kind, 1.0).fallen(np.array([hours * HOUR]))[0])  # type: ignore[arg-type]


@pytest.mark.parametrize(("hours", "fallen"), WASHINGTON_II.items())
def test_type_ii_is_washington_s(hours: float, fallen: float) -> None:
    assert share("II", hours) == pytest.approx(fallen, abs=0.0012)


@pytest.mark.parametrize(("minutes", "ratio"), NEH_4_31.items())
def test_type_ii_holds_the_shorter_storms(minutes: float, ratio: float) -> None:
    assert scs_storm("II", 1.0).most_in(minutes * MINUTE) == pytest.approx(ratio, abs=0.0025)


@pytest.mark.parametrize(("at", "fallen"), AUSTIN_III.items())
def test_type_iii_is_austin_s(at: tuple[int, int], fallen: float) -> None:
    assert share("III", at[0] + at[1] / 60) == pytest.approx(fallen, abs=0.0005)


@pytest.mark.parametrize(("hours", "fallen"), TR_20_I.items())
def test_type_i_between_the_points_kept(hours: float, fallen: float) -> None:
    assert share("I", hours) == pytest.approx(fallen, abs=0.0025)


def test_type_ia_is_the_gentlest_and_type_ii_the_sharpest() -> None:
    # TR-55 (1986), appendix B, in words.
    hardest = {kind: scs_storm(kind, 1.0).most_in(HOUR) for kind in ("IA", "I", "III", "II")}
    assert list(hardest.values()) == sorted(hardest.values())
