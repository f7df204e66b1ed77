"""Whole processes, from the shell's word to their end: commands, the set, files, the app's start.

Bytecode is kept in a folder of the run's own and made before anything is timed, as installing does.
"""

import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from tests.bench.clock import by_processor
from tests.bench.memory import run
from tests.bench.row import Row, shown

COMMAND = (sys.executable, "-c", "from viz.commands.main import run; run()")
PYTHON = (sys.executable, "-c")
LEVELS_S = 0.4
APP = """
from streamlit.testing.v1 import AppTest
from viz.carried import app_file
assert not AppTest.from_file(str(app_file()), default_timeout=300).run().exception
"""


def rows(quick: bool) -> list[Row]:
    """Return times and peak memory of whole processes."""
    short, long = (5, 1) if quick else (15, 3)
    with TemporaryDirectory() as folder:
        kept = {"PYTHONPYCACHEPREFIX": folder, "PYTHONDONTWRITEBYTECODE": ""}

        def to(name: str) -> tuple[str, str]:
            return "-o", str(Path(folder) / name)

        return [
            *_rows("Python alone", (*PYTHON, "pass"), short, kept),
            *_rows("numpy, shapely and pydantic imported",
                   (*PYTHON, "import shapely, pydantic; pydantic.BaseModel"), short, kept),
            *_rows("VTK imported by pyvista", (*PYTHON, "import pyvista"), long, kept),
            *_rows("Open CASCADE imported by build123d",
                   (*PYTHON, "import build123d"), long, kept),
            *_rows("levels of the demo", (*COMMAND, "levels", "demo"), short, kept, LEVELS_S),
            *_rows("the same as JSON", (*COMMAND, "levels", "demo", "--json"), short, kept),
            *_rows("everything checked", (*COMMAND, "check", "demo"), short, kept),
            *_rows("model as GLB", (*COMMAND, "model", "demo", *to("a.glb")), long, kept),
            *_rows("model as page to turn", (*COMMAND, "model", "demo", *to("a.html")), long, kept),
            *_rows("permit set as PDF", (*COMMAND, "sheets", "demo", *to("a.pdf")), long, kept),
            *_rows("app: its first page run", (*PYTHON, APP), long, kept),
        ]  # fmt: skip


def _rows(
    what: str, words: Sequence[str], repeats: int, kept: Mapping[str, str], aim: float | None = None
) -> list[Row]:
    run(words, kept)
    found = [run(words, kept) for _ in range(repeats)]
    wall, used = ([one[n] for one in found] for n in (0, 1))
    mine, others, name = (used, wall, "wall") if by_processor() else (wall, used, "processor")
    peak = max(mb for _, _, mb in found)
    note = f"peak {peak:,.0f} MB; {name} {shown(median(others), 's')}"
    return [Row(what, median(mine), "s", aim, note=note, least=min(mine), most=max(mine))]
