"""An SVG drawing as PNG, set in the bundled fonts alone so that it is the same everywhere."""

import struct
from zlib import crc32

import resvg_py

from viz.drawing.fonts import FAMILY, font_file

# A PNG opens with its signature and one chunk of fixed length, the header.
_HEAD = 8 + 25
_METRE = 1


def to_png(svg: str, dpi: float = 150) -> bytes:
    """Return the drawing as PNG bytes at `dpi` dots for one inch of paper, which they state."""
    image = bytes(
        resvg_py.svg_to_bytes(
            svg_string=svg,
            dpi=dpi,
            skip_system_fonts=True,
            font_files=[str(font_file(False)), str(font_file(True))],
            font_family=FAMILY,
            sans_serif_family=FAMILY,
        )
    )
    return image[:_HEAD] + _dots(dpi) + image[_HEAD:]


def _dots(dpi: float) -> bytes:
    """Return the chunk that states the size of a dot, after the PNG specification, 11.3.4.3."""
    per_metre = round(dpi / 0.0254)
    body = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, _METRE)
    return struct.pack(">I", len(body) - 4) + body + struct.pack(">I", crc32(body))
