"""Soft light by arithmetic on depths: corners darken, and what stands in the light casts a shadow.

Depths are read off the drawing process once for the eye and once for the light; all else is plain
arrays, so that it is quick on machines without a graphics card and the same on every one.
"""

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFilter

from viz.scene.camera import Array, Camera

Depth = NDArray[np.float32]  # (height, width), metres from the eye; NaN where nothing is
RINGS = (2, 4, 8, 14, 24)  # pixels to both sides at which neighbours are asked, in 1200 high
PAIRS = ((1.0, 0.0), (0.0, 1.0), (0.7, 0.7), (0.7, -0.7))
# A neighbour so many times its distance off begins to fade; at twice that it is gone.
STEEP = 1.6
CORNERS, SHADOWS = 0.95, 0.22  # how much a full corner and a full shadow darken
SOFT = 0.004  # width of a shadow's edge, as a share of the light's picture
SPOTS = tuple((float(np.sqrt(n / 12) * np.cos(2.4 * n)), float(np.sqrt(n / 12) * np.sin(2.4 * n)))
              for n in range(12))  # fmt: skip


def corners(depth: Depth, metres_per_pixel: float) -> Depth:
    """How much of each pixel's surroundings stands nearer than its own plane, 0 to 1."""
    deep = depth / np.float32(metres_per_pixel)
    found = np.zeros_like(deep)
    for ring in RINGS:
        reach = max(1.0, ring * min(depth.shape) / 1200)
        for x, y in PAIRS:
            found += _rise(deep, round(x * reach), round(y * reach), reach)
    return np.asarray(found / (len(RINGS) * len(PAIRS)), dtype=np.float32)


def _rise(deep: Depth, x: int, y: int, reach: float) -> Depth:
    """How far the middle of two opposite neighbours stands before a pixel, 0 to 1."""
    one, two = _moved(deep, x, y), _moved(deep, -x, -y)
    with np.errstate(invalid="ignore"):
        off = np.maximum(np.abs(one - deep), np.abs(two - deep)) / np.float32(STEEP * reach)
        rise = np.clip((deep - (one + two) / 2) / np.float32(reach) - 0.03, 0.0, 1.0)
        rise *= np.clip(2.0 - off, 0.0, 1.0)
    return np.asarray(np.nan_to_num(rise), dtype=np.float32)


def _moved(field: Depth, x: int, y: int) -> Depth:
    """The field so shifted that each pixel holds its neighbour's value; its rim is repeated."""
    rows = np.clip(np.arange(field.shape[0]) + y, 0, field.shape[0] - 1)
    columns = np.clip(np.arange(field.shape[1]) + x, 0, field.shape[1] - 1)
    return field[rows][:, columns]


def shadows(depth: Depth, camera: Camera, lit: Depth, light: Camera) -> Depth:
    """How much each pixel lies in the shadow of something else, 0 to 1.

    lit: depths as the light sees the scene, with the light's camera.
    """
    points = camera.places(depth)
    facing = np.clip(3.0 * (_normals(points) @ -light.forward.astype(np.float32)), 0.0, 1.0)
    spots = light.pixels(points.reshape(-1, 3).astype(np.float64)).reshape(*depth.shape, 2)
    away = (points - light.eye.astype(np.float32)) @ light.forward.astype(np.float32)
    slack, wide = 3.0 * light.metres_per_pixel, SOFT * max(lit.shape)
    behind = np.zeros_like(depth)
    with np.errstate(invalid="ignore"):
        for x, y in SPOTS:
            column = np.clip(np.nan_to_num(spots[..., 0] + x * wide), 0, lit.shape[1] - 1)
            row = np.clip(np.nan_to_num(spots[..., 1] + y * wide), 0, lit.shape[0] - 1)
            nearest = lit[row.astype(np.intp), column.astype(np.intp)]
            behind += away > nearest + slack + wide * light.metres_per_pixel
    return np.asarray(np.nan_to_num(behind / len(SPOTS) * facing), dtype=np.float32)


def _normals(points: NDArray[np.float32]) -> NDArray[np.float32]:
    """Unit vectors square to the surface each pixel shows, towards the eye."""
    down, right = np.gradient(points, axis=(0, 1))
    square = np.cross(down, right)
    long = np.linalg.norm(square, axis=2, keepdims=True)
    return np.asarray(square / np.maximum(long, 1e-12), dtype=np.float32)


def light_of(camera: Camera, towards: Array) -> tuple[Array, Array, Array]:
    """Right, up and forward of a light that stands towards a direction."""
    forward = -towards / np.linalg.norm(towards)
    right = np.cross(forward, camera.up)
    right /= np.linalg.norm(right)
    return right, np.cross(right, forward), forward


def darkened(
    pixels: NDArray[np.uint8], corner: Depth, shadow: Depth, kept: NDArray[np.bool_]
) -> NDArray[np.uint8]:
    """The picture darkened in corners and shadows, but not where it is kept as it is."""
    share = (1.0 - np.clip(CORNERS * corner, 0.0, 0.5)) * (1.0 - SHADOWS * _soft(shadow))
    share = np.where(kept, np.float32(1.0), share.astype(np.float32))
    size = (pixels.shape[1], pixels.shape[0])
    wide = Image.fromarray(share).resize(size, Image.Resampling.BILINEAR)
    return np.asarray((pixels * np.asarray(wide)[..., None]).round(), dtype=np.uint8)


def _soft(field: Depth) -> Depth:
    grey = Image.fromarray((field * 255).astype(np.uint8)).filter(ImageFilter.GaussianBlur(1.2))
    return np.asarray(grey, dtype=np.float32) / np.float32(255)
