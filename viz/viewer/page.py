"""One page with the model to turn: complete in itself, asking nothing of any network."""

import base64
import hashlib
import json
from html import escape
from typing import Any

from geometry.layout.leveltable import level_rows
from geometry.units import show_elevation, show_level, show_rod
from viz.job import Job
from viz.language.reader import NATIVE, codes, language
from viz.viewer import bundle
from viz.viewer.model import model
from viz.viewer.speaking import Spoken, page_words
from viz.viewer.stages import cautions
from viz.viewer.still import stills

_LAPTOP = "width=device-width, initial-scale=1"


def viewer_page(work: Job) -> str:
    """Return the page as HTML; the same design gives the same bytes.

    Raises BedcourseError where the viewer's script is missing from the installation.
    """
    record = model(work)
    given = f'<script type="application/json" id="model">{_json(record)}</script>'
    return _page(work.name, "<body>", [*_body(work, record), given])


def viewer_shell(title: str) -> str:
    """Return the page without a design, for a page around it to send models to.

    Raises BedcourseError where the viewer's script is missing from the installation.
    """
    return _page(title, '<body class="inside">', ["<main>", *_desk(), "</main>"])


def _page(title: str, opening: str, content: list[str]) -> str:
    script, style = bundle.script(), bundle.style() + _one_language()
    return "\n".join((
        "<!doctype html>",
        f'<html lang="{NATIVE}"><head><meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_policy(script, style)}">',
        f'<meta name="viewport" content="{_LAPTOP}">',
        f"<title>{escape(title)}</title>",
        f"<style>{style}</style></head>{opening}",
        *content,
        f"<script>{script}</script>",
        "</body></html>\n",
    ))  # fmt: skip


def _desk() -> list[str]:
    """Return the places of picture and controls, and of the picture's picture for paper."""
    return [
        '<div id="desk" hidden><div class="stand"><div id="picture"></div>'
        '<div id="under"></div></div><aside id="controls"></aside></div>',
        f'<img id="printed" alt="{escape(_native("drawn"))}">',
    ]


def _one_language() -> str:
    """Return the rules that show the words of the page's language alone."""
    return "".join(
        f'html[lang="{code}"] [lang]:not([lang="{code}"]){{display:none}}' for code in codes()
    )


def _policy(script: str, style: str) -> str:
    """Allow this script, this style sheet and pictures in the page; nothing from anywhere."""
    return (
        f"default-src 'none'; script-src {_hash(script)}; style-src {_hash(style)}; "
        "img-src data: blob:; base-uri 'none'; form-action 'none'"
    )


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode('ascii')}'"


def _json(record: dict[str, Any]) -> str:
    """Return the record as text that cannot end the element it stands in."""
    text = json.dumps(record, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c")


def _body(work: Job, record: dict[str, Any]) -> list[str]:
    about = work.layout.design.project
    address = f"<span>{escape(about.address)}</span>" if about.address else ""
    drawn = escape(_native("still"))
    images = "".join(f'<img src="{picture}" alt="{drawn}">' for picture in stills(work))
    return [
        f'<header class="head"><h1>{escape(work.name)}</h1>{address}</header>',
        "<main>",
        # Stands where no script runs or none can draw; the script hides it.
        f'<figure id="still">{images}<figcaption>{_said("still")}</figcaption></figure>',
        *_desk(),
        _cautions(work),
        f'<section class="figures" id="figures" tabindex="0"><h2>{_said("figures")}</h2>',
        _levels(work, record["levels"]),
        _parts(record["parts"]),
        "</section></main>",
    ]


def _cautions(work: Job) -> str:
    rows = "".join(f"<li>{_both(row)}</li>" for row in cautions(work.layout))
    return f'<section class="cautions"><h2>{_said("cautions")}</h2><ul>{rows}</ul></section>'


def _levels(work: Job, levels: list[dict[str, Any]]) -> str:
    """Return the levels, as the drawings name them; in other languages those of the tape."""
    others = (
        f'<div lang="{code}">{_tape(work, levels, code)}</div>'
        for code in codes()
        if code != NATIVE
    )
    return f'<div lang="{NATIVE}">{_all_levels(work)}</div>' + "".join(others)


def _tape(work: Job, levels: list[dict[str, Any]], code: str) -> str:
    above, units = work.layout.design.datum.top_of_footing, language(code).units
    body = [
        _row(
            escape(level["name"][code]),
            [level["text"], units(show_elevation(above + level["z"], work.system))],
        )
        for level in levels
    ]
    return _table(["level_of", "from_tof", "elevation"], body)


def _all_levels(work: Job) -> str:
    system = work.system
    rows = level_rows(work.layout)
    laser = any(row.rod is not None and row.rod >= 0 for row in rows)
    heads = ["level_of", "from_tof", "elevation", *(["rod"] if laser else [])]
    body = []
    for row in rows:
        name = f"{row.interface}, {row.area}" if row.area else row.interface
        cells = [show_level(row.level, system), show_elevation(row.elevation, system)]
        if laser:
            cells.append(show_rod(row.rod, system) if row.rod is not None and row.rod >= 0 else "")
        body.append(_row(escape(name), cells))
    return _table(heads, body)


def _parts(parts: list[dict[str, Any]]) -> str:
    body = []
    for part in parts:
        level = escape(" … ".join(part["level"]))
        elevation = " … ".join(map(_both, part["elevation"]))
        cells = [_both(part["material"]), _both(part["volume"]), level, elevation]
        body.append(
            _row(f"{_both(part['full'])} <small>{_both(part['size'])}</small>", cells, True)
        )
    return _table(["part", "material", "volume", "from_tof", "elevation"], body)


def _table(heads: list[str], rows: list[str]) -> str:
    head = "".join(f'<th scope="col">{_said(key)}</th>' for key in heads)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{''.join(rows)}</tbody></table>"


def _row(name: str, cells: list[str], marked: bool = False) -> str:
    body = "".join(f"<td>{cell if marked else escape(cell)}</td>" for cell in cells)
    return f'<tr><th scope="row">{name}</th>{body}</tr>'


def _said(key: str) -> str:
    """Return the page's own words in every language; the style sheet shows the chosen one."""
    return _both({code: page_words(code)[key] for code in codes()})


def _native(key: str) -> str:
    return page_words(NATIVE)[key]


def _both(words: Spoken) -> str:
    if len(set(words.values())) == 1:
        return escape(next(iter(words.values())))
    return "".join(f'<span lang="{code}">{escape(said)}</span>' for code, said in words.items())
