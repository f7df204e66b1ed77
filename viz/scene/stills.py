"""Stills: bodies composed, painted and lettered. Runs in the drawing process only."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from io import BytesIO

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from geometry.solids.solid import Solid
from viz.scene import lettering
from viz.scene.callouts import SEEN, Callout, called_out, stacked
from viz.scene.camera import Array, Margins, aimed, framed, grown
from viz.scene.composition import HOLE, Composition, composed
from viz.scene.paint import FINER, Painting, painted
from viz.scene.palette import INK, PAPER
from viz.scene.view import Size, View

FLOOR = frozenset({"base", "blinding", "retarder", "insulation", "slab", "fill"})


@dataclass(frozen=True)
class Lettering:
    """Height of letters in the finished picture, pixels, and whether one column holds all."""

    height: float
    one_column: bool
    lines: int


def picture(solids: Sequence[Solid], view: View, size: Size) -> bytes:
    """The still as a PNG."""
    scene = composed(solids, view)
    letters = _letters(view, scene, size)
    margins = _margins(view, letters, size)
    axes = aimed(scene.ahead, *((0.0, 0.0) if _flat(view) else (view.turn, view.tilt)))
    points = _window(scene, axes, size, margins) if _flat(view) else scene.frame
    camera = framed(axes, points, size, margins)
    painting = painted(scene, camera, flat=_flat(view))
    if _flat(view):
        painting = _in_a_frame(painting, camera.pixels(points))
    image = Image.fromarray(painting.pixels)
    callouts = _callouts(painting, scene, view, letters, image.size)
    image = lettering.lettered(image, callouts, round(letters.height * FINER))
    out = BytesIO()
    image.resize(size, Image.Resampling.LANCZOS).save(out, "PNG")
    return out.getvalue()


def _flat(view: View) -> bool:
    return view.kind == "face the cut"


def _letters(view: View, scene: Composition, size: Size) -> Lettering:
    """Letters as large as reads well, smaller only where the columns would not hold them."""
    parts = {item.label.part for item in scene.items}
    count = sum(part in parts for part in view.labels)
    lines = lettering.lines(view.labels.values())
    wish = lettering.letter_height(size)
    one = view.kind == "exploded" and count * lettering.room(wish, lines) < size[1]
    rows = max(1, count if one else (count + 1) // 2)
    return Lettering(min(wish, size[1] / lettering.room(1.0, lines) / (rows + 0.2)), one, lines)


def _margins(view: View, letters: Lettering, size: Size) -> Margins:
    """A rim of air, and room for the columns of labels."""
    air = 0.03 * min(size)
    if not view.labels:
        return Margins(air, air, air, air)
    height = round(letters.height)
    column = lettering.width(view.labels.values(), height) + 2.6 * height
    return Margins(air if letters.one_column else column, column, air, air)


def _window(
    scene: Composition, axes: tuple[Array, Array, Array], size: Size, margins: Margins
) -> Array:
    """Two opposite corners of the window, grown to fill the picture where there is more to see."""
    aspect = (size[0] - margins.left - margins.right) / (size[1] - margins.top - margins.bottom)
    across = np.array(axes)
    asked = scene.frame @ across.T
    parts = [cap.vertices for cap in scene.caps if cap.label.role != HOLE]
    there = np.vstack([asked, np.vstack(parts) @ across.T])
    box = grown(_box(asked[:, :2]), _box(there[:, :2]), aspect)
    return np.asarray(np.column_stack([box, np.full(2, asked[0, 2])]) @ across)


def _box(flat: Array) -> Array:
    return np.array([flat.min(axis=0), flat.max(axis=0)])


def _callouts(
    painting: Painting, scene: Composition, view: View, letters: Lettering, size: Size
) -> list[Callout]:
    found = called_out(
        _masks(painting),
        view.labels,
        letters.one_column,
        "right" if view.turn < 0 else "left",
        {body.label.part for body in scene.bodies if body.label.role in FLOOR},
    )
    callouts = [
        Callout(text, side, (x * FINER, y * FINER), y * FINER) for text, side, (x, y) in found
    ]
    room = lettering.room(letters.height * FINER, letters.lines)
    return [
        item
        for side in ("left", "right")
        for item in stacked([c for c in callouts if c.side == side], room, size)
    ]


def _masks(painting: Painting) -> dict[str, NDArray[np.bool_]]:
    """Where each part is seen: on the cut where it is cut, else anywhere."""
    masks = {}
    for number, name in enumerate(painting.names):
        seen = painting.parts == number
        cut = seen & painting.cut
        masks[name] = cut if cut.sum() >= SEEN else seen
    return masks


def _in_a_frame(painting: Painting, corners: Array) -> Painting:
    """Only what lies in the window, in a thin frame; corners: (2, 2) pixels."""
    left, top = np.round(corners.min(axis=0)).astype(int).tolist()
    right, bottom = np.round(corners.max(axis=0)).astype(int).tolist()
    parts, inside = np.full_like(painting.parts, -1), np.s_[top:bottom, left:right]
    parts[inside] = painting.parts[inside]
    high, wide = painting.parts.shape
    sheet = Image.new("RGB", (wide * FINER, high * FINER), PAPER)
    edges = (left * FINER, top * FINER, right * FINER, bottom * FINER)
    sheet.paste(Image.fromarray(painting.pixels).crop(edges), edges)
    ImageDraw.Draw(sheet).rectangle(edges, outline=INK, width=FINER)
    return replace(painting, pixels=np.asarray(sheet), parts=parts)
