"""Faults of what is said of water, grading, rules on the drain and the pump's flow."""

from sound_design import Case, one


def _water(name: str, line: str, *words: str, on: str = "") -> Case:
    """A case whose faulty key is the last of a record."""
    key = line.splitlines()[-1].split(" =")[0]
    return one(name, "[soil]", f"[water]\n{line}\n\n[soil]", f"water > {key}", on or key, *words)


WATER = (
    _water("no such storm", 'storm = "SCS IV"', '"SCS IV" is not known', "'SCS II'"),
    _water("time no time", 'duration = "long"', "'long' is not a time", "24 h"),
    _water("time without unit", "duration = 24", "no unit", "24 h"),
    _water("time too long", 'duration = "24 days"', "outside 5 min to 10 days", "check its unit"),
    _water("storm longer than its day", 'storm = "SCS I"\nduration = "30 h"',
           "SCS I lasts 24 h, or its middle part up to 19 h", "steady"),
    _water("rain no length", 'rain = "much"', "'much' is not a length"),
    _water("share over one", "share = 1.5", "1.5 is out of range", "0 to 1"),
    _water("roof in feet", 'roof = "30 ft"', "unit ft", "not an area", "900 sq ft"),
    _water("conductivity bare", 'conductivity = "1e-4"', "no unit", "1e-4 cm/s"),
    _water("conductivity far off", 'conductivity = "5 m/s"', "5 m/s lies outside", "100 cm/s"),
    _water("no such level", 'water_table = "mud"', '"mud" is no level here', "footing bottom"),
    _water("a lake", 'water_table = "40 ft"', "would stand over the ground", "check the sign"),
    _water("far level", 'water_table = "TOF +80 ft"', "out of range", "check the unit"),
    _water("low table no level", 'water_table = "TOF"\nlow_water_table = "mud"',
           '"mud" is no level here'),
    _water("low table alone", 'low_water_table = "-2 ft"', "stands alone", "add water_table"),
    _water("tables swapped", 'water_table = "-2 ft"\nlow_water_table = "-1 ft"',
           "lies above the highest at -2'-0\"", "swap the two"),
    _water("base over the table", 'water_table = "-1 ft"\ntight_base = "TOF"',
           "is not below the water table", "leave it out"),
    _water("unknown key", 'downspouts = "900 sq ft"', "downspouts is not known", "roof"),
)  # fmt: skip


def _graded(name: str, points: str, place: str, *words: str) -> Case:
    more = f'group = "CL"\ngrading = [{points}]'
    return one(name, 'group = "CL"', more, f"soil > grading{place}", "grading", *words)


GRADING = (
    _graded("one sieve", '"No. 4, 100 %"', "", "fewer than two sieves are no curve"),
    _graded(
        "rising", '"2 mm, 40 %", "No. 200, 60 %"', "", "60% pass the sieve of 0.075 mm", "must fall"
    ),
    _graded(
        "sieve twice",
        '"2 mm, 90 %", "No. 10, 90 %", "No. 40, 10 %"',
        "",
        "the sieve of 2 mm stands here twice",
    ),
    _graded(
        "over the whole", '"2 mm, 120 %", "No. 40, 10 %"', " 1", "120 % cannot pass", "0 to 100"
    ),
    _graded("below nothing", '"2 mm, -5 %", "No. 40, 10 %"', " 1", "no share", "35 %"),
    _graded("whole numbers", '"2 mm, 95", "No. 40, 10 %"', " 1", "more than the whole", "35 %"),
    _graded("no such sieve", '"No. 41, 95 %", "No. 200, 10 %"', " 1", "no sieve No. 41", "in mm"),
    _graded("no unit", '"2, 95 %", "No. 200, 10 %"', " 1", "unit", "No. 200, 35 %"),
    _graded("half a point", '"2 mm", "No. 200, 10 %"', " 1", "no sieve and share"),
    _graded("boulders", '"2 m, 100 %", "No. 200, 10 %"', " 1", "outside 0.0001 to 300 mm"),
)


def _delivered(name: str, rows: str, key: str, on: str, *words: str) -> Case:
    return one(name, "[soil]", f"{rows}\n[soil]", f"grading {key}", on, *words)


_STONE = '[[grading]]\nmaterial = "{}"\nsieves = [{}]\n'
_SIEVES = '"1 in, 100 %", "No. 4, 5 %"'

