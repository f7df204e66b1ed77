"""Many at once: browsers on the real app, each with a house of its own, edited several times.

`python -m tests.bench.bench_users [USERS] [EDITS]` prints times, memory, and whether anybody saw
another's work. Every user is a browser context: own cookies, own session, own web socket.
"""

import asyncio
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median, quantiles

CHROMIUM = Path("/usr/bin/chromium")
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"]
PATIENCE = 300_000
MARK = re.compile(r"House of user \d+")
DESIGN = """
[project]
name = "{name}"
numbers = "ft"
[wall]
height = {height}
[floor]
tie = "slab top at TOF"
layer = [
    {{ name = "base", material = "stone-57", thickness = "4 in", role = "base" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[[area]]
name = "main"
corners = [[0, 0], [{width}, 0], [{width}, 28], [0, 28]]
"""


@dataclass
class Seen:
    """Seconds until an edit showed, and the marks of others that were met."""

    waits: list[float] = field(default_factory=list)
    strangers: set[str] = field(default_factory=set)


def design(user: int, edit: int) -> bytes:
    """The user's own house, another with every edit."""
    name, width = f"House of user {user}", 30 + user + edit
    return DESIGN.format(name=f"{name} edit {edit}", height=8 + edit % 3, width=width).encode()


@contextmanager
def served() -> Iterator[tuple[subprocess.Popen, str]]:
    """The app on a free port of this machine."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    run = "from viz.commands.main import run; run()"
    told = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    command = [sys.executable, "-c", run, "app", "--port", str(port)]
    with subprocess.Popen(command, env=told, stderr=subprocess.DEVNULL) as server:
        try:
            for _ in range(240):
                with socket.socket() as asked:
                    if asked.connect_ex(("127.0.0.1", port)) == 0:
                        break
                time.sleep(0.5)
            yield server, f"http://127.0.0.1:{port}"
        finally:
            server.terminate()
            server.wait(30)


def memory(server: subprocess.Popen) -> int:
    """Memory in use by the server and the processes under it, MB."""
    family, found = {server.pid}, 0
    for entry in sorted(int(p.name) for p in Path("/proc").iterdir() if p.name.isdigit()):
        try:
            status = Path(f"/proc/{entry}/status").read_text(encoding="utf-8")
        except OSError:
            continue
        parent = re.search(r"PPid:\s*(\d+)", status)
        resident = re.search(r"VmRSS:\s*(\d+)", status)
        if entry in family or (parent and int(parent[1]) in family):
            family.add(entry)
            found += int(resident[1]) if resident else 0
    return found // 1024


async def visit(browser, address: str, user: int, edits: int, seen: Seen) -> None:
    """Open the app, then one design of one's own after the other; leave."""
    context = await browser.new_context(viewport={"width": 1280, "height": 900})
    page = await context.new_page()
    page.set_default_timeout(PATIENCE)
    await page.goto(address)
    await page.wait_for_selector(".figures")
    for edit in range(edits):
        file = {"name": "house.toml", "mimeType": "application/toml", "buffer": design(user, edit)}
        if not await page.locator("input[type=file]").count():
            await page.get_by_role("button", name="Open and save").click()
            await page.locator("input[type=file]").first.wait_for(state="attached")
        start = time.monotonic()
        await page.locator("input[type=file]").first.set_input_files(file)
        await page.get_by_text(f"House of user {user} edit {edit}").first.wait_for()
        seen.waits.append(time.monotonic() - start)
        text = await page.locator("body").inner_text()
        seen.strangers |= set(MARK.findall(text)) - {f"House of user {user}"}
    await context.close()


async def visits(address: str, users: int, edits: int, watch) -> list[Seen]:
    """All users at once; watch is called every second."""
    from playwright.async_api import async_playwright

    async def watching() -> None:
        while True:
            watch()
            await asyncio.sleep(1)

    found = [Seen() for _ in range(users)]
    async with async_playwright() as tools:
        browser = await tools.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        watcher = asyncio.create_task(watching())
        await asyncio.gather(*(
            visit(browser, address, user, edits, seen) for user, seen in enumerate(found, 1)
        ))  # fmt: skip
        watcher.cancel()
        await browser.close()
    return found


def main(users: int = 20, edits: int = 4) -> None:
    """Print what was measured."""
    with served() as (server, address):
        asyncio.run(visits(address, 1, 1, lambda: None))
        before, taken = memory(server), []
        start = time.monotonic()
        found = asyncio.run(visits(address, users, edits, lambda: taken.append(memory(server))))
        whole = time.monotonic() - start
        time.sleep(20)
        after = memory(server)
    waits = [wait for seen in found for wait in seen.waits]
    strangers = sorted({name for seen in found for name in seen.strangers})
    rows = {
        "users, edits each": f"{users}, {edits}",
        "whole visit of all": f"{whole:.0f} s",
        "an edit shows after, median": f"{median(waits):.1f} s",
        "an edit shows after, 19 of 20": f"{quantiles(waits, n=20)[-1]:.1f} s",
        "memory with one visit done": f"{before} MB",
        "memory at the most": f"{max(taken)} MB",
        "memory 20 s after all have left": f"{after} MB",
        "others' work seen": ", ".join(strangers) or "none",
    }
    for name, value in rows.items():
        print(f"{name:34} {value}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
