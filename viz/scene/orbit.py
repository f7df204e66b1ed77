"""A view to turn with the finger: one HTML page that needs no network."""

from collections.abc import Collection, Sequence
from html import escape
from typing import Any

import numpy as np
import trimesh
from trimesh.viewer.notebook import scene_to_html

from geometry.errors import BedcourseError
from geometry.solids.solid import Solid
from viz.export.glb import Y_UP, y_up_scene
from viz.scene.bodies import HIDING
from viz.scene.camera import Margins, aimed, framed
from viz.scene.palette import INK, PAPER, RGB

OPENING = 30.0  # degrees, upright angle of view
CANVAS = (1000, 800)

# Runs after trimesh's own script has drawn once: our light, edges, level horizon.
DRESS = """
(function dress() {
  if (!window.controls) { return void requestAnimationFrame(dress); }
  renderer.outputEncoding = THREE.sRGBEncoding;
  scene.background = new THREE.Color("$PAPER");
  tracklight.intensity = 0.42;
  scene.add(new THREE.HemisphereLight(0xffffff, 0xa8a49c, 0.72));
  const ink = new THREE.LineBasicMaterial({ color: "$INK", transparent: true, opacity: 0.75 });
  const meshes = [];
  scene.traverse(function (item) { if (item.isMesh) { meshes.push(item); } });
  meshes.forEach(function (mesh) {
    mesh.material.polygonOffset = true;
    mesh.material.polygonOffsetFactor = mesh.material.polygonOffsetUnits = 1;
    mesh.material.needsUpdate = true;
    mesh.add(new THREE.LineSegments(new THREE.EdgesGeometry(mesh.geometry, 40), ink));
  });
  function levelled() {
    camera.up.set(0, 1, 0);
    camera.lookAt(controls.target);
    render();
  }
  controls.addEventListener("change", levelled);
  levelled();
  const back = Math.max(1, 1.3 / camera.aspect);
  camera.position.sub(controls.target).multiplyScalar(back).add(controls.target);
  levelled();
  document.body.dataset.drawn = meshes.length;
})();
"""

STYLE = """
body { background: $PAPER; color: $INK; font: 15px/1.35 sans-serif; }
#what { position: fixed; left: 14px; top: 10px; pointer-events: none; }
#what b { display: block; font-size: 17px; }
"""


def orbit_page(solids: Sequence[Solid], title: str, without: Collection[str] = HIDING) -> str:
    """A self-contained page with the solids to turn, zoom and move.

    without: roles to leave out; by default the soil that would hide the work.
    """
    shown = [solid for solid in solids if solid.label.role not in without]
    scene = y_up_scene(shown)
    if not scene.geometry:
        raise BedcourseError("There is nothing to turn: every part is left out.")
    _aim(scene)
    page = scene_to_html(scene)
    name = escape(title)
    style, dress = _toned(STYLE), _toned(DRESS)
    hint = "Drag to turn, wheel or two fingers to zoom."
    body = f'<div id="what"><b>{name}</b>{hint}<noscript> Needs scripts.</noscript></div>'
    page = page.replace("<title>trimesh: threejs viewer</title>", f"<title>{name}</title>", 1)
    page = page.replace("</style>", f"{style}</style>", 1)
    return page.replace("</script></body>", f"</script>{body}<script>{dress}</script></body>")


def _aim(scene: trimesh.Scene) -> None:
    """Stand where the parts fill the window, seen from the front left and above."""
    box = [[x, y, z] for x in (0, 1) for y in (0, 1) for z in (0, 1)]
    corners = (scene.bounds[0] + np.array(box) * np.ptp(scene.bounds, axis=0)) @ Y_UP  # z up
    axes = aimed((0.0, 1.0), -30.0, 28.0)
    parallel = framed(axes, corners, CANVAS, Margins(60, 60, 60, 60))
    tall = parallel.metres_per_pixel * CANVAS[1]
    away = tall / 2 / np.tan(np.radians(OPENING / 2))
    placed = np.eye(4)
    placed[:3, :3] = Y_UP @ np.column_stack([axes[0], axes[1], -axes[2]])
    placed[:3, 3] = Y_UP @ (corners.mean(axis=0) - away * axes[2])
    camera: Any = trimesh.scene.Camera
    fov = (OPENING * CANVAS[0] / CANVAS[1], OPENING)
    # A near plane too near leaves too little depth to tell a sheet from what lies behind it.
    scene.camera = camera(resolution=CANVAS, fov=fov, z_near=away / 80, z_far=away * 20)
    scene.camera_transform = placed


def _toned(text: str) -> str:
    return text.replace("$PAPER", _code(PAPER)).replace("$INK", _code(INK))


def _code(tone: RGB) -> str:
    return "#{:02x}{:02x}{:02x}".format(*tone)
