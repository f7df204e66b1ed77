"""Small changes of a source, each one that a test should see.

Left alone by rule, for they change nothing a test of behaviour could see: words, annotations, and
how a record or a store is made (`FLAGS`: frozen, slots, a store's size, `strict` of zip).
"""

import ast
import copy
from collections.abc import Iterator
from dataclasses import dataclass

FLAGS = {"frozen", "slots", "eq", "order", "repr", "kw_only", "maxsize", "strict", "init"}

_EDGE = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt}
_TURNED = {
    ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt, ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
_RECKONED = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult, ast.Pow: ast.Mult, ast.BitAnd: ast.BitOr,
}  # fmt: skip
_JOINED = {ast.And: ast.Or, ast.Or: ast.And}
_NAMED = {"min": "max", "max": "min", "any": "all", "all": "any", "ceil": "floor", "floor": "ceil"}
_DEFINED = ast.FunctionDef | ast.AsyncFunctionDef
Spot = tuple[ast.AST, str, object, str]


@dataclass(frozen=True)
class Change:
    """One change: its number in the source, its line, the lines of its statement, what becomes
    what, whether only the very edge of a comparison moves, the function it stands in (name in the
    module and first line; none outside of functions), the names its statement defines."""

    number: int
    line: int
    lines: tuple[int, int]
    what: str
    edge: bool
    door: tuple[str, int] | None
    names: tuple[str, ...]


def changes(source: str) -> list[Change]:
    """Return every change of a source, one thing at a time."""
    found = []
    for number, (place, spot) in enumerate(_spots(ast.parse(source))):
        node, field, new, kind = spot
        old = getattr(node, field)
        line = getattr(node, "lineno", place.lines[0])
        what = f"{_said(old)} becomes {_said(new)}"
        found.append(
            Change(number, line, place.lines, what, kind == "edge", place.door, place.names)
        )
    return found


def changed(source: str, number: int) -> ast.Module:
    """Return the source's tree with the change of that number; lines stay where they were."""
    tree = ast.parse(source)
    node, field, new, _ = next(s for n, (_, s) in enumerate(_spots(tree)) if n == number)
    if isinstance(new, ast.AST):
        ast.copy_location(new, node)
    setattr(node, field, new)
    return ast.fix_missing_locations(tree)


@dataclass(frozen=True)
class _Place:
    """Where a node stands."""

    lines: tuple[int, int] = (1, 1)
    door: tuple[str, int] | None = None
    classes: str = ""
    names: tuple[str, ...] = ()


def _spots(tree: ast.AST) -> Iterator[tuple[_Place, Spot]]:
    yield from _walk(tree, _Place())


def _walk(node: ast.AST, place: _Place) -> Iterator[tuple[_Place, Spot]]:
    if isinstance(node, ast.stmt):
        place = _stood(node, place)
    for spot in _spots_of(node):
        yield place, spot
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns"):
            continue
        inner = place
        if isinstance(node, _DEFINED) and name == "body" and place.door is None:
            first = min([node.lineno, *(d.lineno for d in node.decorator_list)])
            inner = _Place(place.lines, (place.classes + node.name, first))
        if isinstance(node, ast.ClassDef) and name == "body":
            inner = _Place(place.lines, None, f"{place.classes}{node.name}.", (node.name,))
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _flag(child):
                yield from _walk(child, inner)


def _flag(node: ast.AST) -> bool:
    """Whether this is a flag, or a type that lists its values."""
    if isinstance(node, ast.Subscript):
        return isinstance(node.value, ast.Name) and node.value.id == "Literal"
    return isinstance(node, ast.keyword) and node.arg in FLAGS


def _stood(node: ast.stmt, place: _Place) -> _Place:
    """Return the place of a statement: of one with a body the lines of its head alone."""
    body = getattr(node, "body", None)
    last = (body[0].lineno - 1) if body else (node.end_lineno or node.lineno)
    targets = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
    names = [t.id for t in targets if isinstance(t, ast.Name)]
    if isinstance(node, _DEFINED | ast.ClassDef):
        names = [node.name]
    lines = (node.lineno, max(last, node.lineno))
    return _Place(lines, place.door, place.classes, tuple(names) or place.names)


def _said(value: object) -> str:
    if isinstance(value, list):
        return ", ".join(map(_said, value))
    if isinstance(value, ast.expr):
        return ast.unparse(value)
    return type(value).__name__ if isinstance(value, ast.AST) else repr(value)


def _spots_of(node: ast.AST) -> Iterator[Spot]:
    if isinstance(node, ast.Compare):
        first, others = type(node.ops[0]), node.ops[1:]
        if first in _EDGE:
            yield node, "ops", [_EDGE[first](), *others], "edge"
        yield node, "ops", [_TURNED[first](), *others], "other"
    elif isinstance(node, ast.BinOp) and type(node.op) in _RECKONED:
        yield node, "op", _RECKONED[type(node.op)](), "other"
    elif isinstance(node, ast.BoolOp):
        yield node, "op", _JOINED[type(node.op)](), "other"
    elif isinstance(node, ast.IfExp | ast.If | ast.While):
        yield from _asked(node)
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        yield node, "op", ast.UAdd(), "other"
    elif isinstance(node, ast.Call | ast.Return | ast.Constant):
        yield from _given(node)


def _asked(node: ast.IfExp | ast.If | ast.While) -> Iterator[Spot]:
    """Yield the question turned round, where it is not a comparison, which is changed itself."""
    test = node.test
    if isinstance(test, ast.UnaryOp) and isinstance(test.op, ast.Not):
        yield node, "test", test.operand, "other"
    elif not isinstance(test, ast.Compare):
        yield node, "test", ast.UnaryOp(ast.Not(), copy.deepcopy(test)), "other"


def _given(node: ast.Call | ast.Return | ast.Constant) -> Iterator[Spot]:
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int | float):
            other = (not node.value) if isinstance(node.value, bool) else node.value + 1
            yield node, "value", other, "other"
    elif isinstance(node, ast.Return):
        if node.value and not isinstance(node.value, ast.Constant):
            yield node, "value", ast.Constant(None), "other"
    elif isinstance(node.func, ast.Name) and node.func.id in _NAMED:
        yield node, "func", ast.Name(_NAMED[node.func.id], ast.Load()), "other"
    elif isinstance(node.func, ast.Attribute) and node.func.attr in ("ceil", "floor"):
        new = ast.Attribute(node.func.value, _NAMED[node.func.attr], ast.Load())
        yield node, "func", new, "other"
