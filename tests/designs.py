"""Random designs, all invented, for the tests: sound ones only."""

from copy import deepcopy
from functools import cache
from typing import Any

import shapely
from hypothesis import assume
from hypothesis import strategies as st
from shapely import Polygon

from geometry.faults.find import faults
from geometry.project import Design
from tests.dice import Dice, Drawn, Length, Seeded, Words, millimetres, said
from tests.whole.outlines import attached, outline

Raw = dict[str, Any]
Plan = list[tuple[Length, Length]]

# Role: material, thinnest and thickest in sixteenths of an inch.
LAYERS: dict[str, tuple[str, int, int]] = {
    "base": ("stone-57", 32, 160),
    "blinding": ("sand-c33", 4, 48),
    "retarder": ("poly-10mil", 1, 2),
    "insulation": ("xps-iv", 8, 96),
    "slab": ("concrete", 32, 112),
    "fill": ("sand-c33", 32, 128),
}
USUAL = ("base", "blinding", "retarder", "insulation", "slab")


def inches(dice: Dice, low: float, high: float) -> Length:
    return Length(dice.whole(round(low * 16), round(high * 16)))


def floor(dice: Dice) -> tuple[Raw, int]:
    """Return a build-up of 1 to 7 layers in any order, and the finished floor in sixteenths."""
    roles = list(USUAL) if dice.whole(0, 1) else _any_roles(dice)
    layer = []
    for number, role in enumerate(roles, 1):
        material, thin, thick = LAYERS[role]
        name = f"{role} {number}"
        thickness = Length(dice.whole(thin, thick))
        layer.append({"name": name, "material": material, "thickness": thickness, "role": role})
    faces = ["subgrade", *(f"{row['name']} top" for row in layer)]
    at = dice.whole(0, len(layer))
    face = "finished floor" if at == len(layer) and dice.whole(0, 1) else faces[at]
    form, level = _tie_level(dice, at / len(layer))
    top = level.sixteenths + sum(row["thickness"].sixteenths for row in layer[at:])
    return {"layer": layer, "tie": [Words(f"{face} at {form}", level)]}, top


def _any_roles(dice: Dice) -> list[str]:
    return [dice.choice(tuple(LAYERS)) for _ in range(dice.whole(1, 7))]


def _tie_level(dice: Dice, share: float) -> tuple[str, Length]:
    """A level for a face that lies at a share of the build-up's height."""
    if share < 0.9 and dice.whole(0, 1):
        return "TOF", Length(0)
    level = Length(round(16 * (share - 0.6) * 12) + dice.whole(-40, 40))
    return dice.choice((("TOF {+}", level), ("{}", level)))


