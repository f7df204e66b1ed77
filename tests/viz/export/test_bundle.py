"""Several files in one."""

from io import BytesIO
from zipfile import ZipFile

from viz.export.bundle import to_zip

FILES = {"a.pdf": b"%PDF-1.7", "sheets/S-101.svg": b"<svg/>" * 500}


def test_what_was_put_in_comes_out_and_words_are_squeezed():
    data = to_zip(FILES)
    with ZipFile(BytesIO(data)) as bundle:
        assert bundle.testzip() is None
        assert {name: bundle.read(name) for name in bundle.namelist()} == FILES
    assert len(data) < len(FILES["sheets/S-101.svg"])


def test_the_same_files_give_the_same_bytes():
    assert to_zip(FILES) == to_zip(dict(FILES))
