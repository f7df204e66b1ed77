"""The 24-hour rainfall distributions of the Soil Conservation Service, types I, IA, II and III.

Source: tabular distributions of NRCS TR-20, described in NEH 630 chapter 4 (the hourly ratios of
type II are its figure 4-36) and drawn in TR-55 (1986), figure B-1. Read second-hand in two public
programs that agree; type II agrees with the Washington DOT Highway Runoff Manual M 31-16.04, table
4C-4, and type III with the City of Austin Drainage Criteria Manual, table 2-6. Kept here: every
half hour, and every tenth of an hour in the two hours about the peak.
"""

from dataclasses import dataclass
from typing import Literal

from geometry.sources import Source

Kind = Literal["I", "IA", "II", "III"]

SOURCE = Source("NRCS TR-20, NEH 630 chapter 4, TR-55 figure B-1", sure="second-hand")


@dataclass(frozen=True)
class Table:
    """Hours of the day, the share of its rain fallen by then, and the hour of the peak."""

    hours: tuple[float, ...]
    shares: tuple[float, ...]
    peak_h: float


def _table(halves: str, tenths: str, start: int, peak_h: float) -> Table:
    """Put a row of half hours and, from an hour on, one of tenths of hours together, in 1/10000.

    Tenths that fall on a half hour are in both rows.
    """
    fallen = {i * 5: int(share) for i, share in enumerate(halves.split())}
    fallen |= {start * 10 + i: int(share) for i, share in enumerate(tenths.split())}
    points = sorted(fallen)
    shares = tuple(fallen[point] / 10000 for point in points)
    return Table(tuple(point / 10 for point in points), shares, peak_h)


TABLES: dict[Kind, Table] = {
    "I": _table(
        """0 87 174 262 350 442 540 647 760 878 1000 1123 1250 1391 1560 1746 1940 2190 2540 3030
        5150 5830 6230 6555 6840 7092 7320 7523 7700 7862 8020 8173 8320 8462 8600 8733 8860 8982
        9100 9212 9320 9423 9520 9613 9700 9783 9860 9933 10000""",
        """2540 2623 2714 2812 2917 3030 3194 3454 3878 4632
        5150 5322 5476 5612 5730 5830 5919 6003 6083 6159 6230""",
        start=9,
        peak_h=9.995,
    ),
    "IA": _table(
        """0 100 220 360 510 670 830 990 1160 1350 1560 1790 2040 2330 2680 3100 4250 4800 5200
        5500 5770 6010 6230 6440 6640 6830 7010 7190 7360 7530 7690 7850 8000 8150 8300 8440 8580
        8710 8840 8960 9080 9200 9320 9440 9560 9670 9780 9890 10000""",
        "",
        start=0,
        peak_h=7.96,
    ),
    "II": _table(
        """0 51 105 161 220 281 345 411 480 553 630 712 800 892 990 1093 1200 1322 1470 1630 1810
        2040 2350 2830 6630 7350 7720 7990 8200 8376 8535 8676 8800 8912 9018 9117 9210 9297 9377
        9452 9520 9584 9647 9709 9770 9829 9887 9944 10000""",
        """2350 2427 2513 2609 2715 2830 3068 3544 4308 5679
        6630 6820 6986 7130 7252 7350 7434 7514 7588 7656 7720""",
        start=11,
        peak_h=12.0,
    ),
    "III": _table(
        """0 50 100 150 200 252 308 367 430 497 567 642 720 806 905 1016 1140 1284 1458 1659 1890
        2165 2500 2980 5000 7020 7500 7835 8110 8341 8543 8716 8860 8984 9095 9194 9280 9358 9433
        9503 9570 9634 9694 9752 9808 9860 9909 9956 10000""",
        """2500 2578 2664 2760 2866 2980 3143 3394 3733 4166
        5000 5840 6267 6606 6857 7020 7134 7240 7336 7422 7500""",
        start=11,
        peak_h=12.0,
    ),
}
