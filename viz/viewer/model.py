"""What the page holds about one design, as one record for its script."""

from dataclasses import asdict
from itertools import pairwise
from typing import Any

import numpy as np
import shapely

from geometry.layout.lay import Layout
from geometry.sections.face import CutLine
from geometry.solids.foundation import Foundation
from geometry.solids.solid import Solid
from viz.job import Job
from viz.language.reader import codes, language
from viz.pictures import still_view
from viz.style.materials import Look
from viz.viewer.ground import undisturbed
from viz.viewer.levels import tape
from viz.viewer.packing import packed
from viz.viewer.parts import looks, parts
from viz.viewer.speaking import page_words, spoken
from viz.viewer.stages import told
from viz.viewer.tiles import tile

FORMAT = 2
# A house with more sides than this has too many to choose from; x and y and turning remain.
MOST_SIDES = 40


def model(work: Job) -> dict[str, Any]:
    """Return the record the viewer's script reads. Lengths in metres."""
    layout, foundation = work.layout, work.foundation
    solids = shown_solids(layout, foundation)
    used, numbers = looks(solids)
    heads, shapes = packed(solids)
    return {
        "format": FORMAT,
        "name": work.name,
        "system": work.system,
        "languages": [{"code": code, "name": language(code).name} for code in codes()],
        "words": {code: page_words(code) for code in codes()},
        "looks": [_look(look) for look in used],
        "tiles": {name: tile(name) for name in dict.fromkeys(look.hatch for look in used)},
        "parts": parts(work, solids, numbers, heads),
        "stages": told(layout, numbers),
        "levels": tape(layout),
        "cuts": _cuts(work),
        "sides": _sides(layout),
        "low": _low(layout, foundation),
        "shapes": shapes,
    }


def shown_solids(layout: Layout, foundation: Foundation) -> tuple[Solid, ...]:
    """Return every solid of the page: the parts, and the ground around the hole."""
    ground = undisturbed(layout, foundation)
    return (*foundation.solids, *((ground,) if ground else ()))


def _look(look: Look) -> dict[str, Any]:
    row = asdict(look)
    return {
        "fill": row["fill"], "solid": row["solid"], "ink": row["ink"], "hatch": row["hatch"],
        "line": row["line_mm"], "thin": row["thin_mm"], "dash": list(row["dash"]),
    }  # fmt: skip


def _cuts(work: Job) -> list[dict[str, Any]]:
    """Return the cuts of the drawings that run straight, each with more of the house behind it."""
    found = []
    for name, line in work.cuts.items():
        if not line.jogs:
            kept = _kept(work, line)
            words = spoken(lambda tongue, name=name: tongue.say(f"viewer.cut_{name}"))  # type: ignore[misc]
            found.append({"name": words, "start": list(kept.start), "end": list(kept.end)})
    return found


def _kept(work: Job, line: CutLine) -> CutLine:
    return still_view(work.layout, work.foundation, "whole", line).cut or line


def _sides(layout: Layout) -> list[dict[str, Any]]:
    found = []
    for area in layout.areas:
        corners = [*shapely.get_coordinates(area.outline.exterior).tolist()]
        for number, (start, end) in enumerate(pairwise(corners), 1):
            other = number % (len(corners) - 1) + 1
            found.append({"name": _side(area.name, number, other), "start": start, "end": end})
    return found[:MOST_SIDES]


def _side(area: str, one: int, other: int) -> dict[str, str]:
    figures = {"area": area, "one": str(one), "other": str(other)}
    return spoken(lambda tongue: tongue.say("viewer.side", **figures))


def _low(layout: Layout, foundation: Foundation) -> dict[str, Any] | None:
    """Return the place of the drain's low point, and which way the house is not."""
    if layout.drain is None:
        return None
    pipe = foundation.named(f"{layout.drain.key}/pipe").vertices
    spot = pipe[int(np.argmin(pipe[:, 2]))]
    centre = layout.ground.house.centroid
    away = spot[:2] - np.array((centre.x, centre.y))
    away /= max(float(np.hypot(*away)), 1e-9)
    return {"at": spot.tolist(), "away": away.tolist()}
