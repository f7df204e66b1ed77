"""Which tests are asked of a change: those that run its line, the nearest and fastest first."""

import re
from collections import Counter
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from tests.mutants.change import Change
from tests.mutants.ran import Ran

# The first round asks so many tests for so many seconds at the most; the second, of what lives,
# so many for as long as one has patience.
FIRST, FIRST_SECONDS = 30, 3.0
REST, PATIENCE = 4000, 8.0
# Of a line that is new since the tests' lines were kept, those of lines so near are asked.
NEAR = 6


@dataclass(frozen=True, eq=False)
class Chooser:
    """The program's sources by their path, what tests were seen to run, the tests' texts, and how
    many seconds of them what lives is tried on."""

    sources: dict[str, str]
    ran: Ran
    texts: dict[str, str]
    patience: float = PATIENCE

    def first(self, file: str, change: Change) -> list[str]:
        """Return the tests asked first."""
        return self._within(self._ordered(file, change), FIRST, FIRST_SECONDS)

    def rest(self, file: str, change: Change) -> list[str]:
        """Return the tests asked if all of the first pass."""
        asked = set(self.first(file, change))
        rows = [t for t in self._ordered(file, change) if t not in asked]
        return self._within(rows, REST, self.patience)

    def made_before(self, file: str, change: Change) -> bool:
        """Whether a test's module runs the change while it is read, or in what its tests share."""
        self.ran.lines(file, self.sources[file])
        first, last = change.lines
        return any((file, n) in self.ran.shared for n in range(first, last + 1))

    def _within(self, rows: list[str], most: int, seconds: float) -> list[str]:
        found: list[str] = []
        for test in rows:
            took = self.ran.seconds[test]
            if len(found) < most and took <= seconds:
                found.append(test)
                seconds -= took
        return found

    def _ordered(self, file: str, change: Change) -> list[str]:
        """Return all tests that run the change: of each test's rows one before the second."""
        tests = self._of_lines(file, change) if change.door else self._of_names(file, change)
        near = {t: self._near(file, t.split("::")[0]) for t in tests}
        sorted_ = sorted(tests, key=lambda t: (near[t], self.ran.seconds[t], t))
        turn: Counter[str] = Counter()
        rows = []
        for test in sorted_:
            plain = test.split("[")[0]
            turn[plain] += 1
            rows.append((turn[plain] > 2, turn[plain] > 6, near[test], len(rows), test))
        return [row[-1] for row in sorted(rows)]

    def _near(self, file: str, test: str) -> int:
        same_room = test.startswith(f"tests/{Path(file).parent}/")
        if self._takes(test, file):
            return 0 if same_room else 1
        if same_room:
            return 2
        rooms = ("tests/published", "tests/geometry", "tests/whole")
        return 3 + next((n for n, room in enumerate(rooms) if test.startswith(room)), len(rooms))

    def _of_lines(self, file: str, change: Change) -> set[str]:
        """Return the tests that run the change's line, else its statement, else lines near it."""
        lines = self.ran.lines(file, self.sources[file])
        if change.line in lines:
            return lines[change.line]
        first, last = change.lines
        for near in range(NEAR):
            found = [lines.get(n, set()) for n in range(first - near, last + near + 1)]
            if any(found):
                return set().union(*found)
        return set()

    def _of_names(self, file: str, change: Change) -> set[str]:
        """Return the tests that name what is made where the change stands, if outside of
        functions, or run a line that does; all that run anything of the file if there is none."""
        found: set[str] = set()
        names = self._names(file, change)
        for test, rows in self.ran.of_file.items():
            if names & set(re.findall(r"\w+", self.texts.get(test, ""))) and self._takes(
                test, file
            ):
                found.update(rows)
        for name in names:
            for other, number in self.mentions.get(name, []):
                if other == file or self._takes(other, file):
                    found |= self.ran.lines(other, self.sources[other]).get(number, set())
        return found or set().union(*self.ran.lines(file, self.sources[file]).values())

    def _names(self, file: str, change: Change) -> set[str]:
        """Return the names made by the change's statement, and by what is made of those there."""
        names = set(change.names)
        for _ in range(3):
            for line in self.sources[file].splitlines():
                made = re.match(r"(\w+)(?:: [^=]+)? = (.*)", line)
                if made and any(re.search(rf"\b{n}\b", made[2]) for n in names):
                    names.add(made[1])
        return names

    def _takes(self, other: str, file: str) -> bool:
        """Whether a file of the program or of the tests imports the changed one."""
        room, _, name = file.removesuffix(".py").replace("/", ".").rpartition(".")
        named = rf"from {room}\.{name} import|from {room} import [^\n]*\b{name}\b"
        return bool(re.search(named, self.sources.get(other) or self.texts.get(other, "")))

    @cached_property
    def mentions(self) -> dict[str, list[tuple[str, int]]]:
        """Every place of the program a word stands at, by the word: file and line."""
        found: dict[str, list[tuple[str, int]]] = {}
        for file, text in self.sources.items():
            for number, line in enumerate(text.splitlines(), 1):
                for word in set(re.findall(r"[A-Za-z_]\w+", line)):
                    found.setdefault(word, []).append((file, number))
        return found
