"""The benches under one roof: what each measures; its module says how."""

from collections.abc import Callable, Iterable
from importlib import import_module
from pathlib import Path

from tests.bench.row import Beside, Curve, Row

EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"
Line = Row | Beside | Curve
GROUPS = {
    "start": "Whole processes from the shell: commands, files, the app's start, with peak memory.",
    "engine": "From a design's text to levels, volumes, findings, solids and the report.",
    "cascade": "Solids, volumes and sections beside Open CASCADE.",
    "peers": "Solids beside VTK's booleans and other triangulations; volumes beside trimesh.",
    "drawings": "Sections, the permit set and its files.",
    "survey": "Shots of the dug ground: whole, beside their triangulation alone, beside VTK.",
    "water": "A day of rain through the pit, beside scipy's solver and plain loops.",
    "files": "The model's files: GLB beside pygltflib, IFC, the page to turn.",
    "growth": "Time and memory against the number of things, a process for each size.",
    "app": "An edit in the app: the report, the page, the model's data.",
    "viewer": "The page to turn in a headless browser with software drawing.",
    "batch": "Many designs on the machine's workers.",
    "users": "Sessions of the app at once, each with a house of its own, without a browser.",
}
# Those that wait for a browser or for workers: the processor's time says nothing of them.
WAITING = {"viewer", "batch", "users"}


def lines(name: str, quick: bool) -> Iterable[Line]:
    """Run a group in this process."""
    rows: Callable[[bool], Iterable[Line]] = import_module(f"tests.bench.bench_{name}").rows
    return rows(quick)
