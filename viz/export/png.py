"""An SVG drawing as PNG, set in the bundled fonts alone so that it is the same everywhere."""

import resvg_py

from viz.drawing.fonts import FAMILY, font_file


def to_png(svg: str, dpi: float = 150) -> bytes:
    """Return the drawing as PNG bytes at `dpi` dots for one inch of paper."""
    image = resvg_py.svg_to_bytes(
        svg_string=svg,
        dpi=dpi,
        skip_system_fonts=True,
        font_files=[str(font_file(False)), str(font_file(True))],
        font_family=FAMILY,
        sans_serif_family=FAMILY,
    )
    return bytes(image)
