"""What tells a drain from a house's others, as a name or as the key of its line."""

from collections.abc import Sequence

from geometry.layout.drain import DrainLayout


def called(drain: DrainLayout, drains: Sequence[DrainLayout]) -> str:
    """Return a drain's own name, else the key of its line; empty for a house's only drain."""
    return (drain.drain.name or str(drain.drain.line)) if len(drains) > 1 else ""
