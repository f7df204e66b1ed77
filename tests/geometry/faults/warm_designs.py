"""Faults in what is said of climate, site and loads on the floor."""

from sound_design import Case, one


def _said(name: str, table: str, line: str, *words: str, place: str = "") -> Case:
    key = line.split(" =")[0]
    where = f"{table} > {place or key}"
    return one(name, "[soil]", f"[{table}]\n{line}\n\n[soil]", where, key, *words)


ALL = (
    _said("heat without unit", "climate", 'inside = "68"', "not a temperature", "68 F or 20 C"),
    _said("heat as a number", "climate", "inside = 20", "not a temperature", "68 F or 20 C"),
    _said("an oven", "climate", 'inside = "68 C"', "outside -76 F to 140 F", "check its unit"),
    _said("R by word", "climate", 'wall_resistance = "good"', "not a thermal resistance", "R-15"),
    _said("R of a mile", "climate", 'wall_resistance = "R-1000"', "outside R-0 to R-113"),
    _said("ground of copper", "climate", 'ground_conductivity = "390 W/mK"', "outside 0.2 to 6"),
    _said("ground by depth", "climate", 'ground_conductivity = "3 ft"', "thermal conductivity"),
    _said("no such area", "climate", 'unheated = ["porsh"]', 'no area is called "porsh"',
          'did you mean "porch"', place="unheated 1"),
    _said("an area twice", "climate", 'unheated = ["porch", "porch"]', "stands here twice",
          place="unheated 2"),
    _said("frost of a mine", "site", 'frost_depth = "40 ft"', "give 0 to 20 ft"),
    _said("too many stories", "site", "stories = 7", "3"),
    _said("termites by feel", "site", 'termites = "some"', '"some" is not known', "'heavy'"),
    _said("snow by depth", "site", 'snow = "2 ft"', "unit ft", "not a pressure"),
    _said("post without unit", "loads", "point = 2000", "no unit", "3000 lbf or 13 kN"),
    _said("post on a hair", "loads", 'point_side = "0.1 in"', "give 1/2 in to 4 ft"),
    _said("edition of nowhere", "rules", 'sets = ["irc-1999"]', '"irc-1999" is not known',
          "'irc-2021'", place="sets 1"),
)  # fmt: skip
