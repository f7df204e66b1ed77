"""How time and memory grow with holes, corners and areas: a fresh process for every size.

Run it with `python -m tests.bench.bench_growth`; add `--quick` for fewer sizes. Each time is the
best of some builds of solids and report from the design's text; memory is the process's peak.
"""

import argparse
import subprocess
import sys
from collections.abc import Callable, Sequence

from tests.bench.bench_engine import EXAMPLE, hole_count, ring_house, with_holes
from tests.bench.row import Curve

CHILD = """
import sys
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import report
from geometry.solids.foundation import build
from tests.bench.clock import now
from tests.bench.forgetting import forget
from tests.bench.memory import peak_mb

text, times = sys.stdin.read(), []
for _ in range(int(sys.argv[1])):
    forget()
    start = now()
    layout = lay_out(read_design(text))
    report(layout, build(layout)).to_json()
    times.append(now() - start)
print(min(times) * 1000, peak_mb())
"""


def row_of_areas(count: int) -> str:
    """Return an invented row of areas, each a step above the one before, with a drain."""
    areas = "".join(
        f'[[area]]\nname = "a{k}"\n'
        f"corners = [[{6 * k}, 0], [{6 * k + 6}, 0], [{6 * k + 6}, 8], [{6 * k}, 8]]\n"
        + (f'step = "{500 * k} mm"\n' if k else "")
        for k in range(count)
    )
    head = '[project]\nname = "invented"\nnumbers = "m"\nunits = "metric"\n'
    return f'{head}{areas}[drain]\nfall = "level"\n'


def measured(text: str, repeats: int) -> tuple[float, float]:
    """Return best milliseconds and peak MB of building a design in a process of its own."""
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(repeats)],
        input=text, capture_output=True, text=True, check=True,
    )  # fmt: skip
    ms, mb = done.stdout.split()
    return float(ms), float(mb)


def curve(what: str, sizes: Sequence[int], made: Callable[[int], str], repeats: int) -> Curve:
    """Return the curve of a kind of house over its sizes."""
    found = [measured(made(size), repeats) for size in sizes]
    return Curve(what, tuple(sizes), tuple(ms for ms, _ in found), tuple(mb for _, mb in found))


def curves(quick: bool) -> list[Curve]:
    """Return all curves."""
    repeats = 3 if quick else 7
    text = EXAMPLE.read_text(encoding="utf-8")
    wanted = (100, 1_000, 10_000) if quick else (100, 1_000, 5_000, 14_000)
    texts = {hole_count(made): made for made in (with_holes(text, holes) for holes in wanted)}
    corners = (4, 20, 80) if quick else (4, 10, 20, 40, 80)
    bare = (4, 20, 80, 200) if quick else (4, 10, 20, 40, 80, 200)
    areas = (1, 3, 6) if quick else (1, 2, 4, 8, 12)
    return [
        curve("holes in the drain", list(texts), texts.__getitem__, repeats),
        curve("corners, with a drain", corners, lambda n: ring_house(n, True), repeats),
        curve("corners, without a drain", bare, lambda n: ring_house(n, False), repeats),
        curve("areas side by side", areas, row_of_areas, repeats),
    ]


def main() -> None:
    """Print the curves."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer sizes")
    print(*curves(parser.parse_args().quick), sep="\n")


if __name__ == "__main__":
    main()
