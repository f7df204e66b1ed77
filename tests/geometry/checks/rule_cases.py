"""Rules on footing, wall, floor and grade: a design that keeps each and one that breaks it.

The house of `tests.houses` is edited: footing 20 x 12 in under an 8 in wall of 8 ft, grade at
+7 ft, 6 in of stone, foam, 15 mil Class A sheet, 4 in of slab, gravel (GW, 3,000 psf).
A case: the finding that tells a kept rule, the changes that keep it, those that break it.
"""

from tests.houses import WITH_GARAGE, without

Change = tuple[str, str]
# Above the bottom of the file, after the last key of a table that stands there.
VENT = 'at = "22 ft, 14 ft"\n'
SLAB = '"concrete-3000", thickness = "4 in"'
SHEET = '"e1745-a-15mil", thickness = "15 mil"'
SHEET_ROW = f'    {{ name = "retarder", material = {SHEET}, role = "retarder" }},\n'
SAND = '    { name = "sand", material = "sand-c33", thickness = "2 in", role = "blinding" },\n'
CLAY = ('group = "GW"', 'group = "CL"')
KIND = ('height = "8 ft"\n', 'height = "8 ft"\n{}\n')


def tell(table: str, words: str) -> Change:
    return "[soil]", f"[{table}]\n{words}\n\n[soil]"


def wall(words: str) -> Change:
    return KIND[0], KIND[1].format(words)


def tie(words: str) -> Change:
    return 'tie = "foam bottom at TOF"', f'tie = "foam bottom at TOF"\n{words}'


