"""Every word the app shows has its own in each language of the app, and none is left over."""

import ast
import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from geometry.checks.subjects import SUBJECTS
from geometry.presets.drains import DRAINS
from geometry.presets.floors import FLOORS
from geometry.presets.shapes import SHAPES
from geometry.report_rows import CAUTIONS
from tests.test_house import ROOT, sources
from viz.language.screen import FOLDER, screen_codes, screen_words
from viz.sheets.words import LOCAL_CODE
from viz.words import CUTS, SEVERITIES

PANELS = ROOT / "viz" / "panels"
# Whose literals are words: which of their places, and which of their named ones.
SPOKEN = {
    "said": (0,),
    "later": (0,),
    "Told": (0,),
    "Field": (1, 2, 3, "label", "usual", "help"),
    "_field": (1, 2),
    "_Asked": (1, 2),
    "lines": (0,),
    "caution": (0, 1, 2),
    "scale_choice": (0,),
    "in_english": (0,),
}
# Tables whose keys are shown: the pages, and the stages of each.
KEYED = {"PAGES", "stages", "STAGES", "_SHOWN"}
PLACES = re.compile(r"\{\w+\}")


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def texts(node: ast.AST, known: dict[str, list[str]]) -> Iterator[str]:
    """Give the words of an expression; of a table its values, of a name what it was set to."""
    match node:
        case ast.Constant(value=str(words)):
            yield words
        case ast.Name(id=name):
            yield from known.get(name, ())
        case ast.IfExp(body=one, orelse=other):
            yield from (*texts(one, known), *texts(other, known))
        case ast.Dict(values=found) | ast.Tuple(elts=found) | ast.List(elts=found):
            for one in found:
                yield from texts(one, known)


def is_words(text: str) -> bool:
    """Whether it is for people: no figure as the file writes it, no key of the file."""
    return bool(re.search("[A-Za-z]", text)) and not re.match(r"-?\d", text)


def called(node: ast.Call) -> str:
    return getattr(node.func, "attr", "") or getattr(node.func, "id", "")


def words_of(path: Path) -> set[str]:
    nodes = list(ast.walk(tree(path)))
    known: dict[str, list[str]] = {}
    for node in nodes:
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            known.setdefault(node.targets[0].id, []).extend(texts(node.value, {}))
    found: set[str] = set()
    for node in nodes:
        if isinstance(node, ast.Call) and (places := SPOKEN.get(called(node))):
            given = [a for n, a in enumerate(node.args) if n in places]
            given += [k.value for k in node.keywords if k.arg in places]
            found.update(w for a in given for w in texts(a, known))
        elif isinstance(node, ast.Assign | ast.AnnAssign) and isinstance(node.value, ast.Dict):
            target = node.targets[0] if isinstance(node, ast.Assign) else node.target
            if getattr(target, "id", "") in KEYED:
                found.update(w for k in node.value.keys if k for w in texts(k, {}))
    return {words for words in found - keys_of(nodes) if is_words(words)}


def keys_of(nodes: list[ast.AST]) -> set[str]:
    """Return the usual keys of choices: they are not shown, the names of the choices are."""
    fields = (
        node.args[0]
        for node in nodes
        if isinstance(node, ast.Call) and called(node) in ("choice", "choice_field") and node.args
    )
    return {
        words
        for field in fields
        if isinstance(field, ast.Call) and len(field.args) > 2
        for words in texts(field.args[2], {})
    }


@cache
def shown() -> dict[str, str]:
    """Return every word the app shows, with the panel it stands in."""
    found = {words: path.name for path in PANELS.glob("*.py") for words in words_of(path)}
    return dict.fromkeys(told_elsewhere(), "") | found


def told_elsewhere() -> Iterator[str]:
    """Give the words the app shows that stand in other rooms."""
    for presets in (SHAPES, FLOORS, DRAINS):
        for preset in presets.values():
            yield from (preset.name, preset.about)
    yield from (size.label for shape in SHAPES.values() for size in shape.sizes)
    yield from (*CAUTIONS, LOCAL_CODE, *CUTS.values(), *SEVERITIES.values(), *SUBJECTS.values())


@cache
def written() -> str:
    return "".join(path.read_text(encoding="utf-8") for path in sources("geometry", "viz"))


def stands(words: str) -> bool:
    """Whether words stand in the code; a table's cell may begin with a capital of its own."""
    either = (words, f"{words[:1].lower()}{words[1:]}")
    return any(f'"{one}{end}' in written() for one in either for end in ('"', "{"))


def own_words(code: str) -> dict[str, str]:
    return tomllib.loads((FOLDER / f"{code}.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("code", screen_codes()[1:])
def test_every_word_the_app_shows_is_said(code):
    lacking = {words: file for words, file in shown().items() if words not in screen_words(code)}
    assert lacking == {}


@pytest.mark.parametrize("code", screen_codes()[1:])
def test_no_words_are_left_over(code):
    left = own_words(code).keys() - shown().keys()
    assert [words for words in left if not stands(words)] == []


@pytest.mark.parametrize("code", screen_codes()[1:])
def test_words_keep_their_places_and_are_not_empty(code):
    for words, said in own_words(code).items():
        assert said.strip(), words
        assert sorted(PLACES.findall(words)) == sorted(PLACES.findall(said)), words
