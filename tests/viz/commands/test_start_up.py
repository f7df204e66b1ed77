"""A short command starts fast because it loads what it needs and nothing else."""

import subprocess
import sys

HEAVY = {
    "PIL", "fontTools", "ifcopenshell", "manifold3d", "matplotlib", "pandas", "pint", "pyvista",
    "reportlab", "resvg_py", "scipy", "streamlit", "tomlkit", "trimesh", "vtkmodules", "xlsxwriter",
}  # fmt: skip
ASK = """
import sys
from viz.commands.main import app
app(["levels", "demo"], standalone_mode=False)
print(*{name.split(".")[0] for name in sys.modules}, file=sys.stderr)
"""


def test_levels_load_no_heavy_library() -> None:
    done = subprocess.run(
        [sys.executable, "-c", ASK], capture_output=True, text=True, check=True, timeout=60
    )
    assert "top of footing" in done.stdout
    loaded = set(done.stderr.split())
    assert {"shapely", "pydantic", "rich"} <= loaded
    assert not HEAVY & loaded
