"""The drain's way round the house: an offset line with exact mitred corners."""

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon

from geometry.plan.outline import Point

STRAIGHT_SINE = 1e-6


@dataclass(frozen=True)
class Route:
    """A line on the plan: corner points in order, and whether it closes on itself.

    points: metres; counter-clockwise about the house.
    """

    points: tuple[Point, ...]
    closed: bool

    @cached_property
    def line(self) -> LineString:
        """The route as a line; closed routes end where they start."""
        return LineString((*self.points, self.points[0]) if self.closed else self.points)

    @cached_property
    def stations(self) -> NDArray[np.float64]:
        """Distance along the route of each point (and of the closing point), metres."""
        steps = np.linalg.norm(np.diff(np.asarray(self.line.coords), axis=0), axis=1)
        return np.concatenate(([0.0], np.cumsum(steps)))

    @property
    def length(self) -> float:
        """Length along the route, metres."""
        return float(self.stations[-1])

    def at(self, station: float) -> Point:
        """Return the point at a distance along the route; closed routes wrap round."""
        (x0, y0), (x1, y1), share, _ = self._on_leg(station)
        return x0 + share * (x1 - x0), y0 + share * (y1 - y0)

    def heading(self, station: float) -> Point:
        """Return the unit vector along the leg at a distance along the route."""
        (x0, y0), (x1, y1), _, length = self._on_leg(station)
        return (x1 - x0) / length, (y1 - y0) / length

    def _on_leg(self, station: float) -> tuple[Point, Point, float, float]:
        """Return the ends of the leg at a station, the share of it behind, its length."""
        where = float(station % self.length if self.closed else station)
        stations, corners = self._legs
        leg = min(max(bisect_right(stations, where) - 1, 0), len(stations) - 2)
        length = stations[leg + 1] - stations[leg]
        return corners[leg], corners[leg + 1], (where - stations[leg]) / length, length

    @cached_property
    def _legs(self) -> tuple[list[float], list[Point]]:
        """Stations and corners as plain numbers: places are asked for one by one, and often."""
        return self.stations.tolist(), [(float(x), float(y)) for x, y in self.line.coords]

    def station_of(self, point: Point) -> float:
        """Return the distance along the route of the place nearest to a point."""
        return float(self.line.project(shapely.Point(point)))


def corners_of(outline: Polygon) -> NDArray[np.float64]:
    """Return (n, 2) corners of an outline, the first not repeated."""
    return np.asarray(outline.exterior.coords)[:-1]


def straightened(outline: Polygon) -> Polygon:
    """Return the outline counter-clockwise, corners where it runs straight on left out."""
    corners = corners_of(outline)
    before = corners - np.roll(corners, 1, axis=0)
    after = np.roll(corners, -1, axis=0) - corners
    sine = _cross(before, after) / (np.linalg.norm(before, axis=1) * np.linalg.norm(after, axis=1))
    return shapely.orient_polygons(Polygon(corners[np.abs(sine) > STRAIGHT_SINE]))


def parallel(outline: Polygon, distance_m: float) -> NDArray[np.float64]:
    """Return (n, 2) corners of the outline moved outward by a distance, each side kept.

    The outline runs counter-clockwise without straight-on corners; sides may turn round
    where they are too short: see `lengths_along`.
    """
    corners = corners_of(outline)
    ahead = np.roll(corners, -1, axis=0) - corners
    ahead /= np.linalg.norm(ahead, axis=1)[:, None]
    behind = np.roll(ahead, 1, axis=0)
    normal_sum = np.column_stack((behind[:, 1] + ahead[:, 1], -behind[:, 0] - ahead[:, 0]))
    scale = 1 + np.einsum("ij,ij->i", behind, ahead)
    moved: NDArray[np.float64] = corners + distance_m * normal_sum / scale[:, None]
    return moved


def lengths_along(outline: Polygon, moved: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return (n,) length of each moved side along its own direction; negative = turned round."""
    corners = corners_of(outline)
    ahead = np.roll(corners, -1, axis=0) - corners
    ahead /= np.linalg.norm(ahead, axis=1)[:, None]
    lengths: NDArray[np.float64] = np.einsum("ij,ij->i", np.roll(moved, -1, axis=0) - moved, ahead)
    return lengths


def _cross(a: NDArray[np.float64], b: NDArray[np.float64]) -> NDArray[np.float64]:
    return a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
