"""Reads a drawn section as an eye would: what overlaps, crosses, is missing or stands untrue."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
import shapely
from shapely import LineString, Polygon, STRtree

from geometry.units import INCH, read_length
from tests.viz.figures.section.section_read import Read
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Leader, Line, Text
from viz.figures.section.cut import is_thin
from viz.figures.section.view import GRID, GROUND_BAND
from viz.style.lines import CHAIN, SEEN
from viz.style.materials import look, look_of

# Nearer than this two things on paper only touch, mm.
TOUCH = 1e-6
GROUND = look("excavation").fill
# Lines of these layers may not run through words.
HEAVY = ("outline", "datum", "ground")


def problems(read: Read) -> list[str]:
    """Everything that is wrong with a section as it is drawn."""
    found = [
        *overlaps(read), *on_the_cut(read), *crossings(read), *wrong_labels(read),
        *untrue_strings(read), *untrue_areas(read), *wrong_steps(read),
    ]  # fmt: skip
    scale = read.figure.scale
    return [f"{read.figure.name} at {scale.name if scale else ''}: {one}" for one in found]


def overlaps(read: Read) -> Iterator[str]:
    """Words over words, and rings of key numbers over other words or rings."""
    rings = [shapely.Point(c.centre).buffer(c.radius) for c in read.keys]
    own = {n: {i for i, b in enumerate(read.boxes) if ring.contains(b.centroid)}
           for n, ring in enumerate(rings)}  # fmt: skip
    boxes = [b.buffer(-TOUCH) for b in read.boxes]
    tree = STRtree(boxes)
    for one, two in zip(*tree.query(boxes, "intersects"), strict=True):
        if one < two:
            yield f"{read.texts[one].words!r} overlaps {read.texts[two].words!r}"
    for number, ring in enumerate(rings):
        for other in tree.query(ring, "intersects"):
            if other not in own[number]:
                yield f"a key's ring touches {read.texts[other].words!r}"
        for other in rings[number + 1 :]:
            if ring.buffer(-TOUCH).intersects(other):
                yield "two rings of key numbers touch"


def on_the_cut(read: Read) -> Iterator[str]:
    """Words and rings on what is cut: concrete, stone, soil, undisturbed ground."""
    areas = [f.shape for f in read.fills]
    things = [*read.boxes, *(shapely.Point(c.centre).buffer(c.radius) for c in read.keys)]
    names = [*(t.words for t in read.texts), *("a ring" for _ in read.keys)]
    tree = STRtree([t.buffer(-TOUCH) for t in things])
    for area in areas:
        for number in tree.query(area, "intersects"):
            yield f"{names[number]!r} stands on the cut"


def crossings(read: Read) -> Iterator[str]:
    """Leaders over leaders or words, heavy lines over words."""
    for number, one in enumerate(read.leaders):
        for two in read.leaders[number + 1 :]:
            if one.intersects(two):
                yield "two leaders cross"
    tree = STRtree([b.buffer(-TOUCH) for b in read.boxes])
    for leader in read.leaders:
        for number in tree.query(leader, "intersects"):
            yield f"a leader crosses {read.texts[number].words!r}"
    for line in read.of(Line, *HEAVY, "levels"):
        drawn = LineString(line.points)  # type: ignore[attr-defined]
        for number in tree.query(drawn, "intersects"):
            yield f"a line of the {line.layer} crosses {read.texts[number].words!r}"


def wrong_labels(read: Read) -> Iterator[str]:
    """Each wording once, each with a dot of its own, in the thing it names."""
    labels = [t for t in read.texts if t.layer == "labels"]
    numbers = [t for t in labels if t.bold and t.anchor == "middle"]
    words = [t for t in labels if t not in numbers] if read.keys else labels
    if _letters(t.words for t in words) != _letters(read.wordings):
        yield "the labels are not the wordings, each once"
    if read.keys:
        expected = Counter({str(n + 1): 2 for n in range(len(read.wordings))})
        if Counter(t.words for t in numbers) != expected:
            yield "a key's number is not once in the picture and once in the key"
    aims = list(_aims(read))
    if len(aims) != len(read.wordings):
        yield f"{len(aims)} dots for {len(read.wordings)} wordings"
    for said, spot in aims:
        named = [w for w, pieces in read.wordings.items() if _on(pieces, spot)]
        if read.keys:
            named = [str(list(read.wordings).index(w) + 1) for w in named]
        if not any(_letters([said]) <= _letters([w]) and _starts(w, said) for w in named):
            yield f"{said!r} points at {named}"


def _starts(wording: str, said: str) -> bool:
    return "".join(wording.split()).startswith("".join(said.split()))


def _on(pieces: Sequence[Polygon], spot: tuple[float, float]) -> bool:
    return any(p.distance(shapely.Point(spot)) < 1e-3 for p in pieces)


def _letters(words: object) -> Counter[str]:
    return Counter("".join("".join(w.split()) for w in words))  # type: ignore[attr-defined]


def _aims(read: Read) -> Iterator[tuple[str, tuple[float, float]]]:
    """The first line of every label with the place its dot stands on."""
    labels = [t for t in read.texts if t.layer == "labels"]
    ticks = read.of(Line, "leaders")
    dots: list[Circle] = read.of(Circle, "leaders")  # type: ignore[assignment]
    for leader in read.of(Leader):
        points = leader.points  # type: ignore[attr-defined]
        if len(points) > 2:
            yield _beside(labels, points[-2:]), points[0]
            continue
        x = points[0][0]
        mine = sorted((d.centre for d in dots if abs(d.centre[0] - x) < TOUCH), key=lambda c: -c[1])
        rows = [t.points for t in ticks if abs(t.points[0][0] - x) < TOUCH]  # type: ignore[attr-defined]
        for spot, row in zip(mine, sorted(rows, key=lambda r: -r[0][1]), strict=True):
            yield _beside(labels, row), spot


def _beside(labels: Sequence[Text], last: Sequence[tuple[float, float]]) -> str:
    """The words level with a leader's end that begin or end nearest beyond it."""
    (x0, _), (x, y) = last
    way = 1.0 if x > x0 else -1.0
    near = {}
    for text in labels:
        box = text_box(text)
        beyond = (box.left if way > 0 else box.right) - x
        if abs(text.at[1] + text.height / 2 - y) < 0.1 and beyond * way > 0:
            near[text.words] = beyond * way
    return min(near, key=lambda w: near[w], default="nothing")


