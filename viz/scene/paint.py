"""Bodies on a plotter: the only file that imports pyvista, and only in the drawing process."""

from typing import Any

import numpy as np
import pyvista

from viz.scene.bodies import Body, Cap, Composition
from viz.scene.camera import Camera
from viz.scene.mesh import Array, Index, Plane, clipped, clipped_lines, inked_edges
from viz.scene.painting import FINER, Painting, Pixels
from viz.scene.palette import GHOST, INK, PAPER, RGB, colour, mixed, rgb
from viz.style.materials import look_of

# Aside, above and towards the viewer, and the strength: a soft key light and a weaker fill.
LIGHTS = ((-0.7, 1.0, 0.5, 0.44), (0.35, 0.1, 1.0, 0.34))
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
    _light(plotter, camera)
    names = tuple(dict.fromkeys(item.label.part for item in scene.items))
    surfaces = _surfaces(plotter, scene, flat)
    lines = _lines(plotter, scene, camera)
    _aim(plotter, camera)
    if not flat:
        plotter.enable_ssao(radius=0.5, bias=0.03, kernel_size=128, blur=True)
    pixels = _shot(plotter)
    plotter.disable_ssao()
    for item, actor in (*surfaces, *lines):
        if item is None:
            actor.visibility = False
        else:
            _number(actor, names.index(item.label.part), isinstance(item, Cap))
    plotter.set_background((255, 255, 255))
    spelled = _shot(plotter)[::FINER, ::FINER].astype(np.int64)
    parts = spelled[..., 0] + 200 * spelled[..., 1]
    seen = spelled[..., 2] < 255
    return Painting(pixels, np.where(seen, parts, -1), seen & (spelled[..., 2] > 50), names)


def _shot(plotter: Any) -> Pixels:
    plotter.render()
    return np.asarray(plotter.screenshot(return_img=True))[..., :3]


def _light(plotter: Any, camera: Camera) -> None:
    """A soft key light from the viewer's upper left, and a weak one from where he stands."""
    plotter.remove_all_lights()
    for aside, above, toward, strength in LIGHTS:
        spot = aside * camera.right + np.array([0, 0, above]) - toward * camera.forward
        light = pyvista.Light(position=tuple(spot), focal_point=(0, 0, 0), intensity=strength)
        light.positional = False
        plotter.add_light(light)


def _surfaces(plotter: Any, scene: Composition, flat: bool) -> list[Drawn]:
    actors: list[Drawn] = []
    for body in scene.bodies:
        if not body.ghost:
            vertices, faces = _behind(body, scene.plane)
            tone = mixed(colour(body.label), PAPER, 0.5) if flat else colour(body.label)
            actors.append((body, _surface(plotter, vertices, faces, tone, True)))
    for cap in scene.caps:
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
        mesh, color=tone, lighting=lit, ambient=0.62 if lit else 0.0,
        diffuse=0.68 if lit else 1.0, specular=0.0, show_edges=False, smooth_shading=False,
        reset_camera=False, render=False,
    )  # fmt: skip


def _lines(plotter: Any, scene: Composition, camera: Camera) -> list[Drawn]:
    """Edges and cut outlines, brought a little towards the viewer so that they are not eaten."""
    nearer = -1.5 * camera.metres_per_pixel * camera.forward
    lines: list[Drawn] = []
    for body in scene.bodies:
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
    away = 60.0
    plotter.enable_parallel_projection()
    eye = camera.centre - away * camera.forward
    plotter.camera_position = [tuple(eye), tuple(camera.centre), tuple(camera.up)]
    plotter.camera.parallel_scale = camera.size[1] * camera.metres_per_pixel / 2
    plotter.renderer.ResetCameraClippingRange()


def _number(actor: Any, index: int, cut: bool) -> None:
    """Paint an actor in the colour that spells its part's index and whether it is a cut face."""
    actor.prop.lighting = False
    actor.prop.ambient, actor.prop.diffuse = 0.0, 1.0
    actor.prop.color = (index % 200, index // 200, 100 if cut else 0)
