"""Random designs: nothing crashes, no water is lost, more rain never means less of it."""

import pytest

from geometry.checks.water import water_findings
from geometry.layout.lay import Layout, lay_out
from geometry.project import Design
from geometry.water.inflow import Inflow
from geometry.water.pit import PitStorm
from geometry.water.study import Study, study
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

RAWS = [raw for raw in map(seeded_raw, seeds(60)) if raw and "drain" in raw]
DESIGNS = [design_of(raw) for raw in RAWS]


def changed(design: Design, **water: object) -> Layout:
    update = {"water": design.water.model_copy(update=water)}
    return lay_out(design.model_copy(update=update))


def marched() -> list[tuple[Design, Study, PitStorm]]:
    found = []
    for design in DESIGNS:
        known = study(lay_out(design))
        if known.pit:
            found.append((design, known, known.pit))
    return found


MARCHED = marched()


def test_there_is_something_to_try() -> None:
    assert len(DESIGNS) >= 20
    assert len(MARCHED) >= 4
    assert sum(pit.pumped is not None for _, _, pit in MARCHED) >= 2


@pytest.mark.parametrize("number", range(len(DESIGNS)))
def test_findings_come_whatever_is_given(number: int) -> None:
    layout = lay_out(DESIGNS[number])
    found = list(water_findings(layout))
    lacking = [f for f in found if f.id == "water-not-given"]
    assert len(lacking) == (1 if study(layout).lacking else 0)
    assert all(f.found and f.advice and f.asked for f in found)


@pytest.mark.parametrize("number", range(len(MARCHED)))
def test_no_water_is_lost_and_none_comes_from_nowhere(number: int) -> None:
    _, _, pit = MARCHED[number]
    for march in (pit.pumped, pit.dead):
        if march:
            assert abs(march.lost_m3()) <= 1e-9 * max(1.0, float(march.came_m3[-1]))
            assert pit.store.bottom_m - 1e-9 <= march.highest_m <= pit.store.spill_m + 1e-9


@pytest.mark.parametrize("number", range(len(MARCHED)))
def test_the_peak_is_the_sum_of_its_parts(number: int) -> None:
    _, known, pit = MARCHED[number]
    assert known.inflow is not None
    parts = sum(known.inflow.parts_m3s.values())
    assert max(pit.series.inflows_m3s) == pytest.approx(parts, rel=1e-9, abs=1e-15)


@pytest.mark.parametrize("number", range(len(MARCHED)))
def test_a_dead_pump_never_floods_a_floor_later_than_a_higher_one(number: int) -> None:
    _, _, pit = MARCHED[number]
    times = [float("inf") if r.after_s is None else r.after_s for r in pit.reached]
    assert times == sorted(times)


def without_pump(design: Design, **water: object) -> tuple[Inflow, PitStorm]:
    assert design.sump is not None
    sump = design.sump.model_copy(update={"pump": None})
    known = study(changed(design.model_copy(update={"sump": sump}), **water))
    assert known.inflow is not None
    assert known.pit is not None
    return known.inflow, known.pit


@pytest.mark.parametrize("number", range(len(MARCHED)))
def test_more_rain_never_gives_a_lower_peak(number: int) -> None:
    design, _, _ = MARCHED[number]
    peaks, highs = [], []
    for rain in (0.0, 0.02, 0.05, 0.3):
        given = {"storm": "SCS II", "duration": 86400.0, "share": 0.4, "rain": rain, "strip": 1.5}
        coming, pit = without_pump(design, **given)
        peaks.append(coming.peak_m3s or 0.0)
        highs.append(pit.dead.highest_m)
    assert peaks == sorted(peaks)
    assert peaks[0] < peaks[-1]
    assert highs == pytest.approx(sorted(highs), abs=1e-9)


@pytest.mark.parametrize("number", range(len(MARCHED)))
def test_a_higher_water_table_never_brings_less(number: int) -> None:
    design, _, _ = MARCHED[number]
    flows = []
    for over in (-1.0, 0.0, 0.3):
        level = {
            "water_table": {"base": "TOF", "offset_m": over},
            "conductivity": 1e-5,
            "reach": 20,
        }
        raw = {**design.water.model_dump(), **level}
        water = type(design.water).model_validate(raw)
        known = study(lay_out(design.model_copy(update={"water": water})))
        assert known.inflow is not None
        flows.append(known.inflow.ground_m3s)
    assert None not in flows
    assert flows == sorted(flows, key=lambda f: f or 0.0)
