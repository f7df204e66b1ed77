"""The controls of what presses on pipe and walls, and of the rules the job is held to."""

from viz.panels.fields import Field, alone, choice, pair, several
from viz.panels.spoken import later

_BEDDING = later({
    "dumped": "dumped in",
    "slight": "tamped a little, under 85 %",
    "moderate": "tamped, 85 to 95 %",
    "high": "tamped hard, above 95 %",
})  # fmt: skip


def loads() -> None:
    """Show what presses on the pipe and the walls."""
    choice(
        Field(("loads", "bedding"), "Stone beside the pipe", "dumped",
              "the stone at its sides keeps a pipe round; shares are of the Proctor density"),
        _BEDDING,
    )  # fmt: skip
    pair(
        Field(("loads", "wheel"), "Wheel over the drain", "none",
              "3000 lbf or 13 kN: of a truck that can drive there once it is filled"),
        Field(("loads", "surcharge"), "Load beside the wall", "none",
              "100 psf or 5 kPa: stacks, a drive, spoil; it pushes on the wall through the soil"),
    )  # fmt: skip
    alone(
        Field(("loads", "deflection_limit"), "Pipe may flatten", "5 %",
              "of its diameter; beyond it joints leak and a cleaning head sticks")
    )  # fmt: skip


def rules(sets: dict[str, str]) -> None:
    """Show which of the known rules hold; sets: their titles by their keys."""
    several(
        Field(("rules", "sets"), "Rules this job is held to", "all but those of one town",
              "what your department enforces; the others stay beside them to compare"),
        sets,
    )  # fmt: skip
