"""The stages of the build for the page: what each is called, says and lays."""

from typing import Any

from geometry.layout.lay import Layout
from geometry.site.records import Stage
from geometry.site.stages import stages
from viz.language.reader import codes, language
from viz.sheets.card_words import Words
from viz.viewer.ground import PART as UNDISTURBED

# Of several parts of a stage, those that stand for it in the list.
_MAIN = ("ground/backfill",)


def told(layout: Layout, looks: dict[str, int]) -> list[dict[str, Any]]:
    """Return every stage with its words. looks: number of the look by part."""
    found = stages(layout)
    words = {code: Words(layout, language(code)) for code in codes()}
    return [_told(stage, words, looks) for stage in found]


def _told(stage: Stage, words: dict[str, Words], looks: dict[str, int]) -> dict[str, Any]:
    main = sorted(stage.parts, key=lambda part: part not in _MAIN)
    seen = (looks[part] for part in (*main, UNDISTURBED) if part in looks)
    return {
        "title": {code: said.title(stage) for code, said in words.items()},
        "look": next(seen, 0),
        "parts": list(stage.parts),
        "lines": [{code: said.instructions(stage) for code, said in words.items()}],
        "shots": _shots(stage, words),
        "holds": _turned({code: [f"{h.words} {h.by}" for h in said.holds(stage)]
                          for code, said in words.items()}),
        "cautions": _turned({code: list(said.cautions(stage)) for code, said in words.items()}),
    }  # fmt: skip


def _shots(stage: Stage, words: dict[str, Words]) -> list[dict[str, Any]]:
    """Return the levels to shoot: name, figure and the line under it."""
    rows: dict[str, list[tuple[str, str, str]]] = {}
    for code, said in words.items():
        listed = [(entry.name, entry.figure, entry.level) for entry in said.entries(stage)]
        flags = [(flag.name, flag.figure, flag.note) for flag in said.flags(stage)]
        rows[code] = listed or flags
    count = min(map(len, rows.values()))
    return [
        {
            "name": {code: row[n][0] for code, row in rows.items()},
            "level": {code: row[n][1] for code, row in rows.items()},
            "rod": {code: row[n][2] for code, row in rows.items()},
        }
        for n in range(count)
    ]


def _turned(lists: dict[str, list[str]]) -> list[dict[str, str]]:
    """Return lists of words by language as a list of words in every language."""
    count = min(map(len, lists.values()))
    return [{code: words[n] for code, words in lists.items()} for n in range(count)]


def cautions(layout: Layout) -> list[dict[str, str]]:
    """Return what every page must say: who decides, and the gravest dangers of the stages."""
    words = {code: Words(layout, language(code)) for code in codes()}
    found = {"foot": {code: said.say("card.foot") for code, said in words.items()}}
    for stage in stages(layout):
        said = _turned({code: list(w.cautions(stage)) for code, w in words.items()})
        for caution, sentence in zip(stage.cautions, said, strict=True):
            if caution.key in _GRAVE:
                found.setdefault(caution.key, sentence)
    return list(found.values())


_GRAVE = frozenset(
    ("cave_in", "undermine", "wall_held", "wall_not_held", "wall_not_known", "electric", "open_pit")
)
