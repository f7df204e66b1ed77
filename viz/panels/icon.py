"""The app's own small icon: a slab, foam and stone beside a footing."""

from PIL import Image, ImageDraw

from viz.style.materials import look

_SIZE = 64
_COURSES = (
    ((8, 6, 24, 46), look("wall").solid),
    ((2, 42, 34, 60), look("footing").solid),
    ((26, 18, 62, 28), look("slab").solid),
    ((26, 30, 62, 40), look("insulation").solid),
    ((36, 42, 62, 54), look("base").solid),
)


def icon() -> Image.Image:
    """Return the icon, drawn in the materials' tones."""
    image = Image.new("RGBA", (_SIZE, _SIZE), "#ffffff00")
    pen = ImageDraw.Draw(image)
    for box, tone in _COURSES:
        pen.rectangle(box, fill=tone, outline="#2b2a27", width=2)
    return image
