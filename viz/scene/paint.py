"""Bodies on a plotter: the only file that imports pyvista, and only in the drawing process."""

from typing import Any

import numpy as np
import pyvista
from numpy.typing import NDArray

from viz.scene.bodies import Body, Cap, Composition
from viz.scene.camera import Camera, Margins, framed
from viz.scene.mesh import Array, Index, Plane, clipped, clipped_lines, inked_edges
from viz.scene.painting import FINER, Painting, Pixels
from viz.scene.palette import GHOST, INK, PAPER, RGB, colour, mixed, rgb
from viz.scene.shade import Depth, corners, darkened, light_of, shadows
from viz.style.materials import look_of

# Aside, above and towards the viewer, and the strength: a key light from a little behind, so that
# shadows fall to where they are seen, and a weaker fill.
LIGHTS = ((0.75, 1.0, -0.35, 0.52), (-0.35, 0.1, 1.0, 0.34))
HEAVY_MM = 0.6  # a table entry above this asks for a heavy line
Drawn = tuple[Body | Cap | None, Any]  # what an actor shows; none for mere ink


def painted(scene: Composition, camera: Camera, flat: bool) -> Painting:
    """Draw once for the eye and once to learn what is seen where.

    flat: square before the cut, where what lies behind is paled.
    """
    wide, high = camera.size
    plotter = pyvista.Plotter(off_screen=True, window_size=[wide * FINER, high * FINER])
    plotter.disable_anti_aliasing()  # blended pixels would spell parts that are not there
    try:
        return _both(plotter, scene, camera, flat)
    finally:
        plotter.close()
        plotter.deep_clean()


def _both(plotter: Any, scene: Composition, camera: Camera, flat: bool) -> Painting:
    plotter.set_background(PAPER)
    _light(plotter, camera, scene.lamp)
    names = tuple(dict.fromkeys(item.label.part for item in scene.items))
    surfaces = _surfaces(plotter, scene, flat)
    lines = _lines(plotter, scene, camera, flat)
    _aim(plotter, camera)
    pixels = _shot(plotter)
    for item, actor in (*surfaces, *lines):
        if item is None:
            actor.visibility = False
        else:
            _number(actor, names.index(item.label.part), isinstance(item, Cap))
    plotter.set_background((255, 255, 255))
    spelled = _shot(plotter)[::FINER, ::FINER].astype(np.int64)
    parts = spelled[..., 0] + 200 * spelled[..., 1]
    seen = spelled[..., 2] < 255
    cut = seen & (spelled[..., 2] > 50)
    if not flat:
        pixels = _shaded(plotter, scene, camera, pixels, cut)
    return Painting(pixels, np.where(seen, parts, -1), cut, names)


def _shaded(
    plotter: Any, scene: Composition, camera: Camera, pixels: Pixels, cut: NDArray[np.bool_]
) -> Pixels:
    """Soft corners and shadows on everything but cut faces."""
    if not scene.bodies:
        return pixels
    depth = _depth(plotter)
    key, sky = LIGHTS[0], 1.0 if camera.forward[2] <= 0 else -1.0
    towards = (
        scene.lamp * key[0] * camera.right
        + np.array([0, 0, sky * key[1]])
        - key[2] * camera.forward
    )
    everything = np.vstack([body.vertices for body in scene.bodies])
    light = framed(light_of(camera, towards), everything, camera.size, Margins(4, 4, 4, 4))
    _aim(plotter, light)
    plotter.render()
    shadow = shadows(depth, camera, _depth(plotter), light)
    return darkened(pixels, corners(depth, camera.metres_per_pixel), shadow, cut)


def _depth(plotter: Any) -> Depth:
    """Metres from the eye of what each pixel shows, NaN where nothing is."""
    far = plotter.get_image_depth(fill_value=np.nan, reset_camera_clipping_range=False)
    return np.asarray(-far[::FINER, ::FINER], dtype=np.float32)


def _shot(plotter: Any) -> Pixels:
    plotter.render()
    return np.asarray(plotter.screenshot(return_img=True))[..., :3]


def _light(plotter: Any, camera: Camera, lamp: float) -> None:
    """A soft key light from above and one side, and a weak one from where the viewer stands."""
    plotter.remove_all_lights()
    sky = 1.0 if camera.forward[2] <= 0 else -1.0
    for aside, above, toward, strength in LIGHTS:
        spot = lamp * aside * camera.right + np.array([0, 0, sky * above]) - toward * camera.forward
        light = pyvista.Light(position=tuple(spot), focal_point=(0, 0, 0), intensity=strength)
        light.positional = False
        plotter.add_light(light)


