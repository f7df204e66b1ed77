"""Meshes kept by what they are made from, so that a changed thickness costs only what it changes.

Every kernel result is a pure function of frozen inputs; a body asked for again, by this design or
the next, is the one made before. Its arrays are locked, for several designs may hold them.
"""

from collections.abc import Callable, Hashable, Sequence

from geometry.solids.kept import Kept, content
from geometry.solids.kernel import Mesh, cut_away, manifold, mesh_of, union

# Bytes: some fifteen houses of which everything differs, hundreds that differ in one layer.
ROOM = 60_000_000

_MESHES = Kept[tuple[Mesh, ...]](
    ROOM, lambda meshes: sum(m.vertices.nbytes + m.faces.nbytes for m in meshes)
)


def remembered(key: Hashable, make: Callable[[], Mesh]) -> Mesh:
    """Return the mesh of a key; the key tells every input, and what is made of them."""
    return remembered_all(key, lambda: (make(),))[0]


def remembered_all(key: Hashable, make: Callable[[], tuple[Mesh, ...]]) -> tuple[Mesh, ...]:
    """Return the meshes of a key, as `remembered` does."""
    return _MESHES.get(key, lambda: tuple(_locked(mesh) for mesh in make()))


def forget() -> None:
    """Drop every mesh that is kept."""
    _MESHES.clear()


def name_of(mesh: Mesh) -> bytes:
    """Return a name that tells a mesh's corners and faces."""
    return content(mesh.vertices, mesh.faces)


def carved(body: Mesh, tools: Sequence[Mesh]) -> Mesh:
    """Return a body less others, cut away one after the other."""
    if not tools:
        return body
    key = ("carved", name_of(body), *map(name_of, tools))
    return remembered(
        key, lambda: mesh_of(cut_away(manifold(body), [manifold(tool) for tool in tools]))
    )


def welded_together(bodies: Sequence[Mesh]) -> Mesh:
    """Return the union of bodies."""
    key = ("union", *map(name_of, bodies))
    return remembered(key, lambda: mesh_of(union([manifold(body) for body in bodies])))


def _locked(mesh: Mesh) -> Mesh:
    mesh.vertices.flags.writeable = mesh.faces.flags.writeable = False
    return mesh
