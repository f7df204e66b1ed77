"""The command `app`: the app's server on this machine's own address."""

import os
import signal
import subprocess
import sys

from geometry.errors import BedcourseError
from viz.carried import app_file
from viz.commands import saying
from viz.commands.asking import design_path

ADDRESS = "127.0.0.1"
# Tells the app which design to open; the app does not import the command line.
OPENED = "BEDCOURSE_DESIGN"


def run_app(design: str | None, port: int) -> int:
    """Serve the app until it is stopped; return its exit code."""
    script = app_file()
    if not script.exists():
        raise BedcourseError("The app is missing from this installation: install it anew.")
    opened = {OPENED: str(design_path(design).resolve())} if design else {}
    saying.tell(f"The app is at http://{ADDRESS}:{port} (Ctrl+C stops it).")
    command = [sys.executable, "-m", "streamlit", "run", str(script), *flags(port)]
    told = {**os.environ, **opened}
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    with subprocess.Popen(command, env=told) as server:  # noqa: S603 - our own words, no shell
        try:
            return server.wait()
        except KeyboardInterrupt:
            server.terminate()
            server.wait()
            return 0


def flags(port: int) -> list[str]:
    """Return the server's settings: this machine alone, no statistics, no questions."""
    return [
        f"--server.address={ADDRESS}",
        f"--server.port={port}",
        f"--server.headless={str(not _has_screen()).lower()}",
        "--server.showEmailPrompt=false",
        "--server.fileWatcherType=none",
        "--browser.gatherUsageStats=false",
    ]


def _has_screen() -> bool:
    """Whether a browser can be opened here."""
    if not sys.platform.startswith("linux"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
