"""What a page around the viewer is sent of a design: the model, less the shapes it holds."""

import json
import zlib
from collections.abc import Container, Mapping
from typing import Any

# Quick rather than small: what is sent often is sent over a short way.
_EFFORT = 3


def message(record: Mapping[str, Any], held: Container[str], dress: Mapping[str, str]) -> bytes:
    """Return a model as deflated JSON, without those of its shapes that are held.

    record: of `model`. held: names of shapes. dress: the language and the theme of the page
    around the viewer, by these two names.
    """
    new = {name: text for name, text in record["shapes"].items() if name not in held}
    told = {"model": {**record, "shapes": new}, "dress": dict(dress)}
    return zlib.compress(json.dumps(told, separators=(",", ":")).encode(), _EFFORT)