DRY = (without("drain"), without("sump"), ("count = 2", "count = 0"))
THICK, WIDE = 'thickness = "12 in"', 'width = "20 in"'
FROST = tell("site", 'frost_depth = "42 in"')
# Grade at +7 ft and the footing's bottom at -1 ft: 96 in deep.
CASES: dict[str, tuple[str, tuple[Change, ...], tuple[Change, ...]]] = {
    "footing-width": (
        "footing-rules", (('width = "20 in"', 'width = "12 in"'),),
        (('width = "20 in"', 'width = "11 in"'),),
    ),
    "footing-thickness": (
        "footing-rules", (*DRY, (THICK, 'thickness = "6 in"')),
        (*DRY, (THICK, 'thickness = "5 in"'), (WIDE, 'width = "18 in"')),
    ),
    "footing-stands-out": (
        "footing-rules", (('width = "20 in"', 'width = "12 in"'),),
        (('width = "20 in"', 'width = "20 in"\noffset = "5 in"'),),
    ),
    "footing-projection": (
        "footing-rules", (*DRY, (THICK, 'thickness = "6 in"')),
        # The trap: 23 x 6 in under 8 in stands out 7 1/2 in.
        (*DRY, (WIDE, 'width = "23 in"'), (THICK, 'thickness = "6 in"')),
    ),
    "footing-ground": (
        "footing-rules", (WITH_GARAGE, ('["30 ft, 0", "50 ft', '["45 ft, 0", "50 ft'),
                          ('"50 ft, 20 ft", "30 ft, 20 ft"', '"50 ft, 20 ft", "45 ft, 20 ft"')),
        (WITH_GARAGE,),
    ),
    "footing-depth": (
        "footing-rules", (*DRY, tell("excavation", 'existing = "0 in"')),
        (*DRY, tell("excavation", 'existing = "-1 in"')),
    ),
    "footing-frost": (
        "footing-rules", (FROST,), (tell("site", 'frost_depth = "97 in"'),),
    ),
    "bar-cover": (
        "footing-rules", (), (('cover = "3 in"', 'cover = "2 in"'),),
    ),
    "footing-table": (
        # Two stories on a basement: 17 x 6 on 2,000 psf and better; 23 wide on clay of 1,500 psf.
        "footing-rules", (tell("site", "stories = 2"),), (tell("site", "stories = 2"), CLAY),
    ),
    "wall-above-grade": (
        "wall-rules", (('at_wall = "7 ft"', 'at_wall = "7 ft 6 in"'),),
        (('at_wall = "7 ft"', 'at_wall = "7 ft 8 in"'),),
    ),
    "wall-table": (
        "wall-rules",
        (wall('kind = "8 in block, grouted"'), ('at_wall = "7 ft"', 'at_wall = "4 ft"')),
        (tell("water", 'water_table = "1 ft"'),),
    ),
    "wall-foot": (
        "wall-rules", (), (tie('edge_board = { material = "xps-iv", thickness = "1 in" }'),),
    ),
    "wall-waterproofing": (
        "wall-rules",
        (wall('coating = "waterproofing"'), tell("water", 'water_table = "-3 in"')),
        (wall('coating = "damp-proofing"'), tell("water", 'water_table = "-3 in"')),
    ),
    "slab-thickness": (
        "floor-rules", ((SLAB, SLAB.replace("4 in", "3 1/2 in")),),
        ((SLAB, SLAB.replace("4 in", "3 in")),),
    ),
    "floor-base": (
        "floor-rules", (CLAY,),
        (CLAY, ('thickness = "6 in", role = "base"', 'thickness = "3 in", role = "base"')),
    ),
    "floor-retarder": (
        "floor-rules", (), ((SHEET_ROW, ""),),
    ),
    "retarder-laps": (
        "floor-rules", (tell("order", 'sheet = { lap = "6 in" }'),),
        (tell("order", 'sheet = { lap = "4 in" }'),),
    ),
    "floor-order": (
        "floor-rules", ((SHEET_ROW, SAND + SHEET_ROW),), ((SHEET_ROW, SHEET_ROW + SAND),),
    ),
    "radon-vent": (
        "floor-rules", (tell("site", "radon_vent = true"),),
        (tell("site", "radon_vent = true"), tell("order", 'sheet = { lap = "6 in" }')),
    ),
    "radon-placed": (
        "radon-pipe", (tell("vent", VENT),), (tell("site", "radon_vent = true"),),
    ),
    "radon-pipe-size": (
        # Schedule 40 of 4 in is 4.03 in inside, of 6 in 6.07 in.
        "radon-pipe", (tell("vent", f'{VENT}pipe = "sch40-4"'),),
        (tell("vent", f'{VENT}pipe = "sch40-6"'),),
    ),
    "radon-floor": (
        # Inside the walls 28'-8" by 18'-8"; 98'-8" by 48'-8" are 4,802 ft2.
        "radon-pipe", (tell("vent", VENT),),
        (tell("vent", VENT), ('"30 ft, 0", "30 ft, 20 ft", "0, 20 ft"',
         '"100 ft, 0", "100 ft, 50 ft", "0, 50 ft"')),
    ),
    "slab-joints": (
        "slab-joint-rules", (tie('joints = "12 ft"'),), (tie('joints = "13 ft"'),),
    ),
    "slab-panels": (
        # Inside the walls 28'-8" by 18'-8": cut at 12 ft, 9'-7" by 9'-4"; at 18 ft 8 in, 14'-4" by
        # 18'-8"; at 10 ft in a room of 10 ft by 11 ft, 10 by 5 1/2.
        "slab-joint-rules", (tie('joints = "12 ft"'),),
        (tie('joints = "10 ft"'), ('"30 ft, 0", "30 ft, 20 ft", "0, 20 ft"',
         '"11 ft 4 in, 0", "11 ft 4 in, 12 ft 4 in", "0, 12 ft 4 in"'),
         ('at = "15 ft, 10 ft"', 'at = "8 ft, 8 ft"\nwidth = "16 in"'),
         ('[sump]\nat = "4 ft, 5 ft"\npump = { off = "4 in", on = "12 in" }\n', "")),
    ),
    "slab-isolation": (
        "slab-joint-rules",
        (wall('foot = "keyway"'), tie('edge_board = { material = "xps-iv", thickness = "1 in" }')),
        (wall('foot = "keyway"'),),
    ),
    "dig-slope": (
        # Ground at +6 ft 6 in over a footing's bottom at -1 ft: 29 CFR 1926.652(b)(1)(i).
        "dig-rules", (tell("excavation", "slope = 1.5"),), (tell("excavation", "slope = 1.25"),),
    ),
    "grade-away": (
        "grade-rules", (), (('fall = "5 %"', 'fall = "4 %"'),),
    ),
    "pit-width": (
        "pit-rules", (), (('at = "4 ft, 5 ft"', 'at = "4 ft, 5 ft"\ndiameter = "16 in"'),),
    ),
    "pit-depth": (
        "pit-rules", (), (('at = "4 ft, 5 ft"', 'at = "4 ft, 5 ft"\ndepth = "23 in"'),),
    ),
    "foam-termites": (
        "termite-rules", (tell("site", 'termites = "heavy"'),),
        (tell("site", 'termites = "very heavy"'),),
    ),
}  # fmt: skip
