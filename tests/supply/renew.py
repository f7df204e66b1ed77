"""Writes what the program is made of: `python -m tests.supply.renew`, after the locks are renewed.

assets/licenses.md for people, assets/sbom.cdx.json (CycloneDX 1.6) for programs. Plain JSON made
here; nothing asks a network. The hashes of every file stand in the locks.
"""

import json

from tests.supply.parts import HOME, Part, parts

PAGE, BILL = HOME / "assets" / "licenses.md", HOME / "assets" / "sbom.cdx.json"
_HEAD = """# Licences

Bedcourse is under the MIT licence (`LICENSE`). The letters B612 are under the SIL Open Font Licence
(`assets/fonts/OFL.txt`). It installs, or holds in its 3D page, these packages under their own
licences, named as each package names it; their full texts come with the packages and, for the
3D page, with its script. The extra `ifc` (LGPL) is installed only where it is asked for.

| package | version | licence | of |
| --- | --- | --- | --- |
"""


def page(found: list[Part]) -> str:
    """Return the licences as a page."""
    rows = (
        f"| {p.name} | {p.version} | {p.licence.replace('|', '/')} | "
        f"{'the 3D page' if p.kind == 'npm' else _only(p)} |\n"
        for p in found
    )
    return _HEAD + "".join(rows)


def _only(part: Part) -> str:
    return f"the program, where {part.only}" if part.only else "the program"


def bill(found: list[Part]) -> str:
    """Return the bill of materials."""
    made = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {"type": "application", "name": "bedcourse", "bom-ref": "bedcourse"}
        },
        "components": [
            {
                "type": "library", "bom-ref": p.url, "name": p.name, "version": p.version,
                "purl": p.url, "licenses": [{"license": {"name": p.licence}}],
            }
            for p in found
        ],
        "dependencies": [{"ref": "bedcourse", "dependsOn": [p.url for p in found]}],
    }  # fmt: skip
    return json.dumps(made, indent=1) + "\n"


if __name__ == "__main__":
    everything = parts()
    PAGE.write_text(page(everything), encoding="utf-8")
    BILL.write_text(bill(everything), encoding="utf-8")