DELIVERED = (
    _delivered(
        "no such stone",
        _STONE.format("stone-75", _SIEVES),
        "1 > material",
        "stone-75",
        '"stone-75" is no stone or sand',
        "stone-",
    ),
    _delivered("soil for stone", _STONE.format("CL", _SIEVES), "1 > material", "CL", "no stone"),
    _delivered(
        "stone twice",
        2 * _STONE.format("stone-57", _SIEVES),
        "2 > material",
        "material",
        "has a grading already",
    ),
    _delivered(
        "no sieves",
        '[[grading]]\nmaterial = "stone-57"\n',
        "1 > sieves",
        "[[grading]]",
        "sieves is missing",
        "as tested",
    ),
    _delivered("empty", _STONE.format("stone-57", ""), "1 > sieves", "sieves", "fewer than two"),
    _delivered(
        "rising",
        _STONE.format("stone-57", '"1 in, 10 %", "No. 4, 50 %"'),
        "1 > sieves",
        "sieves",
        "must fall",
    ),
)


def _load(name: str, line: str, *words: str) -> Case:
    key = line.split(" =")[0]
    return one(name, "[soil]", f"[loads]\n{line}\n\n[soil]", f"loads > {key}", key, *words)


LOADS = (
    _load("no such bedding", 'bedding = "rolled"', '"rolled" is not known', "'dumped'", "'high'"),
    _load("wheel without unit", "wheel = 3000", "no unit", "3000 lbf or 13 kN"),
    _load("wheel of pressure", 'wheel = "100 psf"', "unit psf", "not a force"),
    _load("a crane", 'wheel = "90 kips"', "outside 0 to 40000 lbf", "check its unit"),
    _load("load of force", 'surcharge = "100 lb"', "unit lb", "not a pressure", "5 kPa"),
    _load("limit of all", 'deflection_limit = "50 %"', "outside 1 % to 10 %"),
    _load("limit in whole", "deflection_limit = 5", "more than the whole", "35 %"),
    one(
        "deck by word",
        "[soil]",
        '[backfill.state]\ndeck = "yes"\n\n[soil]',
        "backfill > state > deck",
        "deck",
        '"yes" does not fit',
        "true or false",
    ),
    one(
        "water up in the air",
        "[soil]",
        '[backfill]\nwater_depth = "-1 ft"\n\n[soil]',
        "backfill > water_depth",
        "water_depth",
        "out of range",
        "0 to 20 ft",
    ),
)


def _rules(name: str, sets: str, number: int, *words: str) -> Case:
    text = f"[rules]\nsets = {sets}\n\n[soil]"
    return one(name, "[soil]", text, f"rules > sets {number}", "sets =", *words)


RULES = (
    _rules("no such set", '["irc", "ontario"]', 2, '"ontario" is not known', "'irc'", "'canada'"),
    _rules("set twice", '["irc", "din", "irc"]', 3, '"irc" stands here twice'),
)


def _pump(name: str, more: str, key: str, *words: str) -> Case:
    line = f'depth = "30 in"\npump = {{ off = "4 in", on = "12 in", {more} }}'
    return one(name, 'depth = "30 in"', line, f"sump > pump > {key}", "pump", *words)


_CURVE = 'curve = ["18 ft, 0 gpm", "10 ft, 34 gpm"]'

FLOWS = (
    _pump("flow bare", "flow = 34", "flow", "34' has no unit", "34 gpm"),
    _pump("flow and curve", f'flow = "34 gpm", {_CURVE}, lift = "9 ft"', "flow",
          "leave out flow or curve"),
    _pump("no lift", _CURVE, "lift", "a curve is read at a head", 'lift = "9 ft"'),
    _pump("lift in the pit", f'{_CURVE}, lift = "2 ft"', "lift", "below its rim", "2'-6\""),
    _pump("one point", 'curve = ["18 ft, 0 gpm"], lift = "9 ft"', "curve", "no curve"),
    _pump("no shut-off", 'curve = ["18 ft, 5 gpm", "9 ft, 34 gpm"], lift = "9 ft"', "curve",
          "head at no flow is missing"),
    _pump("rising", 'curve = ["9 ft, 0 gpm", "18 ft, 34 gpm"], lift = "9 ft"', "curve",
          "does not fall"),
    _pump("same flow twice", 'curve = ["9 ft, 0 gpm", "8 ft, 0 gpm"], lift = "9 ft"', "curve",
          "does not fall"),
    _pump("point of one figure", 'curve = ["9 ft"], lift = "9 ft"', "curve 1", "no head and flow"),
    _pump("head bare", 'curve = ["9, 0 gpm"], lift = "9 ft"', "curve 1", "no unit"),
    _pump("head too high", 'curve = ["900 ft, 0 gpm"], lift = "9 ft"', "curve 1", "0 to 300 ft"),
    _pump("discharge alone", 'discharge = { length = "40 ft", inside = "1.6 in" }', "discharge",
          "add curve and lift"),
    _pump("discharge without inside", f'{_CURVE}, lift = "9 ft", discharge = {{ length = "9 ft" }}',
          "discharge > inside", "inside is missing", "1.6 in"),
)  # fmt: skip

ALL = (*WATER, *GRADING, *DELIVERED, *LOADS, *RULES, *FLOWS)
