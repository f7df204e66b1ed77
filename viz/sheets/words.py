"""The fixed words of the sheets."""

STAMP = "NOT FOR CONSTRUCTION UNTIL APPROVED"
LOCAL_CODE = (
    "Local code governs. Confirm depths, frost, drain outlet and inspections with the building "
    "department before work."
)
STAMP_SPACE = "Space for the department's stamp"
DRAWN_FOR = "Drawn for"
PREPARED_BY = "Prepared by"
SIGNATURE = "Signature"
DATE = "Date"
REVISION = "Revision"
PARCEL = "Parcel"
CODE = "Code and edition"
AS_SHOWN = "Scales as shown"


def true_scale(paper: str, size: str) -> str:
    """Return the note on the paper at which the scale is true."""
    return f"The scale is true on {paper} paper ({size}) printed at full size; else use the bar."


def sheet_of(number: int, count: int) -> str:
    """Return the place of a sheet in the set."""
    return f"Sheet {number} of {count}"
