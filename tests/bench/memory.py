"""Time and peak memory of whole processes, Linux only for the memory."""

import os
import subprocess
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

# A process counts the memory of the one that started it as its own: so a small one starts it.
_LAUNCH = """
import os, sys, time
silent = os.open(os.devnull, os.O_WRONLY)
begun = time.perf_counter()
child = os.posix_spawn(sys.argv[1], sys.argv[1:], os.environ,
    file_actions=[(os.POSIX_SPAWN_DUP2, silent, 1), (os.POSIX_SPAWN_DUP2, silent, 2)])
_, status, used = os.wait4(child, 0)
took = time.perf_counter() - begun
print(os.waitstatus_to_exitcode(status), took, used.ru_utime + used.ru_stime, used.ru_maxrss)
"""


def peak_mb() -> float:
    """Return the most memory this process ever held, MB; 0 where the system does not tell."""
    told = Path("/proc/self/status")
    lines = told.read_text(encoding="utf-8").splitlines() if told.exists() else []
    return next((int(ln.split()[1]) / 1024 for ln in lines if ln.startswith("VmHWM")), 0.0)


def run(words: Sequence[str], more: Mapping[str, str]) -> tuple[float, float, float]:
    """Run a program to its end; return wall seconds, processor seconds and its peak memory, MB.

    words: the program by its whole path first. Raises RuntimeError where it fails.
    """
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", _LAUNCH, *words],
        env={**os.environ, **more}, capture_output=True, text=True, check=True,
    )  # fmt: skip
    code, took, used, peak = done.stdout.split()
    if int(code):
        raise RuntimeError(f"{' '.join(words)} failed")
    return float(took), float(used), int(peak) / 1024
