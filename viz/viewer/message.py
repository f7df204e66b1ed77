"""What a page around the viewer is sent of a design: the model, less the shapes it holds."""

import json
import zlib
from collections.abc import Container, Mapping
from typing import Any

# Quick rather than small: what is sent often is sent over a short way.
_EFFORT = 3


def message(record: Mapping[str, Any], held: Container[str], language: str = "") -> bytes:
    """Return a model as deflated JSON, without those of its shapes that are held.

    record: of `model`. held: names of shapes. language: of the page around the viewer, by its
    code; without one the visitor's stays.
    """
    new = {name: text for name, text in record["shapes"].items() if name not in held}
    told = {"model": {**record, "shapes": new}, "language": language}
    return zlib.compress(json.dumps(told, separators=(",", ":")).encode(), _EFFORT)
