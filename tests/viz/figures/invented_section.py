"""An invented wall section, made by hand: outside at the left, distances and levels in inches."""

from shapely import MultiPolygon, Point, Polygon, affinity, box, difference, union_all

from geometry.label import Label, Role
from geometry.sections.face import CutFace
from geometry.units import INCH, System
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.setting import Picture
from viz.figures.section.strings import detail_strings, whole_strings
from viz.figures.section.view import Window, polygons

SHEET = 0.010
WRAP = 2 / 25.4
PIPE_OUT, PIPE_WALL = 4.215, 0.12
TOF_ELEVATION_M = 30.48

LABELS = {
    "wall": "Concrete wall\n8 in, poured",
    "footing": "Concrete footing\n20 in × 10 in",
    "base": "Washed stone\n4 in, base",
    "sand": "Sand\n2 in, blinding",
    "sheet": "Vapor retarder\n10 mil, laps taped",
    "foam": "Rigid foam board\n2 in, under slab",
    "slab": "Concrete slab\n4 in",
    "pad": "Pier pad\n30 in × 12 in",
    "column": "Pier\n12 in, flush with floor",
    "pipe": "Perforated pipe\n4 in, holes down",
    "bed": "Washed stone\nround the drain",
    "wrap": "Filter fabric\n2 mm, laps 12 in",
    "soil": "Backfill\nnative soil, in lifts of 8 in",
    "topsoil": "Topsoil\n4 in, falls away from the house",
    "dig": "",
}
LEVELS = tuple(
    LevelMark(name, inches * INCH, TOF_ELEVATION_M + inches * INCH)
    for name, inches in (
        ("Top of wall", 96), ("Finished grade at wall", 88), ("Finished floor", 6),
        ("Top of foam", 2), ("Top of footing (TOF)", 0), ("Bottom of sand", -2 - SHEET),
        ("Subgrade", -6 - SHEET), ("Bottom of footing", -10), ("Pipe invert", -10.5),
        ("Bottom of drain stone", -14),
    )
)  # fmt: skip
WINDOW = tuple(inches * INCH for inches in (-92.0, -26.0, 84.0, 100.0))


def face(part: str, name: str, role: Role, material: str, shape: object) -> CutFace:
    inches = polygons(shape)  # type: ignore[arg-type]
    metres = affinity.scale(inches, INCH, INCH, origin=(0, 0))
    return CutFace(Label(part, name, role, material, "basement", 0), MultiPolygon(metres.geoms))


def faces() -> tuple[CutFace, ...]:
    """The whole section, mirrored parts left out: one wall, its drain and some floor."""
    wall, footing = box(0, 0, 8, 96), box(-6, -10, 14, 0)
    column, pad = box(54, -4, 66, 6), box(45, -16, 75, -4)
    piers = union_all([column, pad])
    trench = box(-30, -14, -6, 4)
    stone = box(-30 + WRAP, -14 + WRAP, -6 - WRAP, 4 - WRAP)
    middle = Point(-18, -10.5 + PIPE_OUT / 2)
    outside = middle.buffer(PIPE_OUT / 2, quad_segs=24)
    inside = middle.buffer(PIPE_OUT / 2 - PIPE_WALL, quad_segs=24)
    low = -2 - SHEET
    brim = -30 - 0.5 * 98
    hole = union_all([
        Polygon([(-30, -14), (-6, -14), (-6, -10), (14, -10), (14, low - 4), (160, low - 4),
                 (160, 88), (brim, 84), (-30, -14)]),
        pad,
    ])  # fmt: skip
    ground = Polygon([(brim, 84), (0, 88), (0, -10), (-30, -14)])
    topsoil = Polygon([(brim, 84), (0, 88), (0, 84), (brim + 2, 80)])
    back = difference(ground, union_all([trench, footing, wall, topsoil]))
    back = difference(back, box(-200, -20, 200, -10))
    made = [
        ("dig", "Excavation", "excavation", "native soil", hole),
        ("footing", "Footing", "footing", "concrete", footing),
        ("wall", "Wall", "wall", "concrete", wall),
        ("pad", "Pier pad", "pad", "concrete", pad),
        ("column", "Pier", "column", "concrete", column),
        ("base", "Washed stone", "base", "stone-57", box(14, low - 4, 160, low) - piers),
        ("sand", "Sand", "blinding", "sand", box(14, low, 160, -SHEET) - piers),
        ("sheet", "Vapor retarder", "retarder", "poly-10", box(14, -SHEET, 160, 0) - piers),
        ("foam", "Rigid foam board", "insulation", "xps", box(8, 0, 160, 2) - piers),
        ("slab", "Slab", "slab", "concrete", box(8, 2, 160, 6) - piers),
        ("wrap", "Filter fabric", "wrap", "fabric", trench - stone),
        ("bed", "Drain stone", "drain stone", "stone-57", stone - outside),
        ("pipe", "Drain pipe", "pipe", "pipe-4", outside - inside),
        ("soil", "Backfill", "backfill", "native soil", back),
        ("topsoil", "Topsoil", "grading", "topsoil", topsoil),
    ]  # fmt: skip
    return tuple(face(part, name, role, key, shape) for part, name, role, key, shape in made)  # type: ignore[arg-type]


def across_house() -> tuple[CutFace, ...]:
    """The section run on to a second wall like the first, 28 ft from outside to outside."""
    middle = 14 * 12 * INCH
    near, far = box(-50, -50, middle, 50), box(middle, -50, 50, 50)
    whole = []
    for face in faces():
        left = union_all([face.shape, _run_on(face.shape)]).intersection(near)
        right = affinity.scale(left, -1, 1, origin=(middle, 0)).intersection(far)
        joined = union_all([left, right]).buffer(1e-6).buffer(-1e-6)
        whole.append(CutFace(face.label, polygons(joined)))
    return tuple(whole)


def _run_on(shape: MultiPolygon) -> object:
    """What reaches the end of the section, stretched on beyond it."""
    end = shape.intersection(box(159 * INCH, -50, 160 * INCH, 50))
    return affinity.scale(end, 20, 1, origin=(159 * INCH, 0))


def picture(
    whole: bool = False,
    system: System = "ft-in",
    words: dict[str, str] = LABELS,
    levels: tuple[LevelMark, ...] = LEVELS,
    window: Window | None = WINDOW,
) -> Picture:
    """The wall alone, cropped to a window, or the whole house across."""
    cut = across_house() if whole else faces()
    shown = None if whole else window
    strings = detail_strings(cut, shown) if shown else whole_strings(cut)
    return Picture("invented", "Invented", cut, levels, words, system, strings=strings,
                   window=shown)  # fmt: skip
