"""The document as one page for a browser: no script, no network, readable by anybody."""

from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, StrictUndefined, Template

from viz.export.paths import printable
from viz.findings.document import Block, Document, unbroken
from viz.words import SEVERITIES

_FOLDER = Path(__file__).parent


def findings_page(document: Document) -> str:
    """Return the document as one HTML file; every word of the design stands in it as text."""
    return _template().render(document=document, said=SEVERITIES)


@lru_cache(maxsize=1)
def _template() -> Template:
    made = Environment(
        autoescape=True, finalize=_plain, trim_blocks=True, lstrip_blocks=True,
        undefined=StrictUndefined,
    )  # fmt: skip
    made.tests["of"] = _is_of
    page, styles = (
        (_FOLDER / name).read_text(encoding="utf-8") for name in ("page.html", "page.css")
    )
    return made.from_string(page.replace("/* styles */", styles))


def _plain(value: object) -> object:
    """Return text without what steers a device or turns the direction of reading."""
    # What the template's own parts return is escaped already.
    made = hasattr(value, "__html__")
    return unbroken(printable(value)) if isinstance(value, str) and not made else value


def _is_of(block: Block, kind: str) -> bool:
    return type(block).__name__ == kind
