"""Times, flows, areas and conductivities, read and printed."""

import pytest

from geometry.errors import LengthError
from geometry.measures import (
    Kind,
    read_measure,
    show_conductivity,
    show_flow,
    show_intensity,
    show_time,
    show_water,
)

# A US gallon is 231 cubic inches, an inch 0.0254 m (both exact).
GALLON = 231 * 0.0254**3
READ: list[tuple[str, Kind, float]] = [
    ("24 h", "time", 86400), ("90 min", "time", 5400), ("1.5 hours", "time", 5400),
    ("2 days", "time", 172800), ("34 gpm", "flow", 34 * GALLON / 60), ("2.1 L/s", "flow", 2.1e-3),
    ("120 l/min", "flow", 2e-3), ("7.2 m3/h", "flow", 2e-3), ("7.2 m³/h", "flow", 2e-3),
    ("900 sq ft", "area", 900 * 0.3048**2), ("84 m²", "area", 84), ("84m2", "area", 84),
    ("1e-4 cm/s", "speed", 1e-6), ("10 mm/h", "speed", 0.01 / 3600),
    (".3 m/day", "speed", 0.3 / 86400),
    ("0", "area", 0), ("0 gpm", "flow", 0),
]  # fmt: skip


@pytest.mark.parametrize(("text", "kind", "value"), READ)
def test_measures_read_in(text: str, kind: Kind, value: float) -> None:
    assert read_measure(text, kind) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "words"),
    [
        ("24", "time", "no unit"), ("24 gpm", "time", "the unit gpm"), ("-3 gpm", "flow", "a flow"),
        ("fast", "flow", "34 gpm"), (True, "time", "24 h"), ("nan gpm", "flow", "a flow"),
        ("9" * 41, "area", "an area"), ("1e-4", "speed", "1e-4 cm/s"),
        ("1e999 gpm", "flow", "flow"), (None, "flow", "a flow"),
    ],
)  # fmt: skip
def test_what_is_no_measure_is_told_what_would_be_right(
    text: object, kind: Kind, words: str
) -> None:
    with pytest.raises(LengthError, match="write it like") as caught:
        read_measure(text, kind)  # type: ignore[arg-type]
    assert words in str(caught.value)


def test_measures_print_in_both_systems() -> None:
    assert show_flow(34 * GALLON / 60, "ft-in") == "34.0 gpm"
    assert show_flow(2.1e-3, "metric") == "2.10 L/s"
    assert show_flow(0.0, "ft-in") == "0 gpm"
    assert show_flow(1e-12, "metric") == "under 0.001 L/s"
    assert show_water(1234.5 * GALLON, "ft-in") == "1,234.5 gal"
    assert show_water(0.12, "metric") == "120.0 L"
    assert show_intensity(0.0254 / 3600, "ft-in") == "1.00 in/h"
    assert show_intensity(0.0254 / 3600, "metric") == "25.4 mm/h"
    assert show_conductivity(1e-6) == "0.0001 cm/s"


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(0, "0 min"), (59, "under 1 min"), (60, "1 min"), (119, "1 min"), (7199, "119 min"),
     (7200, "2 h"), (9360, "2 h 36 min")],
)  # fmt: skip
def test_spans_of_time_are_rounded_down(seconds: float, words: str) -> None:
    assert show_time(seconds) == words
