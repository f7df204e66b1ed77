"""Heating tubes as they are laid: in rolled houses, and in invented rooms worked by hand."""

from itertools import combinations, pairwise, product
from math import pi

import pytest
import shapely
import shapely.ops

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.tubing.lay import Loop, Tubes, lay_tubes
from geometry.materials.tubes import TUBES
from geometry.units import FOOT, INCH
from tests.designs import design_of, seeded_raw

PATTERNS = ("serpentine", "counterflow")
SEEDS = (3, 0, 6, 16, 18)

ROOM = """
[project]
name = "Invented room"
[[area]]
name = "room"
corners = ["0, 0", "{long}, 0", "{long}, {wide}", "0, {wide}"]
[grade]
at_wall = "6 ft"
[floor.tubing]
{keys}
"""


def room(long: str, wide: str, keys: str) -> Tubes:
    """The tubes of a room whose walls are 8 in thick: 16 in less than its outline."""
    (tubes,) = lay_tubes(lay_out(read_design(ROOM.format(long=long, wide=wide, keys=keys))))
    return tubes


def rolled(seed: int, pattern: str, spacing: str) -> tuple[Tubes, ...]:
    raw = seeded_raw(seed)
    assert raw is not None
    raw["floor"]["tubing"] = {"spacing": spacing, "pattern": pattern}
    return lay_tubes(lay_out(design_of(raw)))


def beyond_leads(loop: Loop) -> shapely.LineString:
    """A loop without its leads, which lie nearer together before the manifold."""
    line, lead = loop.line, loop.lead_m / 2 + 0.3
    return shapely.ops.substring(line, lead, line.length - lead)


@pytest.mark.parametrize(
    "seed", [SEEDS[0], *(pytest.param(s, marks=pytest.mark.slow) for s in SEEDS[1:])]
)
def test_tubes_of_rolled_houses_keep_apart_and_fill_the_floor(seed: int) -> None:
    laid = 0
    for pattern, spacing in product(PATTERNS, ("8 in", "12 in")):
        for tubes in rolled(seed, pattern, spacing):
            laid += len(tubes.loops)
            if tubes.loops:
                hold_apart(tubes)
                hold_full(tubes)
    assert laid > 0


def hold_apart(tubes: Tubes) -> None:
    apart = tubes.tubing.spacing
    for loop in tubes.loops:
        assert loop.line.is_simple
        assert tubes.slab.contains(loop.line)
        assert tubes.slab.boundary.distance(loop.line) > tubes.tubing.edge - 1e-3
        assert loop.whole_m <= tubes.tubing.longest + 1e-6
        # Rounded bends are a little shorter as chords than as arcs.
        assert loop.length_m == pytest.approx(loop.line.length, rel=2e-3)
    for one, other in combinations(tubes.loops, 2):
        assert not one.line.intersects(other.line)
        assert beyond_leads(one).distance(beyond_leads(other)) > apart * 0.99
    for loop in tubes.loops:
        # Straight pieces that run level side by side lie a spacing apart.
        assert nearest_runs(loop) > apart * 0.99


def nearest_runs(loop: Loop) -> float:
    """The least distance between two long straight runs of a loop that do not follow each other."""
    pairs = pairwise(beyond_leads(loop).coords)
    runs = [shapely.LineString(p) for p in pairs if shapely.LineString(p).length > 0.35]
    tree = shapely.STRtree(runs)
    near = [
        runs[n].distance(runs[m])
        for n, run in enumerate(runs)
        for m in tree.query(run.buffer(0.5))
        if m > n + 1
    ]
    return min(near, default=9.0)


def hold_full(tubes: Tubes) -> None:
    """Measured on 148 rolled floors at 9 in, both patterns: length 0.81 to 1.06 of field over
    spacing, 0.80 to 1.00 of the slab within a spacing of a tube, the shortest loop at least 0.945
    of the longest.
    """
    field = sum(part.field.area for part in tubes.parts)
    assert 0.78 < tubes.length_m * tubes.tubing.spacing / field < 1.08
    assert tubes.covered > 0.78
    wholes = [loop.whole_m for loop in tubes.loops]
    if len(tubes.parts) == 1:
        assert min(wholes) > 0.85 * max(wholes)


