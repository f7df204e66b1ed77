"""Many at once: sessions of the app, each with a house of its own, a thickness edited many times.

`python -m tests.bench.bench_users [USERS ...] [--edits 6] [--pause 0] [--away 20] [--rounds 1]`
prints a table with a column for each number of users (1, 5 and 20 unless told), each with a server
of its own, and whether anybody was sent another's work. No browser draws anything: the times are
those of the server and the line. Without a pause all edit as fast as they are answered, which no
people do. With more rounds as many users come again after the first have left: the times are those
of all, the memory is told for each round.
"""

import argparse
import asyncio
import os
import random
import subprocess
import time
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from pathlib import Path
from statistics import median

from tests.bench.row import Row
from tests.bench.visitor import PATIENCE_S, Took, mark, opened
from tests.serving import app_served


@dataclass(frozen=True)
class Visit:
    """What one user found: seconds to the first page, each edit's times, others' houses met."""

    first: float
    edits: list[Took]
    strangers: set[str]


async def visit(port: int, user: int, edits: int, pause: float) -> Visit:
    """Open the app, put one's own house in it, edit it, leave.

    pause: seconds before each edit, on the mean; each user's own, the same in every run.
    """
    dice = random.Random(user)  # noqa: S311
    async with opened(port) as visitor:
        first = (await visitor.send()).whole
        await visitor.put(user)
        took = []
        for edit in range(edits):
            await asyncio.sleep(dice.uniform(0, 2 * pause))
            took.append(await visitor.thicken(user, edit))
    return Visit(first, took, visitor.met - {mark(user)})


async def visits(port: int, users: int, edits: int, pause: float) -> list[Visit]:
    """Return what all users found who came at once, the first of them user 1."""
    each = [visit(port, user, edits, pause) for user in range(1, users + 1)]
    async with asyncio.timeout(PATIENCE_S * 2):
        return await asyncio.gather(*each)


def family(server: subprocess.Popen) -> list[int]:
    """The numbers of the server's process and of those under it."""
    found = [server.pid]
    for entry in sorted(int(p.name) for p in Path("/proc").iterdir() if p.name.isdigit()):
        told = status(entry)
        if entry not in found and told and int(told["PPid"]) in found:
            found.append(entry)
    return found


def status(process: int) -> dict[str, str]:
    """What the system says of a process; nothing where it has ended."""
    try:
        lines = Path(f"/proc/{process}/status").read_text(encoding="utf-8").splitlines()
    except OSError:
        return {}
    return dict(line.split(":", 1) for line in lines)


def memory(server: subprocess.Popen, what: str = "VmRSS") -> int:
    """Memory of the server and the processes under it, MB; VmHWM: the most each ever had."""
    return sum(int(status(p).get(what, "0 kB").split()[0]) for p in family(server)) // 1024


