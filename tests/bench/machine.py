"""What a run of the benches ran on, with no name of the machine and no path."""

import os
import platform
from datetime import UTC, datetime
from importlib.metadata import version
from pathlib import Path

LIBRARIES = (
    "numpy", "shapely", "manifold3d", "pydantic", "reportlab", "streamlit", "scipy", "pyvista",
    "build123d",
)  # fmt: skip


def machine() -> dict[str, str]:
    """Return processor, cores, memory, system, versions, the day, and how busy it was before."""
    return {
        "day": datetime.now(UTC).date().isoformat(),
        "processor": _line("/proc/cpuinfo", "model name") or platform.machine(),
        "cores": str(os.cpu_count()),
        "memory": _memory(),
        "system": f"{platform.system()} on {platform.machine()}",
        "Python": platform.python_version(),
        "libraries": ", ".join(f"{name} {version(name)}" for name in LIBRARIES),
        "other work at the start": busy(),
    }


def busy() -> str:
    """Return how many processes wanted a core in the last five minutes, on average."""
    return f"{os.getloadavg()[1]:.1f} processes wanted a core, mean of five minutes"


def _memory() -> str:
    found = _line("/proc/meminfo", "MemTotal")
    return f"{int(found.split()[0]) / 1024**2:.0f} GB" if found else "not told"


def _line(file: str, head: str) -> str:
    path = Path(file)
    if not path.exists():
        return ""
    lines = (line.partition(":") for line in path.read_text(encoding="utf-8").splitlines())
    return next((value.strip() for name, _, value in lines if name.strip() == head), "")