def untrue_strings(read: Read) -> Iterator[str]:
    """Stops of strings that are not where they are in the job; figures that say another length."""
    slashes = [
        ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        for a, b in (
            m.points for m in read.of(Line, "dimensions") if m.weight == SEEN  # type: ignore[attr-defined]
        )
    ]  # fmt: skip
    strings = read.picture.strings
    lengths: list[float] = []
    count = 0
    for axis, chains in ((0, strings.below), (1, strings.left), (1, strings.right)):
        for stops in chains:
            kept = _apart(stops)
            if len(kept) < 2:
                continue
            count += len(kept)
            lengths += [b - a for a, b in pairwise(kept)]
            wanted = [read.at(s, s)[axis] for s in kept]
            rows = {round(s[1 - axis], 4) for s in slashes}
            drawn = [sorted(s[axis] for s in slashes if abs(s[1 - axis] - r) < 1e-3) for r in rows]
            error = [np.abs(np.subtract(d, wanted)).max() for d in drawn if len(d) == len(wanted)]
            ratio = 1 / read.per_metre
            if not error or min(error) * ratio > 1e-6:
                yield f"a string with stops at {stops} is not drawn true"
    if count != len(slashes):
        yield f"{len(slashes)} stops drawn, {count} asked for"
    said = sorted(read_length(t.words, None) for t in read.texts if t.layer == "dimensions")
    if len(said) != len(lengths):
        yield f"{len(said)} figures for {len(lengths)} gaps"
    elif lengths and np.abs(np.subtract(said, sorted(lengths))).max() > INCH / 16 + 1e-9:
        yield "a figure says another length than its gap has"


def _apart(stops: Sequence[float]) -> list[float]:
    """Stops nearer than a millimetre are one."""
    kept: list[float] = []
    for stop in sorted(stops):
        if not kept or stop - kept[-1] > 1e-3:
            kept.append(stop)
    return kept


def untrue_areas(read: Read) -> Iterator[str]:
    """Cut areas of a colour that are not as large as the job's, and thin parts not drawn."""
    drawn: Counter[str] = Counter()
    for fill in read.fills:
        drawn[fill.colour] += fill.shape.area
    expected: Counter[str] = Counter()
    edges: Counter[str] = Counter()
    heavy = [LineString(m.points) for m in read.of(Line, "outline")]  # type: ignore[attr-defined]
    for face in read.picture.faces:
        if face.label.role == "excavation":
            continue
        pieces = read.cropped(face.shape)
        if pieces and all(is_thin(p, face.label.role) for p in pieces):
            for piece in pieces:
                along = [h for h in heavy if h.within(piece.buffer(0.8))]
                if piece.length > 4 and not any(h.length > 0.15 * piece.length for h in along):
                    yield f"{face.label.name} is drawn nowhere"
            continue
        colour = look_of(face.label).fill
        expected[colour] += sum(p.area for p in pieces)
        edges[colour] += sum(p.length for p in pieces)
    for colour in (set(drawn) | set(expected)) - {GROUND}:
        spare = 1e-6 * expected[colour] + GRID * edges[colour]
        if abs(drawn[colour] - expected[colour]) > spare:
            yield f"{colour} covers {drawn[colour]} mm2, not {expected[colour]}"


def wrong_steps(read: Read) -> Iterator[str]:
    """The chain lines where the cutting plane steps aside."""
    lines = [m for m in read.of(Line, "outline") if m.dash == CHAIN]  # type: ignore[attr-defined]
    places = sorted(m.points[0][0] for m in lines)  # type: ignore[attr-defined]
    # A step beyond everything that is cut is not shown.
    band = GROUND_BAND / read.per_metre
    left, _, right, _ = shapely.total_bounds([f.shape for f in read.picture.faces])
    ends = read.picture.window or (left - band, 0.0, right + band, 0.0)
    shown = [s for s in read.picture.steps if ends[0] <= s <= ends[2]]
    wanted = sorted(read.at(s, 0.0)[0] for s in shown)
    if len(places) != len(wanted) or any(
        abs(a - b) > TOUCH for a, b in zip(places, wanted, strict=True)
    ):
        yield f"steps stand at {places}, not {wanted}"