@pytest.mark.parametrize("pattern", PATTERNS)
def test_a_room_that_the_spacing_divides_is_filled_to_its_edge(pattern: str) -> None:
    """Slab 40 x 24 ft, field 39 x 23 ft: 40 lines of 24 places, a foot square each.

    960 places make 960 ft of tube less what bends save and less the fan; loops of 300 ft with
    4 ft to and fro leave 292 ft: four.
    """
    tubes = room("41 ft 4 in", "25 ft 4 in", f'pattern = "{pattern}"\nloop = "300 ft"')
    assert len(tubes.loops) == 4
    assert tubes.covered > 0.99
    assert 0.96 * 960 * FOOT < tubes.length_m < 1.02 * 960 * FOOT
    wholes = [loop.whole_m for loop in tubes.loops]
    assert max(wholes) < 1.05 * min(wholes)


def test_one_small_loop_worked_by_hand() -> None:
    """Field 3 x 1 ft: eight feet round it, open for a foot at the short wall.

    Two corners are left to be rounded off with half a foot.
    """
    tubes = room("5 ft 4 in", "3 ft 4 in", 'way = "4 ft"\ntube = "pex-3/8"')
    (loop,) = tubes.loops
    saved = (2 - pi / 2) * 0.5 * FOOT
    assert loop.length_m == pytest.approx(7 * FOOT - 2 * saved, rel=1e-6)
    assert loop.whole_m - loop.length_m == pytest.approx(8 * FOOT)


def test_bends_are_told_where_the_spacing_is_tighter_than_the_tube() -> None:
    """1/2 in tube of 5/8 in outside bends to 8 x 5/8 = 5 in: runs 10 in apart or more."""
    assert TUBES["pex-1/2"].bend == pytest.approx(5 * INCH)
    wide = room("30 ft", "20 ft", 'spacing = "10 in"')
    assert all(loop.tight == 0 for loop in wide.loops)
    close = room("30 ft", "20 ft", 'spacing = "6 in"')
    turns = sum(loop.tight for loop in close.loops)
    spirals = room("30 ft", "20 ft", 'spacing = "6 in"\npattern = "counterflow"')
    assert 0 < sum(loop.tight for loop in spirals.loops) < turns


def test_the_manifold_stands_where_it_is_told() -> None:
    for at in ("2 ft, 10 ft", "38 ft, 3 ft", "20 ft, 24 ft"):
        tubes = room("41 ft 4 in", "25 ft 4 in", f'manifold = "{at}"')
        x, y = (float(word.split()[0]) * FOOT for word in at.split(","))
        (part,) = tubes.parts
        assert shapely.Point(x, y).distance(shapely.Point(part.taps)) < 8 * FOOT
        for loop in tubes.loops:
            for end in (loop.points[0], loop.points[-1]):
                assert shapely.Point(end).distance(shapely.Point(part.taps)) < 2 * FOOT


def test_a_manifold_off_the_floor_is_a_way_in_every_loop() -> None:
    near = room("41 ft 4 in", "25 ft 4 in", 'manifold = "20 ft, 1 ft"')
    far = room("41 ft 4 in", "25 ft 4 in", 'manifold = "20 ft, -20 ft"')
    assert far.loops[0].way_m > near.loops[0].way_m + 2 * 18 * FOOT
    assert all(loop.whole_m <= 300 * FOOT for loop in far.loops)


def test_without_a_slab_or_room_there_is_no_tube() -> None:
    tiny = room("3 ft 6 in", "3 ft 6 in", 'edge = "12 in"')
    assert tiny.loops == ()
    assert len(tiny.left_out) == 1
