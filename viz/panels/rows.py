"""Corners and piers as lines of text, one a line, and back into the file."""

from typing import Any

import tomlkit

from geometry.parts.floor import USUAL_LAYERS
from geometry.units import show_thickness

Raw = dict[str, Any]


def corner_lines(corners: Any) -> str:
    """Return corners as text, one a line."""
    return "\n".join(_place(c) for c in corners) if isinstance(corners, list) else ""


def _place(corner: Any) -> str:
    return ", ".join(map(str, corner)) if isinstance(corner, list) else str(corner)


def corners_of(lines: str) -> list[str]:
    """Return the corners of a text, blank lines left out."""
    return [line.strip() for line in lines.splitlines() if line.strip()]


def pier_lines(piers: Any) -> str:
    """Return piers as text: `P1: 13 ft, 10 ft`."""
    rows = [p for p in piers if isinstance(p, dict)] if isinstance(piers, list) else []
    return "\n".join(
        f"{pier.get('name') or number}: {_place(pier.get('at', ''))}"
        for number, pier in enumerate(rows, 1)
    )


def with_piers(text: str, area: int, lines: str) -> str:
    """Return the design text with an area's piers moved, added and taken out as the lines say.

    Piers are known by their names, so what else the file says of them stays.
    """
    document = tomlkit.parse(text)
    table: Any = document["area"][area]
    before = [p for p in table.get("pier", []) if isinstance(p, dict)]
    old = {str(p.get("name") or n): p for n, p in enumerate(before, 1)}
    table.pop("pier", None)
    wanted = _named(lines)
    if wanted:
        piers = tomlkit.aot()
        for name, at in wanted:
            piers.append(_pier(old.get(name), name, at))
        table["pier"] = piers
    return tomlkit.dumps(document)


def _named(lines: str) -> list[tuple[str, str]]:
    rows = [line.strip() for line in lines.splitlines() if line.strip()]
    pairs = [row.partition(":") for row in rows]
    return [
        (name.strip(), at.strip()) if colon else (f"P{number}", name.strip())
        for number, (name, colon, at) in enumerate(pairs, 1)
    ]


def _pier(old: Any, name: str, at: str) -> Any:
    pier = tomlkit.table()
    for key, value in {"name": name, **(dict(old) if old else {})}.items():
        pier[key] = value
    pier["at"] = at
    return pier


def usual_layers() -> list[dict[str, str]]:
    """Return the usual floor as the file writes it, to be edited."""
    return [
        {
            "name": layer.name,
            "material": layer.material,
            "thickness": show_thickness(layer.thickness, "ft-in").replace('"', " in"),
            "role": layer.role,
        }
        for layer in USUAL_LAYERS
    ]


def layers_home(raw: Raw, area: int) -> tuple[str | int, ...]:
    """Return where an area's layers are written: its own floor's, or the house's."""
    own = raw["area"][area].get("floor")
    if isinstance(own, dict) and "layer" in own:
        return ("area", area, "floor", "layer")
    return ("floor", "layer")


def home(raw: Raw, area: int, part: str) -> tuple[str | int, ...]:
    """Return where an area's footing, wall or floor is written: its own table, or the house's."""
    own = raw["area"][area].get(part)
    return ("area", area, part) if isinstance(own, dict) else (part,)
