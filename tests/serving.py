"""The app, or a page of it, served on a free port of this machine."""

import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

_ROOT = Path(__file__).parents[1]
_WAIT_S, _STEP_S = 120, 0.5


def free_port() -> int:
    """Return the number of a port that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@contextmanager
def serving(command: Sequence[str], port: int) -> Iterator[subprocess.Popen]:
    """Run a server without a screen, wait until it listens, and end it afterwards."""
    told = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    silent = subprocess.DEVNULL
    with subprocess.Popen(command, cwd=_ROOT, env=told, stdout=silent, stderr=silent) as server:
        try:
            _listening(port)
            yield server
        finally:
            server.terminate()
            server.wait(30)


@contextmanager
def app_served() -> Iterator[tuple[subprocess.Popen, int]]:
    """Serve the app; give the process and the port."""
    port = free_port()
    run = "from viz.commands.main import run; run()"
    with serving([sys.executable, "-c", run, "app", "--port", str(port)], port) as server:
        yield server, port


def _listening(port: int) -> None:
    until = time.monotonic() + _WAIT_S
    while time.monotonic() < until:
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
        except OSError:
            time.sleep(_STEP_S)
        else:
            return
    raise TimeoutError(f"the app did not start within {_WAIT_S} s")
