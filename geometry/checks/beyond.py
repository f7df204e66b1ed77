"""What no design file can tell: the limits of the program, for the parts this design has."""

from collections.abc import Iterator

from geometry.checks.open_point import OpenPoint
from geometry.layout.lay import Layout
from geometry.water.wall import wall_runs


def beyond(layout: Layout) -> Iterator[OpenPoint]:
    """Yield what was not checked and never is, for what is built here."""
    yield from _under_ground()
    yield from _of_structure(layout)
    yield from _of_services(layout)
    yield from _of_the_office()


def _under_ground() -> Iterator[OpenPoint]:
    yield OpenPoint(
        "ground-as-found", "The ground as it is found: fill, soft spots, roots, old drains",
        "A file names one soil for the whole site; only the open hole shows the rest.",
        "geotechnical engineer",
    )  # fmt: skip
    yield OpenPoint(
        "expansive", "Soil that swells and shrinks, or settles when it is wetted",
        "A group's name does not tell it; a test of the sample does.",
        "geotechnical engineer",
    )  # fmt: skip
    yield OpenPoint(
        "chemistry", "Chemistry of ground and water: sulfates, acid, iron that clogs drains",
        "No analysis of soil or water is part of a design.",
        "water laboratory",
    )  # fmt: skip
    yield OpenPoint(
        "excavation", "Whether the sides of the hole stand",
        "Slope and shoring follow the ground and the weather on the day; figures here are drawn, "
        "not proven.",
        "competent person on site",
    )  # fmt: skip
    yield OpenPoint(
        "neighbours", "Footings, walls and trees beside the hole",
        "Nothing outside this house is in the design.",
        "structural engineer",
    )  # fmt: skip
    yield OpenPoint(
        "utilities", "Pipes and cables in the ground",
        "They are not in the design. Have them marked before the dig.",
        "utility locating service",
    )  # fmt: skip
    yield OpenPoint(
        "radon-measured", "Radon in the finished house",
        "It can be measured only once the house stands.",
        "radon measurement professional",
    )  # fmt: skip


def _of_structure(layout: Layout) -> Iterator[OpenPoint]:
    if any(run.fill_to_floor_m > 0 for run in wall_runs(layout)):
        yield OpenPoint(
            "wall-design", "Whether the walls bear the push: bars, bending, shear, sliding",
            "The push is told; a wall's design belongs to the code's tables or an engineer.",
            "structural engineer",
        )  # fmt: skip
    yield OpenPoint(
        "seismic", "Earthquake and wind: seismic category, uplift, hold-downs, anchor bolts",
        "Neither the place's hazard nor the house above is in the design.",
        "structural engineer",
    )  # fmt: skip
    yield OpenPoint(
        "framing", "What posts, beams and walls above bring down, and where",
        "The house above the foundation is not in the design.",
        "structural engineer",
    )  # fmt: skip
    yield OpenPoint(
        "openings", "Openings, window wells, ledges and pockets in the walls",
        "Walls are plain here.",
        "structural engineer",
    )  # fmt: skip
    yield OpenPoint(
        "slab-steel", "Steel, mix and curing of the slab",
        "Thickness, joints and layers are looked at, not the steel or the mix.",
        "structural engineer",
    )  # fmt: skip
    yield OpenPoint(
        "as-delivered", "Concrete, stone and sand as they arrive",
        "What is ordered is told; what comes is seen and tested on the day.",
        "concrete supplier and testing laboratory",
    )  # fmt: skip


def _of_services(layout: Layout) -> Iterator[OpenPoint]:
    if layout.sump:
        yield OpenPoint(
            "pump-electric", "The pump's circuit, its protection and its emergency power",
            "No wiring is in the design.",
            "electrician",
        )  # fmt: skip
    if layout.drains:
        yield OpenPoint(
            "outfall", "Whether the water may go where it is led",
            "Towns differ, and none lets it into a sanitary sewer unasked.",
            "town or county (stormwater)",
        )  # fmt: skip
    yield OpenPoint(
        "plumbing", "Sewers, supply pipes and conduits under the slab and through the walls",
        "They are not in the design.",
        "plumber and building department",
    )  # fmt: skip


def _of_the_office() -> Iterator[OpenPoint]:
    yield OpenPoint(
        "permits", "Permits, zoning, setbacks, flood zone and easements",
        "They belong to the place, not to the build-up.",
        "building department",
    )  # fmt: skip
    yield OpenPoint(
        "amendments", "Local amendments to the codes",
        "The rules held against here are the texts named beside them; a town may have changed "
        "them.",
        "building department",
    )  # fmt: skip
    yield OpenPoint(
        "as-built", "What was built",
        "A design is looked at here, not the work: the levels are shot, and every hold point is "
        "seen, on site.",
        "surveyor",
    )  # fmt: skip
