"""The library that writes IFC: an extra (LGPL), asked for only when a file is wanted."""

from importlib import import_module
from importlib.util import find_spec
from typing import Any

from geometry.errors import BedcourseError

LIBRARY = "ifcopenshell"
HOW = (
    "IFC needs the library ifcopenshell, which is not installed: "
    "`.venv/bin/uv pip install --require-hashes -r requirements-ifc.lock` installs it"
)


class IfcLibraryError(BedcourseError):
    """The library that writes IFC is not installed."""


def there() -> bool:
    """Whether the library is installed."""
    return find_spec(LIBRARY) is not None


def library() -> Any:
    """Return the library. Raises IfcLibraryError in one sentence that says what to install."""
    if not there():
        raise IfcLibraryError(HOW)
    import_module(f"{LIBRARY}.guid")
    return import_module(LIBRARY)
