"""Writes what the program is made of: `python -m tests.supply.renew`, after the locks are renewed.

assets/licenses.md for people, assets/sbom.cdx.json (CycloneDX 1.6) for programs. Nothing asks a
network. The hashes of every file stand in the locks.
"""

from tests.supply.bill import bill
from tests.supply.parts import HOME, Part, parts

PAGE, BILL = HOME / "assets" / "licenses.md", HOME / "assets" / "sbom.cdx.json"
_HEAD = """# Licences

Bedcourse is under the MIT licence (`LICENSE`). The letters B612 are under the SIL Open Font Licence
(`assets/fonts/OFL.txt`). It installs, or holds in its 3D page, these packages under their own
licences, named as each package names it; their full texts come with the packages and, for the
3D page, with its script. The extras `ifc` (LGPL) and `batch` are installed only where they are
asked for.

| package | version | licence | of |
| --- | --- | --- | --- |
"""


def page(found: list[Part]) -> str:
    """Return the licences as a page."""
    rows = (
        f"| {p.name} | {p.version} | {p.licence.replace('|', '/')} | {_of(p)} |\n" for p in found
    )
    return _HEAD + "".join(rows)


def _of(part: Part) -> str:
    if part.extra:
        return f"the extra `{part.extra}`"
    if part.kind == "npm":
        return "the 3D page"
    return f"the program, where {part.only}" if part.only else "the program"


if __name__ == "__main__":
    everything = parts()
    PAGE.write_text(page(everything), encoding="utf-8")
    BILL.write_text(bill(everything), encoding="utf-8")
