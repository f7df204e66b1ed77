"""The ground a footing leans on, which a trench beside it must leave alone.

Distances run outward from the footing's outside edge, depths down from its bottom, metres. The
footing's load spreads down and out from that edge on a line at 45 degrees; plumbing codes forbid
trenching into it (IRC P2604.4, IPC 307.5: bearing plane at 45 degrees from the outside bottom
edge; wording from memory, the angle seen in a city's plumbing code).
"""

from geometry.formulas.given import not_negative, positive
from geometry.sources import Source

SPLAY_SOURCE = Source("IRC", clause="P2604.4, IPC 307.5 (45 degree bearing plane)", sure="memory")

ONE_TO_ONE = 1.0
"""Fall of the bearing line over its run outward, 45 degrees."""


def splay_depth(distance_m: float, fall: float = ONE_TO_ONE) -> float:
    """Depth of the bearing line at a distance from the footing, m; 0 at its edge and under it."""
    positive(fall=fall)
    return max(0.0, distance_m) * fall


def least_distance(depth_m: float, fall: float = ONE_TO_ONE) -> float:
    """Nearest a trench's bottom edge may come to the footing, m; 0 for one not below it."""
    positive(fall=fall)
    return max(0.0, depth_m) / fall


def in_splay(distance_m: float, depth_m: float, fall: float = ONE_TO_ONE) -> bool:
    """Whether a point lies in the ground that carries the footing; on the line it does not."""
    return depth_m > splay_depth(distance_m, fall)


def trench_intrusion(near_edge_m: float, bottom_depth_m: float, fall: float = ONE_TO_ONE) -> float:
    """How much farther out a trench with this bottom must lie, m; 0 when it lies clear."""
    return max(0.0, least_distance(bottom_depth_m, fall) - near_edge_m)


def deepest_bottom(near_edge_m: float, fall: float = ONE_TO_ONE) -> float:
    """Deepest a trench may go whose near edge lies at a distance, m below the footing's bottom."""
    not_negative(near_edge_m=near_edge_m)
    return splay_depth(near_edge_m, fall)
