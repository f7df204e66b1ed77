"""What was not checked: on the list while the design leaves it open, gone once it is given."""

import pytest

from geometry.checks.unchecked import unchecked
from geometry.layout.lay import Layout
from tests.houses import WITH_GARAGE, house, without

Change = tuple[str, str]
NO_SOIL = ('group = "GW"', 'group = "unknown"')


def keys(made: Layout) -> set[str]:
    return {point.key for point in unchecked(made)}


def tell(table: str, words: str) -> Change:
    return "[soil]", f"[{table}]\n{words}\n\n[soil]"


def pump(words: str) -> Change:
    return 'on = "12 in" }', f'on = "12 in", {words} }}'


WALL = ('height = "8 ft"\n', 'height = "8 ft"\ncoating = "damp-proofing"\nfoot = "keyway"\n')
TIE = 'tie = "foam bottom at TOF"'
LOW = ('at_wall = "7 ft"', 'at_wall = "3 in"')
BARE = ('material = "concrete-3000"', 'material = "concrete"')
CURVE = (
    'curve = ["20 ft, 0 gpm", "5 ft, 40 gpm"], lift = "9 ft", '
    'discharge = { length = "40 ft", inside = "1.6 in" }'
)
STORM = 'storm = "SCS II"\nrain = "3 in"\nshare = 0.3'
# What leaves a thing open, and what gives it.
CASES: dict[str, tuple[tuple[Change, ...], tuple[Change, ...]]] = {
    "bearing": ((NO_SOIL,), ()),
    "wall-push": ((NO_SOIL,), ()),
    "grading": ((), (('group = "GW"', 'group = "GW"\ngrading = ["4 mm, 60 %", "1 mm, 4 %"]'),)),
    "ground-before": ((), (tell("excavation", 'existing = "6 ft"'),)),
    "frost": ((), (tell("site", 'frost_depth = "42 in"'),)),
    "edition": ((), (tell("rules", 'sets = ["irc-2021"]'),)),
    "termites": ((), (tell("site", 'termites = "slight"'),)),
    "radon-vent": ((), (tell("site", "radon_vent = false"),)),
    "climate": ((), (tell("climate", 'inside = "68 F"\noutside = "45 F"'),)),
    "stories": ((), (tell("site", "stories = 2"),)),
    "backfill-day": ((), (tell("backfill", "state = { deck = true }"),)),
    "wall-foot": ((), (WALL,)),
    "coating": ((), (WALL,)),
    "joints": ((), ((TIE, f'{TIE}\njoints = "10 ft"'),)),
    "strength": ((BARE,), ()),
    "wheel": ((), (tell("loads", 'wheel = "3000 lbf"'),)),
    "surcharge": ((), (tell("loads", 'surcharge = "50 psf"'),)),
    "floor-load": ((), (tell("loads", 'floor = "40 psf"'),)),
    "point-load": ((), (tell("loads", 'point = "2000 lbf"'),)),
    "water-table": ((), (tell("water", 'water_table = "-3 ft"'),)),
    "rain": ((), (tell("water", STORM),)),
    "pump-flow": ((), (pump('flow = "30 gpm"'),)),
    "discharge": ((), (pump(CURVE),)),
    # Nothing a file can say answers these; a house without the part does not ask.
    "pump-electric": ((), (without("sump"),)),
    "outfall": ((), (without("sump"), without("drain"))),
    "wall-design": ((), (without("drain"), without("sump"), LOW),),
}  # fmt: skip
ALWAYS = {
    "ground-as-found", "expansive", "chemistry", "excavation", "neighbours", "utilities",
    "radon-measured", "seismic", "framing", "openings", "slab-steel", "as-delivered", "plumbing",
    "permits", "amendments", "as-built",
}  # fmt: skip


@pytest.mark.parametrize("key", CASES)
def test_what_is_open_is_listed_and_what_is_given_is_not(key: str) -> None:
    left, given = CASES[key]
    assert key in keys(house(*left))
    assert key not in keys(house(*given))


def test_the_limits_of_the_program_are_always_told_and_nothing_is_listed_untested() -> None:
    bare = unchecked(house(NO_SOIL, BARE))
    assert {point.key for point in bare} >= ALWAYS
    assert {point.key for point in bare} <= ALWAYS | set(CASES)
    assert len({point.key for point in bare}) == len(bare)
    assert all(point.why and point.who for point in bare)


def test_a_load_stated_to_be_none_is_answered() -> None:
    loads = frozenset({"loads.wheel", "loads.surcharge", "loads.point"})
    left, answered = ({p.key for p in unchecked(house(), given)} for given in (frozenset(), loads))
    assert left - answered == {"wheel", "surcharge", "point-load"}


@pytest.mark.parametrize("lacking", STORM.splitlines())
def test_rain_is_open_while_any_of_its_three_is_lacking(lacking: str) -> None:
    assert "rain" in keys(house(tell("water", STORM.replace(lacking, ""))))


@pytest.mark.parametrize("words", ['inside = "68 F"', 'outside = "45 F"'])
def test_the_floors_loss_is_open_while_one_temperature_is_lacking(words: str) -> None:
    assert "climate" in keys(house(tell("climate", words)))


def test_one_wall_that_holds_some_fill_is_enough_to_ask_about_walls() -> None:
    # 2 ft 6 in against the basement, nothing against the garage over it.
    assert "wall-design" in keys(house(WITH_GARAGE, ('at_wall = "7 ft"', 'at_wall = "3 ft"')))
