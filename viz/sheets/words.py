"""The fixed words of the sheets."""

STAMP = ("NOT FOR CONSTRUCTION", "UNTIL APPROVED")
LOCAL_CODE = (
    "Local code governs. Confirm depths, frost, drain outlet and inspections with the building "
    "department before work."
)
NOTES_HEAD = "NOTES"
SCALE = "Scale"
LEVELS_HEAD = "LEVELS"
LEVELS_SUB = "from TOF"
ELEVATION = "El."


def shown_heavy(names: tuple[str, ...]) -> str:
    """Return the note on parts too thin to draw true."""
    return f"Shown heavy, not to scale: {', '.join(names)}."


def true_scale(paper: str, size: str) -> str:
    """Return the note on the paper at which the scale is true."""
    return f"The scale is true on {paper} paper ({size}) printed at full size; else use the bar."
