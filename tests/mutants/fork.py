"""One change, tried in a fork of a process that has read program and tests already."""

import gc
import importlib.abc
import importlib.util
import os
import resource
import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from importlib.machinery import ModuleSpec, SourceFileLoader
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest

from tests.mutants.change import Change, changed
from tests.mutants.ran import ASKED, Usual

Key = tuple[str, str, int]


@dataclass(frozen=True, eq=False)
class Alive:
    """What a fork finds alive: the program's functions by file, name and first line, and every
    store that remembers (lru_cache)."""

    functions: dict[Key, list[FunctionType]] = field(default_factory=dict)
    stores: list[Any] = field(default_factory=list)


MEMORY = 8 * 2**30


def functions(folder: Path) -> dict[Key, list[FunctionType]]:
    """Return every function of the program that is alive, by file, name and first line."""
    found: dict[Key, list[FunctionType]] = {}
    for thing in gc.get_objects():
        if isinstance(thing, FunctionType):
            code = thing.__code__
            if code.co_filename.startswith(str(folder / "geometry")):
                key = (code.co_filename, code.co_qualname, code.co_firstlineno)
                found.setdefault(key, []).append(thing)
    return found


def judged(
    place: Path, source: str, change: Change | None, tests: list[str],
    alive: dict[Key, list[FunctionType]], seconds: float, anew: bool,
) -> int:  # fmt: skip
    """Return a child's number that ends with pytest's verdict on the tests under the change.

    A function's code is put in place of the old one; a change outside of functions, and every one
    if `anew`, needs program and tests read once more.
    """
    sys.stdout.flush()
    child = os.fork()
    if child:
        return child
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    try:
        spent = resource.getrusage(resource.RUSAGE_SELF)
        most = int(spent.ru_utime + spent.ru_stime + seconds)
        resource.setrlimit(resource.RLIMIT_CPU, (most, most))
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        if change is not None:
            code = compile(changed(source, change.number), str(place), "exec")
            if anew or not _swapped(code, str(place), change, alive.functions):
                _read_anew(code, place)
        for store in alive.stores:
            store.cache_clear()
        os._exit(int(pytest.main([*ASKED, "-x", *tests], plugins=[Usual()])))
    finally:
        os._exit(99)


def _swapped(code: CodeType, file: str, change: Change, alive: dict[Key, Any]) -> bool:
    """Whether the changed function could be put in place of the one alive."""
    if change.door is None or (file, *change.door) not in alive:
        return False
    new = next(c for c in _codes(code) if (c.co_qualname, c.co_firstlineno) == change.door)
    try:
        for function in alive[(file, *change.door)]:
            function.__code__ = new
    except ValueError:  # The change takes away what a closure holds.
        return False
    return True


def _codes(code: CodeType) -> Sequence[CodeType]:
    inner = [c for c in code.co_consts if isinstance(c, CodeType)]
    return [*inner, *(deep for c in inner for deep in _codes(c))]


class _Changed(SourceFileLoader):
    """Gives the changed code of one module."""

    def __init__(self, name: str, path: str, code: CodeType) -> None:
        super().__init__(name, path)
        self.code = code

    def get_code(self, fullname: str) -> CodeType:  # noqa: ARG002
        return self.code


class _Finder(importlib.abc.MetaPathFinder):
    def __init__(self, loader: _Changed) -> None:
        self.loader = loader

    def find_spec(self, name: str, *_: object) -> ModuleSpec | None:
        if name != self.loader.name:
            return None
        return importlib.util.spec_from_file_location(name, self.loader.path, loader=self.loader)


def _read_anew(code: CodeType, place: Path) -> None:
    folder = str(Path.cwd())
    for name, module in list(sys.modules.items()):
        if (getattr(module, "__file__", None) or "").startswith(folder):
            del sys.modules[name]
    name = str(place.relative_to(folder)).removesuffix(".py").replace("/", ".")
    sys.meta_path.insert(0, _Finder(_Changed(name, str(place), code)))
    sys.dont_write_bytecode = True
