"""The drawing process: reads requests from its standard input, answers on its standard output.

Only here is VTK loaded, because it takes its whole process down where OpenGL is wanting.
"""

import gc
import os
import pickle
import struct
import sys
from typing import BinaryIO

from geometry.errors import BedcourseError

LENGTH = struct.Struct("<cQ")  # kind of answer, and the number of bytes that follow
PICTURE, REFUSAL, FAULT = b"P", b"R", b"F"


def serve(requests: BinaryIO, answers: BinaryIO) -> None:
    """Draw until the other end closes."""
    from viz.scene.stills import picture

    while True:
        try:
            solids, view, size = pickle.load(requests)  # noqa: S301 - written by our own parent
        except EOFError:
            return
        try:
            kind, body = PICTURE, picture(solids, view, size)
        except BedcourseError as error:
            kind, body = REFUSAL, str(error).encode()
        except Exception as error:
            kind, body = FAULT, f"{type(error).__name__}, {error}".encode()
        answers.write(LENGTH.pack(kind, len(body)) + body)
        answers.flush()
        gc.collect()  # VTK's objects hold each other; without this a hundred megabytes linger


def _main() -> None:
    answers = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # whatever libraries print must not get between the answers
    serve(sys.stdin.buffer, answers)


if __name__ == "__main__":
    _main()
