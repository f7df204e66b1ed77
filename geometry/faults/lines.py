"""Lines of a TOML text by path: every table, key and list entry.

The text has been read as TOML before, so this scanner only finds places and refuses nothing.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple

Path = tuple[str | int, ...]

_TOKEN = re.compile(
    r"""
    (?P<skip>[ \t\r]+|\#[^\n]*)
    |(?P<text>\"{3}(?:\\.|[^\\])*?\"{3,5}|'{3}.*?'{3,5}|"(?:\\.|[^"\\\n])*"|'[^'\n]*')
    |(?P<line>\n)
    |(?P<mark>[\[\]{}=,.])
    |(?P<word>[^\s\[\]{}=,."'\#]+)
    |(?P<other>.)
    """,
    re.VERBOSE | re.DOTALL,
)


class _Token(NamedTuple):
    kind: str
    text: str
    line: int


def lines_by_path(text: str) -> dict[Path, int]:
    """Return the line (from 1) of every table, key and list entry of a TOML text."""
    return _Scanner(text).scan()


def headers(text: str) -> list[tuple[int, Path]]:
    """Return the line (from 1) and the path of every heading of a TOML text, in order."""
    scanner = _Scanner(text)
    scanner.scan()
    return scanner.headers


def _tokens(text: str) -> Iterator[_Token]:
    line = 1
    for found in _TOKEN.finditer(text):
        kind = found.lastgroup or "other"
        if kind != "skip":
            yield _Token(kind, found.group(), line)
        line += found.group().count("\n")
    yield _Token("end", "", line)


class _Scanner:
    """Walks the tokens once and notes where each path first stands."""

    def __init__(self, text: str) -> None:
        self._tokens = list(_tokens(text))
        self._at = 0
        self._found: dict[Path, int] = {}
        self._counts: dict[Path, int] = {}
        self.headers: list[tuple[int, Path]] = []

    @property
    def _now(self) -> _Token:
        return self._tokens[min(self._at, len(self._tokens) - 1)]

    def scan(self) -> dict[Path, int]:
        table: Path = ()
        while self._now.kind != "end":
            if self._now.kind == "line":
                self._at += 1
            elif self._now.text == "[":
                table = self._header()
            else:
                self._pair(table)
        return self._found

    def _note(self, path: Path, line: int, start: int = 1) -> None:
        for end in range(start, len(path) + 1):
            self._found.setdefault(path[:end], line)

    def _header(self) -> Path:
        line = self._now.line
        self._at += 1
        repeated = self._now.text == "["
        self._at += repeated
        path = self._counted(self._names("]"), repeated)
        self._at += 1 + repeated
        self._note(path, line)
        self.headers.append((line, path))
        return path

    def _counted(self, names: list[str], repeated: bool) -> Path:
        """Return a header's path with the number of the list entry it speaks of."""
        path: Path = ()
        for name in names[:-1]:
            path = (*path, name)
            if path in self._counts:
                path = (*path, self._counts[path] - 1)
        path = (*path, *names[-1:])
        if not repeated:
            return path
        self._counts[path] = self._counts.get(path, 0) + 1
        return (*path, self._counts[path] - 1)

    def _names(self, stop: str) -> list[str]:
        names: list[str] = []
        while self._now.kind not in {"end", "line"} and self._now.text != stop:
            if self._now.kind == "text":
                names.append(self._now.text[1:-1])
            elif self._now.kind == "word":
                names.append(self._now.text)
            self._at += 1
        return names

    def _pair(self, table: Path) -> None:
        line = self._now.line
        path = (*table, *self._names("="))
        self._at += 1
        self._note(path, line, len(table) + 1)
        self._value(path)

    def _value(self, path: Path) -> None:
        if self._now.text == "[":
            self._list(path)
        elif self._now.text == "{":
            self._inline(path)
        else:
            while self._now.kind not in {"end", "line"} and self._now.text not in {",", "]", "}"}:
                self._at += 1

    def _list(self, path: Path) -> None:
        number = 0
        self._at += 1
        while self._now.kind != "end" and self._now.text != "]":
            if self._now.kind == "line" or self._now.text == ",":
                self._at += 1
                continue
            self._note((*path, number), self._now.line, len(path) + 1)
            before = self._at
            self._value((*path, number))
            self._at += self._at == before  # never stand still
            number += 1
        self._at += 1

    def _inline(self, path: Path) -> None:
        self._at += 1
        while self._now.kind != "end" and self._now.text != "}":
            if self._now.kind == "line" or self._now.text == ",":
                self._at += 1
            else:
                self._pair(path)
        self._at += 1
