"""The catalogue as a whole: keys, sources, look-up, and what importing it costs."""

import subprocess
import sys
from dataclasses import FrozenInstanceError

import pytest

from geometry.materials.catalogue import MATERIALS, PIPES, ROWS, find, nearest
from geometry.materials.kinds import Aggregate, Board, Fabric, Material, Pipe, Sheet
from geometry.sources import Source

KEYS = (
    "d2729-3 d2729-4 d2729-6 sdr35-4 sdr35-6 sch40-3 sch40-4 sch40-6 sch40-8 sch40-10 "
    "corrugated-4 corrugated-6 en1401-110 en1401-125 en1401-160 en1401-200 "
    "stone-57 stone-67 stone-8 stone-89 gravel-16-32 gravel-8-16 crusher-run sand-c33 sand-0-4 "
    "poly-6mil poly-10mil poly-15mil poly-20mil e1745-a-10mil e1745-a-15mil pe-0.2mm membrane "
    "xps-iv xps-vi xps-vii xps-x xps-v eps-i eps-ii eps-viii eps-ix eps-xiv eps-xv "
    "xps-300 eps-100 concrete concrete-2500 concrete-3000 concrete-3500 concrete-c25 "
    "nonwoven-4oz nonwoven-6oz nonwoven-8oz nonwoven-16oz "
    "GW GP GM GC SW SP SM SC ML CL MH CH OL unknown plastic #3 #4 #5 #6 #7 #8"
)


def test_every_promised_key_is_there_and_no_other() -> None:
    assert sorted(MATERIALS) == sorted(KEYS.split())


def test_keys_and_names_are_unique() -> None:
    assert len({row.key.casefold() for row in ROWS}) == len(ROWS) == len(MATERIALS)
    assert len({row.name for row in ROWS}) == len(ROWS)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.key)
def test_every_row_has_sources_that_can_be_printed(row: Material) -> None:
    for source in (row.source, *row.also):
        assert isinstance(source, Source)
        assert len(str(source).strip()) > 8
    holes = row.perforation if isinstance(row, Pipe) else None
    assert holes is None or len(str(holes.source)) > 8


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.key)
def test_names_are_words_for_people(row: Material) -> None:
    assert row.name[0].isupper()
    assert row.name != row.key


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.key)
def test_sizes_are_metres_of_the_right_order(row: Material) -> None:
    match row:
        case Sheet():
            assert 1e-4 < row.thickness_m < 2e-3
        case Fabric():
            assert 5e-4 < row.thickness_m < 6e-3
            assert 1e-4 < row.opening_m < 5e-4
        case Board():
            assert all(0.02 < thickness < 0.15 for thickness in row.thicknesses_m)
            assert 0.4 < row.width_m < row.length_m < 3
        case Pipe():
            assert 0.06 < row.inside_diameter_m < row.outside_diameter_m < 0.3
        case Aggregate():
            assert 1300 < row.loose_density_low < row.loose_density_high < 2200
            sieves = [band.sieve_m for band in row.grading]
            assert sieves == sorted(sieves, reverse=True)
            assert all(0 <= band.low <= band.high <= 1 for band in row.grading)
        case _:
            assert row.kind in {"concrete", "soil", "plastic", "bar"}


def test_rows_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        PIPES["sdr35-4"].wall_m = 1.0  # type: ignore[misc]
    with pytest.raises(TypeError):
        PIPES["own"] = PIPES["sdr35-4"]  # type: ignore[index]


@pytest.mark.parametrize(
    ("typed", "key"), [("sdr35-4", "sdr35-4"), (" SDR35-4 ", "sdr35-4"), ("gw", "GW"), ("#4", "#4")]
)
def test_find(typed: str, key: str) -> None:
    row = find(typed)
    assert row is not None
    assert row.key == key


def test_find_does_not_guess() -> None:
    assert find("sdr35-5") is None
    assert find("") is None


@pytest.mark.parametrize(
    ("typed", "key"),
    [("sdr-35-4", "sdr35-4"), ("stone57", "stone-57"), ("XPS IV", "xps-iv"), ("gww", "GW")],
)
def test_nearest_offers_what_was_meant(typed: str, key: str) -> None:
    assert nearest(typed, MATERIALS) == key


def test_nearest_stays_silent_when_nothing_is_close() -> None:
    assert nearest("marble", PIPES) is None


def test_importing_the_catalogue_brings_no_heavy_library() -> None:
    code = "import sys, geometry.materials.catalogue;print(*{m.split('.')[0] for m in sys.modules})"
    loaded = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    ).stdout.split()
    assert not {"pint", "pandas", "shapely", "trimesh", "pyvista", "manifold3d"} & set(loaded)
