"""Several files as one ZIP file."""

from collections.abc import Mapping
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

# What is squeezed already is stored as it is.
_SQUEEZED = (".png", ".pdf")


def to_zip(files: Mapping[str, bytes]) -> bytes:
    """Return files by their names as one ZIP file; the same files give the same bytes."""
    whole = BytesIO()
    with ZipFile(whole, "w") as out:
        for name, data in files.items():
            # The date of a bare ZipInfo is fixed: 1980, the first that the format knows.
            info = ZipInfo(name)
            if not name.endswith(_SQUEEZED):
                info.compress_type = ZIP_DEFLATED
            out.writestr(info, data)
    return whole.getvalue()