def footing(dice: Dice) -> tuple[Raw, Raw]:
    """Return a strip and a wall that stands wholly on it."""
    thick = inches(dice, 6, 14)
    spare = inches(dice, 0, 14)
    shift = (
        dice.whole(-spare.sixteenths // 2, spare.sixteenths // 2) if dice.whole(0, 3) == 0 else 0
    )
    strip = {
        "width": Length(max(8 * 16, thick.sixteenths + spare.sixteenths)),
        "thickness": inches(dice, 10, 18),
        "offset": Length(shift),
        "bars": {"count": 0},
    }
    return strip, {"thickness": thick, "height": inches(dice, 42, 110)}


def core(corners: Plan, strip: Raw, wall: Raw) -> Polygon:
    """The plan inside the footings, by shapely's own mitred buffer."""
    inward = (strip["width"].m + wall["thickness"].m) / 2 - strip["offset"].m
    shape = Polygon([(x.m, y.m) for x, y in corners])
    return shape.buffer(-inward, join_style="mitre")


def places(inside: Polygon, clear: float, step: float = 0.6) -> Plan:
    """Grid places inside a plan with a clear distance to its edge, nearest to the edge first."""
    shape = inside.buffer(-clear - 0.01)
    if shape.is_empty:
        return []
    x0, y0, x1, y1 = shape.bounds
    grid = [
        (Length(round(x / (0.0254 / 16))), Length(round(y / (0.0254 / 16))))
        for x in _every(x0, x1, step)
        for y in _every(y0, y1, step)
    ]
    points = [(p, shapely.Point(p[0].m, p[1].m)) for p in grid]
    kept = [(shape.exterior.distance(q), p) for p, q in points if _inside(shape, q)]
    return [p for _, p in sorted(kept, key=lambda row: round(row[0], 3))]


def _every(low: float, high: float, step: float) -> list[float]:
    return [low + step * n for n in range(int((high - low) / step) + 1)]


def _inside(shape: Polygon, point: shapely.Point) -> bool:
    return isinstance(shape, Polygon) and bool(shape.contains(point))


def piers(dice: Dice, inside: Polygon, kept_clear: list[Polygon]) -> list[Raw]:
    found = []
    for _ in range(dice.whole(0, 6)):
        width, depth = inches(dice, 16, 40), inches(dice, 16, 40)
        spots = places(inside, max(width.m, depth.m) * 0.75)
        at = dice.choice(spots) if spots else (Length(0), Length(0))
        x, y = at[0].m, at[1].m
        pad = shapely.box(x - width.m / 2, y - depth.m / 2, x + width.m / 2, y + depth.m / 2)
        if not spots or any(pad.distance(other) < 0.02 for other in kept_clear):
            continue
        kept_clear.append(pad)
        form, least = dice.choice((("TOF", 0), ("TOF {+}", -6), ("subgrade", 0), ("TOF {+}", -2)))
        found.append(
            {
                "at": at, "width": width, "depth": depth, "thickness": inches(dice, 8, 14),
                "pad_top": Words(form, Length(least * 16 + dice.whole(-16, 16))),
                "column": dice.choice(("round", "square", "none")),
                "column_size": inches(dice, 6, 15),
                "column_top": Words(
                    *dice.choice(
                        (("finished floor", Length(0)), ("finished floor {+}", Length(-8)),
                         ("finished floor {+}", Length(40)))
                    )
                ),
            }
        )  # fmt: skip
    return found


def drain(dice: Dice, corners: Plan, joined: list[int]) -> Raw:
    """A drain round the main area, or along a run of sides that no other area joins."""
    count = len(corners)
    sides: Any = "all"
    cleanouts: list[int] = []
    if joined or dice.whole(0, 3) == 0:
        start = (max(joined) + 1 if joined else dice.whole(0, count - 1)) % count
        free = next((n for n in range(count) if (start + n) % count in joined), count - 1)
        sides = [(start + n) % count + 1 for n in range(dice.whole(1, max(1, free)))]
        cleanouts = [s for s in sides[1:] if dice.whole(0, 2) == 0]
    else:
        cleanouts = [n + 1 for n in range(count) if dice.whole(0, 3) == 0]
    offset = inches(dice, 4, 9)
    return {
        "sides": sides, "cleanouts": cleanouts, "offset": offset,
        "pipe": dice.choice(("d2729-4", "sdr35-4", "sch40-4", "d2729-3", "en1401-110")),
        "fall": dice.choice(("level", "1/16 in per ft", "1/8 in per ft", "0.5 %")),
        "holes": {
            "rows": dice.choice(([-60, 60], [-45, 0, 45], [-60, -30, 30, 60], [0], [])),
            "diameter": Length(dice.choice((4, 6, 8))), "spacing": inches(dice, 3, 12),
        },
        "stone": {
            "width": Length(offset.sixteenths + dice.whole(5 * 16, 10 * 16)),
            "bedding": inches(dice, 1, 4), "cover": inches(dice, 2, 10),
        },
        "wrap": {"overlap": inches(dice, 0, 14)},
    }  # fmt: skip


def sump(dice: Dice, spots: Plan, depth: Length) -> Raw:
    near = spots[: max(1, len(spots) // 3)]
    return {
        "at": dice.choice(near), "diameter": inches(dice, 14, 22), "depth": depth,
        "stone_beside": inches(dice, 2, 6), "stone_below": inches(dice, 2, 6),
    }  # fmt: skip


def pump(dice: Dice) -> Raw:
    """Return float levels that fit into the shallowest pit rolled here, 20 in."""
    off = dice.whole(2 * 16, 4 * 16)
    on = off + dice.whole(2 * 16, 8 * 16)
    alarm = {"alarm": Length(on + dice.whole(1 * 16, 6 * 16))} if dice.whole(0, 1) else {}
    return {"off": Length(off), "on": Length(on), **alarm}


def pump_flow(dice: Dice) -> Raw:
    """Return what a pump throws, or its curve with the lift."""
    if dice.whole(0, 1):
        return {"flow": dice.choice(("12 gpm", "34 gpm", "2.1 L/s"))}
    pipe = {"discharge": {"length": inches(dice, 120, 600), "inside": inches(dice, 1.25, 2)}}
    curve = ["25 ft, 0 gpm", "18 ft, 20 gpm", "10 ft, 34 gpm", "1 ft, 50 gpm"]
    lift = {"lift": inches(dice, 132, 180)}
    return {"curve": curve, **lift, **(pipe if dice.whole(0, 1) else {})}


def water(dice: Dice) -> Raw:
    """Return some of what can be known of the water."""
    storms = ("SCS I", "SCS IA", "SCS II", "SCS III", "steady")
    known: Raw = {
        "storm": dice.choice(storms), "rain": inches(dice, 0, 8),
        "duration": dice.choice(("24 h", "12 h", "90 min")),
        "strip": inches(dice, 0, 120), "share": dice.choice((0, 0.3, 1)),
        "roof": dice.choice(("0", "900 sq ft")),
        "water_table": Words("footing bottom {+}", Length(dice.whole(-16 * 24, 16 * 24))),
        "conductivity": dice.choice(("1e-7 cm/s", "1e-4 cm/s", "1e-1 cm/s")),
        "reach": inches(dice, 60, 1200),
    }  # fmt: skip
    return {key: value for key, value in known.items() if dice.whole(0, 4)}


def site(dice: Dice) -> Raw:
    """Return what can be known of soil, loads and rules in force."""
    sandy = ["No. 4, 100 %", "0.425 mm, 0.8", "No. 200, 35 %"]
    return {
        "soil": {
            "group": dice.choice(("SM", "CL", "unknown")),
            "grading": dice.choice(([], sandy, sandy[:2], ["0.02 mm, 60 %", "1 mm, 100 %"])),
        },
        "loads": {
            "bedding": dice.choice(("dumped", "slight", "moderate", "high")),
            "wheel": dice.choice(("0", "3000 lbf", "40 kN")),
            "surcharge": dice.choice(("0", "100 psf", "5 kPa")),
            "deflection_limit": dice.choice(("3 %", 0.05)),
        },
        "rules": {"sets": dice.choice(([], ["irc"], ["din", "wayne"]))},
    }


def filled(dice: Dice) -> Raw:
    """Return how the fill is met: water in it, and what holds the walls."""
    states: tuple[Raw, ...] = ({}, {"deck": False, "braced": False}, {"deck": True, "slab": True})
    return {"water_depth": inches(dice, 0, 120), "state": dice.choice(states)}


def own_rule(dice: Dice, number: int) -> Raw:
    """Return a rule of the house's own on a height of the drain."""
    points = ("trench bottom", "pipe underside", "invert", "lowest hole", "highest hole", "crown",
              "stone top")  # fmt: skip
    base = dice.choice(("TOF", "footing bottom", "finished floor", "subgrade"))
    level = Words(f"{base} {{+}}", Length(dice.whole(-96, 96)))
    return {
        "name": f"rule {number}", "point": dice.choice(points),
        "at": dice.choice(("at or below", "at or above")), "level": level,
    }  # fmt: skip


def ground(dice: Dice) -> Raw:
    return {
        "excavation": {
            "working_space": inches(dice, 20, 36),
            "slope": dice.choice((0.0, 0.5, 0.75, 1.0, 1.5)),
        },
        "backfill": {
            "stone_width": inches(dice, 0, 18),
            **({"stone_top": inches(dice, 6, 60)} if dice.whole(0, 1) else {}),
        },
        "grade": {
            "fall": dice.choice(("2 %", "5 %", "1/2 in per ft", "level")),
            "fall_length": inches(dice, 48, 120),
            **({"at_wall": inches(dice, 24, 42)} if dice.whole(0, 2) == 0 else {}),
        },
    }


def uppers(dice: Dice, corners: Plan) -> tuple[list[Raw], list[int]]:
    """Return up to two areas beside the main one, and the sides (from 0) they join."""
    found: list[Raw] = []
    joined: list[int] = []
    for _ in range(dice.choice((0, 0, 1, 1, 2))):
        side = dice.whole(0, len(corners) - 1)
        strip, wall = footing(dice)
        build_up, _ = floor(dice)
        row: Raw = {
            "name": f"upper {len(found) + 1}", "corners": attached(dice, corners, side),
            "step": Length(dice.choice((0, 16 * 8, 16 * 24, 16 * 40, 16 * 60))),
            **({"footing": strip, "wall": wall} if dice.whole(0, 1) else {}),
            **({"floor": build_up} if dice.whole(0, 1) else {}),
        }  # fmt: skip
        if _clear(row["corners"], [corners, *(other["corners"] for other in found)]):
            found.append(row)
            joined.append(side)
    return found, sorted(joined)


def _clear(plan: Plan, others: list[Plan]) -> bool:
    shape, *rest = (Polygon([(x.m, y.m) for x, y in p]) for p in (plan, *others))
    return all(shape.intersection(other).area < 1e-4 for other in rest)


def raw_design(dice: Dice) -> Raw:
    """Return a raw design; most, not all, are sound."""
    corners = outline(dice)
    strip, wall = footing(dice)
    build_up, top = floor(dice)
    if dice.whole(0, 4) == 0:
        build_up["edge_board"] = _edge_board(dice)
    areas, joined = uppers(dice, corners)
    inside = core(corners, strip, wall)
    raw: Raw = {"project": {"name": "invented"}, "footing": strip, "wall": wall, "floor": build_up}
    taken: list[Polygon] = []
    spots = places(inside, 0.5)
    if dice.whole(0, 2):
        raw["drain"] = drain(dice, corners, joined)
    if spots and dice.whole(0, 1):
        deep = Length(max(0, top) + strip["thickness"].sixteenths + dice.whole(10 * 16, 20 * 16))
        raw["sump"] = sump(dice, spots, deep)
        x, y = raw["sump"]["at"]
        taken.append(shapely.Point(x.m, y.m).buffer(0.6))
    main = {"name": "main", "corners": corners, "pier": piers(dice, inside, taken)}
    whole = {**raw, **ground(dice), "area": [main, *areas]}
    # Rolled last, so that a seed's other parts stay as they are.
    if "sump" in whole and dice.whole(0, 1):
        whole["sump"]["pump"] = pump(dice)
    if "drain" in whole and dice.whole(0, 2) == 0:
        whole["height_rule"] = [own_rule(dice, n + 1) for n in range(dice.whole(1, 2))]
    if dice.whole(0, 2):
        whole["water"] = water(dice)
    if "pump" in whole.get("sump", {}) and dice.whole(0, 2):
        whole["sump"]["pump"] |= pump_flow(dice)
    if dice.whole(0, 1):
        whole |= site(dice)
        whole["backfill"] |= filled(dice)
    free = [p for p in spots if all(place(p).distance(other) > 0.3 for other in taken)]
    if free and "sump" not in whole and dice.whole(0, 2) == 0:
        whole["vent"] = {"at": dice.choice(free), "pipe": dice.choice(("sch40-3", "sch40-4"))}
    return whole


def place(at: tuple[Length, Length]) -> shapely.Point:
    return shapely.Point(at[0].m, at[1].m)


def _edge_board(dice: Dice) -> Raw:
    low = dice.choice(("TOF", "finished floor {+}"))
    return {
        "thickness": inches(dice, 0.5, 2),
        "bottom": Words(low, Length(-dice.whole(8, 48))),
        "top": Words("finished floor", Length(0)),
    }


def design_of(raw: Raw) -> Design:
    """Return a raw design read, its faults not looked at."""
    return Design.model_validate(said(raw, millimetres))


def sound(design: Design) -> bool:
    """Say whether a design has no faults."""
    return not faults(design)


def seeded_raw(seed: int) -> Raw | None:
    """Return the raw design of a seed, one's own to change, or None where it is not sound."""
    return deepcopy(_seeded(seed))


@cache
def _seeded(seed: int) -> Raw | None:
    raw = raw_design(Seeded(seed))
    return raw if sound(design_of(raw)) else None


@st.composite
def raw_designs(draw: Any) -> Raw:
    """Sound raw designs that shrink."""
    raw = raw_design(Drawn(draw))
    assume(sound(design_of(raw)))
    return raw
