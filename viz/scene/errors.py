"""The one thing that can go wrong with pictures."""

from geometry.errors import BedcourseError


class NoPictures(BedcourseError):  # noqa: N818 - a state of the machine, not a fault of the design
    """Pictures cannot be drawn on this machine; the text says what to do."""
