"""Stills on demand from one drawing process, kept alive between pictures.

A plain child process with a pipe each way, not a process pool: a pool would run the caller's
main script again in the child, and could not be stopped when a picture takes too long.
"""

import atexit
import ctypes
import os
import pickle
import subprocess
import sys
import threading
from collections.abc import Callable, Sequence
from concurrent.futures import Future, wait
from pathlib import Path
from typing import IO

from geometry.errors import BedcourseError
from geometry.solids.solid import Solid
from viz.scene.child import FAULT, LENGTH, REFUSAL
from viz.scene.errors import NoPictures
from viz.scene.view import Size, View

MISSING = (
    "Pictures need an OpenGL library that is not on this machine: "
    "install it with `apt-get install libegl1 libgl1` and try again."
)
# VTK's windows that need no screen, and the libraries each needs: one of the two alone is not
# enough for EGL.
WINDOWS = (
    ("vtkEGLRenderWindow", ("libEGL.so.1", "libGL.so.1")),
    ("vtkOSOpenGLRenderWindow", ("libOSMesa.so.8",)),
)
PATIENCE = 180.0  # seconds for one picture; software OpenGL takes about 15 for a large one
# Asks glibc to give large blocks back at once; else every change of size keeps more memory.
THRIFT = {"MALLOC_MMAP_THRESHOLD_": "1000000"}
LEAST, MOST = 64, 8000  # pixels
BEAT = 0.3  # seconds between two calls of a beat
Beat = Callable[[], None]
HOUSE = str(Path(__file__).parents[2])


def found(library: str) -> bool:
    """Whether the system's loader finds a shared library."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def settings(finder: Callable[[str], bool]) -> dict[str, str]:
    """What the drawing process's environment must say for VTK to draw here.

    Raises NoPictures where no OpenGL is found; systems other than Linux bring it with them.
    """
    if not sys.platform.startswith("linux"):
        return {}
    for window, libraries in WINDOWS:
        if all(finder(library) for library in libraries):
            return {"VTK_DEFAULT_OPENGL_WINDOW": window, **THRIFT}
    raise NoPictures(MISSING)


class Studio:
    """One drawing process and the lock that gives it one picture at a time."""

    def __init__(self, patience: float = PATIENCE) -> None:
        """patience: seconds to wait for one picture."""
        self._patience = patience
        self._lock = threading.Lock()
        self._process: subprocess.Popen[bytes] | None = None

    def still(
        self, solids: Sequence[Solid], view: View, size: Size, beat: Beat | None = None
    ) -> bytes:
        """A PNG of the solids, size in pixels; raises NoPictures with one sentence.

        beat: called now and then meanwhile; what it raises stops the drawing and is passed on.
        """
        if not all(LEAST <= side <= MOST for side in size):
            raise BedcourseError(
                f"A picture of {size[0]} by {size[1]} pixels cannot be drawn: "
                f"give {LEAST} to {MOST} each way."
            )
        surroundings = settings(found)
        request = pickle.dumps((tuple(solids), view, size))
        if beat is None:
            with self._lock:
                return self._asked(request, surroundings)
        return self._watched(request, surroundings, beat)

    def _watched(self, request: bytes, surroundings: dict[str, str], beat: Beat) -> bytes:
        """Ask from a thread, and listen to the beat meanwhile."""
        answer: Future[bytes] = Future()
        drawing, unwanted = threading.Event(), threading.Event()

        def ask() -> None:
            with self._lock:
                if unwanted.is_set():
                    return
                drawing.set()
                try:
                    answer.set_result(self._asked(request, surroundings))
                except BedcourseError as error:
                    answer.set_exception(error)

        threading.Thread(target=ask, daemon=True).start()
        try:
            while not wait((answer,), BEAT).done:
                beat()
        except BaseException:
            unwanted.set()
            # Another's picture that is being drawn goes on; this one is not begun.
            if drawing.is_set() and not answer.done() and self._process is not None:
                self._process.kill()
            raise
        return answer.result()

    def close(self) -> None:
        """Stop the drawing process."""
        if self._process is not None:
            self._process.kill()
            self._process.communicate()
            self._process = None

    def _asked(self, request: bytes, surroundings: dict[str, str]) -> bytes:
        process = self._running(surroundings)
        late = threading.Event()

        def stop() -> None:
            late.set()
            process.kill()

        alarm = threading.Timer(self._patience, stop)
        alarm.start()
        try:
            return _answer(process, request)
        except (OSError, EOFError):
            self.close()
            raise NoPictures(_reason(late.is_set(), self._patience)) from None
        finally:
            alarm.cancel()

    def _running(self, surroundings: dict[str, str]) -> "subprocess.Popen[bytes]":
        if self._process is None or self._process.poll() is not None:
            self.close()
            paths = os.pathsep.join(filter(None, (HOUSE, os.environ.get("PYTHONPATH"))))
            self._process = subprocess.Popen(
                [sys.executable, "-m", "viz.scene.child"],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                env={**os.environ, "PYTHONPATH": paths, **surroundings},
            )
        return self._process


def _answer(process: "subprocess.Popen[bytes]", request: bytes) -> bytes:
    if process.stdin is None or process.stdout is None:
        raise EOFError
    process.stdin.write(request)
    process.stdin.flush()
    kind, length = LENGTH.unpack(_exactly(process.stdout, LENGTH.size))
    body = _exactly(process.stdout, length)
    if kind == REFUSAL:
        raise BedcourseError(body.decode())
    if kind == FAULT:
        raise NoPictures(f"This picture could not be drawn ({body.decode()}): try another view.")
    return body


def _exactly(pipe: IO[bytes], count: int) -> bytes:
    body = pipe.read(count)
    if len(body) < count:
        raise EOFError
    return body


def _reason(late: bool, patience: float) -> str:
    if late:
        return (
            f"The picture took longer than {patience:g} seconds and was stopped: "
            "ask for a smaller one, or leave some parts out."
        )
    return (
        "The drawing process ended before the picture was done: if it happens again, "
        "install OpenGL anew with `apt-get install libegl1 libgl1`."
    )


_STUDIO = Studio()
atexit.register(_STUDIO.close)


def still(
    solids: Sequence[Solid], view: View, size: Size = (1200, 900), beat: Beat | None = None
) -> bytes:
    """A PNG of the solids, size in pixels, from the one drawing process of this program.

    beat: as in `Studio.still`. Raises NoPictures where it cannot be drawn, BedcourseError where
    the view shows nothing.
    """
    return _STUDIO.still(solids, view, size, beat)
