"""Small changes of a source, each one that a test should see."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass

_COMPARED = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
_RECKONED = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult, ast.Pow: ast.Mult, ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd,
}  # fmt: skip
_JOINED = {ast.And: ast.Or, ast.Or: ast.And}


@dataclass(frozen=True)
class Change:
    """One changed source: the line of the change, what was changed, the whole text."""

    line: int
    what: str
    text: str


def changes(source: str) -> Iterator[Change]:
    """Yield every change of a source, one thing at a time. Words and annotations are left alone."""
    count = sum(1 for _ in _spots(ast.parse(source)))
    for number in range(count):
        tree = ast.parse(source)
        node, field, new = list(_spots(tree))[number]
        old = getattr(node, field)
        setattr(node, field, new)
        line = getattr(node, "lineno", 0)
        yield Change(line, f"{_said(old)} becomes {_said(new)}", ast.unparse(tree))


def _said(value: object) -> str:
    if isinstance(value, list):
        return ", ".join(map(_said, value))
    return ast.unparse(value) if isinstance(value, ast.expr) else (
        type(value).__name__ if isinstance(value, ast.AST) else repr(value)
    )  # fmt: skip


def _spots(tree: ast.AST) -> Iterator[tuple[ast.AST, str, object]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare) and type(node.ops[0]) in _COMPARED:
            yield node, "ops", [_COMPARED[type(node.ops[0])](), *node.ops[1:]]
        elif isinstance(node, ast.BinOp) and type(node.op) in _RECKONED and not _typed(node):
            yield node, "op", _RECKONED[type(node.op)]()
        elif isinstance(node, ast.BoolOp):
            yield node, "op", _JOINED[type(node.op)]()
        elif isinstance(node, ast.IfExp):
            yield node, "test", ast.UnaryOp(ast.Not(), node.test)
        elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
            yield node, "value", _other(node.value)
        elif (
            isinstance(node, ast.Return) and node.value and not isinstance(node.value, ast.Constant)
        ):
            yield node, "value", ast.Constant(None)


def _typed(node: ast.BinOp) -> bool:
    """Whether this is a union of types, not a sum."""
    return isinstance(node.op, ast.BitOr) and not isinstance(node.left, ast.Compare)


def _other(value: float) -> object:
    return (not value) if isinstance(value, bool) else value + 1