def processor(server: subprocess.Popen) -> float:
    """Seconds of processor that the server and the processes under it have used."""
    used = 0
    for process in family(server):
        words = Path(f"/proc/{process}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()
        used += int(words[11]) + int(words[12])
    return used / os.sysconf("SC_CLK_TCK")


@dataclass(frozen=True)
class Round:
    """What users who came at once found, and the server: seconds and MB.

    whole: of all visits; used: of the processor. most: memory at the most; after: when all left.
    """

    visits: list[Visit]
    whole: float
    used: float
    most: int
    after: int


def one_round(server: subprocess.Popen, port: int, told: argparse.Namespace, users: int) -> Round:
    """Let so many users come at once and leave."""
    forget_most(server)
    used, begun = processor(server), time.monotonic()
    found = asyncio.run(visits(port, users, told.edits, told.pause))
    whole, used = time.monotonic() - begun, processor(server) - used
    most = memory(server, "VmHWM")
    time.sleep(told.away)
    return Round(found, whole, used, most, memory(server))


def forget_most(server: subprocess.Popen) -> None:
    """Let the most memory that each process ever had begin anew with what it has now."""
    for process in family(server):
        Path(f"/proc/{process}/clear_refs").write_text("5", encoding="utf-8")


def served(users: int, told: argparse.Namespace) -> tuple[int, list[Round]]:
    """Serve so many users at once; return the memory after a lone visit, MB, and the rounds."""
    with app_served() as (server, port):
        asyncio.run(visits(port, 1, 1, 0))
        before = memory(server)
        return before, [one_round(server, port, told, users) for _ in range(told.rounds)]


def rows(quick: bool) -> Iterator[Row]:
    """Yield the figures of one user and of twenty; stop where one was sent another's work."""
    for users, pause in ((1, 5.0), (20, 5.0), (20, 0.0)):
        told = argparse.Namespace(edits=2 if quick else 4, pause=pause, away=15.0, rounds=1)
        before, (one,) = served(users, told)
        assert not {name for found in one.visits for name in found.strangers}
        who = f"{users} user{'s' if users > 1 else ''}, an edit every {pause:g} s each"
        who = who if pause else f"{users} users without a pause"
        took = [took for found in one.visits for took in found.edits]
        yield _row(f"{who}: new figure", [t.figure for t in took])
        yield _row(f"{who}: the page's end", [t.whole for t in took])
        yield Row(f"{who}: memory at the most", one.most, "MB", note=f"{before} MB before")
        yield Row(f"{who}: memory {told.away:g} s after they left", one.after, "MB")


def _row(what: str, seconds: list[float]) -> Row:
    return Row(what, median(seconds), "s", least=min(seconds), most=max(seconds))


def column(users: int, told: argparse.Namespace) -> dict[str, str]:
    """Return what was measured of so many users, by its name."""
    before, rounds = served(users, told)
    found = [one for each in rounds for one in each.visits]
    took = [took for one in found for took in one.edits]
    strangers = sorted({name for one in found for name in one.strangers})
    return {
        "edits in all": str(len(took)),
        "all visits, s": f"{sum(each.whole for each in rounds):.0f}",
        "processor for each visit, s": f"{sum(each.used for each in rounds) / len(found):.2f}",
        **spread("first page, s", [one.first for one in found]),
        **spread("edit to new figure, s", [t.figure for t in took]),
        **spread("edit to page's end, s", [t.whole for t in took]),
        "memory after one visit, MB": str(before),
        **dict(line for number, each in enumerate(rounds, 1) for line in held(number, each, told)),
        "of it for each user, MB": f"{(max(e.most for e in rounds) - before) / users:.1f}",
        "others' work received": ", ".join(strangers) or "none",
    }


def held(number: int, one: Round, told: argparse.Namespace) -> Iterator[tuple[str, str]]:
    """Yield what memory a round took, by its names."""
    lead = f"round {number}: " if told.rounds > 1 else ""
    yield f"{lead}memory at the most, MB", str(one.most)
    yield f"{lead}memory {told.away:g} s after, MB", str(one.after)


def spread(name: str, seconds: list[float]) -> dict[str, str]:
    """Return the middle one, the one that 95 of 100 do not pass, and the longest."""
    row = sorted(seconds)
    picked = (median(row), row[ceil(0.95 * len(row)) - 1], row[-1])
    heads = ("median", "95 %", "most")
    return {f"{name}: {h}": f"{s:.2f}" for h, s in zip(heads, picked, strict=True)}


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("users", type=int, nargs="*", default=[1, 5, 20])
    parser.add_argument("--edits", type=int, default=6)
    parser.add_argument(
        "--pause", type=float, default=0, help="seconds before an edit, on the mean"
    )
    parser.add_argument("--away", type=float, default=20, help="seconds until memory is read again")
    parser.add_argument("--rounds", type=int, default=1, help="times that as many come and leave")
    told = parser.parse_args()
    columns = [column(users, told) for users in told.users]
    print(f"{'users':36}" + "".join(f"{users:>10}" for users in told.users))
    for name in columns[0]:
        print(f"{name:36}" + "".join(f"{one[name]:>10}" for one in columns))


if __name__ == "__main__":
    main()