def _surfaces(plotter: Any, scene: Composition, flat: bool) -> list[Drawn]:
    actors: list[Drawn] = []
    for body in scene.bodies:
        if not body.ghost:
            vertices, faces = _behind(body, scene.plane)
            tone = INK if body.dark else colour(body.label)
            tone = mixed(tone, PAPER, 0.5) if flat else tone
            actors.append((body, _surface(plotter, vertices, faces, tone, True)))
            if body.inside:
                actors[-1][1].prop.culling = "back"
    for cap in scene.caps:
        if cap.ghost:
            continue
        face = _surface(plotter, cap.vertices, cap.faces, colour(cap.label), False)
        actors.append((cap, face))
    return [(item, actor) for item, actor in actors if actor is not None]


def _behind(body: Body, plane: Plane | None) -> tuple[Array, Index]:
    if plane is None:
        return body.vertices, body.faces
    return clipped(body.vertices, body.faces, plane)


def _surface(plotter: Any, vertices: Array, faces: Index, tone: RGB, lit: bool) -> Any:
    if not len(faces):
        return None
    corners = np.column_stack([np.full(len(faces), 3), faces])
    mesh = pyvista.PolyData(vertices, corners.ravel())
    return plotter.add_mesh(
        mesh, color=tone, lighting=lit, ambient=0.66 if lit else 0.0,
        diffuse=0.68 if lit else 1.0, specular=0.0, show_edges=False, smooth_shading=False,
        reset_camera=False, render=False,
    )  # fmt: skip


def _lines(plotter: Any, scene: Composition, camera: Camera, flat: bool) -> list[Drawn]:
    """Edges and cut outlines, brought a little towards the viewer so that they are not eaten."""
    nearer = -1.5 * camera.metres_per_pixel * camera.forward
    lines: list[Drawn] = []
    for body in scene.bodies:
        if not body.inked or (flat and body.ghost):
            continue
        starts, ends = inked_edges(body.vertices, body.faces, camera.forward)
        if scene.plane is not None:
            starts, ends = clipped_lines(starts, ends, scene.plane)
        long = np.linalg.norm(ends - starts, axis=1) > 2.5 * camera.metres_per_pixel
        tone = GHOST if body.ghost else mixed(INK, colour(body.label), 0.25)
        edges = _line(plotter, starts[long] + nearer, ends[long] + nearer, tone, 1.0)
        lines.append((None, edges))
    for cap in scene.caps:
        lines += [_outline(plotter, cap, ring + 2 * nearer) for ring in cap.rings]
    return [(item, actor) for item, actor in lines if actor is not None]


def _outline(plotter: Any, cap: Cap, ring: Array) -> Drawn:
    """A heavy line in its own ink, and named, for what is too thin to be seen as a face."""
    if cap.ghost:
        return None, _line(plotter, ring[:-1], ring[1:], GHOST, 1.2)
    look = look_of(cap.label)
    if look.thin_mm > HEAVY_MM:
        return cap, _line(plotter, ring[:-1], ring[1:], rgb(look.ink), 3.0)
    return None, _line(plotter, ring[:-1], ring[1:], INK, 1.6)


def _line(plotter: Any, starts: Array, ends: Array, tone: RGB, width: float) -> Any:
    if not len(starts):
        return None
    count = len(starts)
    pairs = np.column_stack([np.full(count, 2), np.arange(count), np.arange(count) + count])
    mesh = pyvista.PolyData(np.vstack([starts, ends]), lines=pairs.ravel())
    return plotter.add_mesh(
        mesh, color=tone, line_width=width * FINER, lighting=False, reset_camera=False,
        render=False,
    )  # fmt: skip


def _aim(plotter: Any, camera: Camera) -> None:
    plotter.enable_parallel_projection()
    eye = camera.eye
    plotter.camera_position = [tuple(eye), tuple(camera.centre), tuple(camera.up)]
    plotter.camera.parallel_scale = camera.size[1] * camera.metres_per_pixel / 2
    plotter.renderer.ResetCameraClippingRange()


def _number(actor: Any, index: int, cut: bool) -> None:
    """Paint an actor in the colour that spells its part's index and whether it is a cut face."""
    actor.prop.lighting = False
    actor.prop.ambient, actor.prop.diffuse = 0.0, 1.0
    actor.prop.color = (index % 200, index // 200, 100 if cut else 0)
