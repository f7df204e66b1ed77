"""The 3D page of the demo: its size, and its times in a headless Chromium with software drawing."""

import tempfile
import time
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.bench.row import MS, Row
from tests.bench.timing import spread, told
from tests.conftest import ARGUMENTS, CHROMIUM
from viz.carried import demo
from viz.job import job
from viz.viewer.page import viewer_page

MEGA = 1e6
SCREENS = ((390, 844), (1280, 900))

TIMED = """() => {
  const { viewer, store } = bedcourse;
  const took = act => { const t = performance.now(); act(); return performance.now() - t; };
  const cuts = [], turns = [];
  for (let n = 0; n < 15; n++) {
    const along = n % 2 ? 'x' : 'y', way = viewer.house.choices.find(c => c.key === along);
    const at = way.low + (0.1 + 0.05 * n) * (way.high - way.low);
    cuts.push(took(() => store.set({ cut: { along, at, turn: 0, flip: false } })));
  }
  for (let n = 0; n < 8; n++) {
    viewer.eye.put({ round: viewer.eye.stand.round + 11 });
    turns.push(took(() => {
      viewer.paintNow();
      // The picture is there when it can be read back.
      viewer.renderer.getContext().readPixels(0, 0, 1, 1, 6408, 5121, new Uint8Array(4));
    }));
  }
  const middle = list => list.sort((a, b) => a - b)[list.length >> 1];
  const faces = viewer.house.views.reduce((sum, v) => sum + v.shape.faces.length / 3, 0);
  return [middle(cuts), middle(turns), faces];
}"""


def opened(browser: Browser, file: Path, size: tuple[int, int]) -> tuple[float, list[float]]:
    """Return milliseconds to the first picture; of one cut, of one turn, and triangles."""
    page = browser.new_page(viewport={"width": size[0], "height": size[1]})
    page.goto(file.as_uri())
    page.wait_for_selector("#picture[data-moving=false]")
    first = float(page.get_attribute("#picture", "data-first") or 0)
    times = page.evaluate(TIMED)
    page.close()
    return first, times


def rows(quick: bool) -> list[Row]:
    """Return all lines."""
    repeats = 1 if quick else 5
    work = job(demo().read_text(encoding="utf-8"))
    _ = work.foundation
    start = time.perf_counter()
    text = viewer_page(work)
    made = (time.perf_counter() - start) * MS
    found = [
        Row("page, complete", len(text.encode()) / MEGA, "MB", aim=3.0),
        Row("page made from built solids", made),
    ]
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as tools:
        file = Path(folder) / "house.html"
        file.write_text(text, encoding="utf-8")
        browser = tools.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        for size in SCREENS:
            seen = [opened(browser, file, size) for _ in range(repeats)]
            at = f"at {size[0]} px"
            found += [
                told(f"first picture {at}", spread(first for first, _ in seen), 2000),
                told(f"cut of all parts, filled, {at}", spread(t[0] for _, t in seen)),
                told(f"one picture drawn in software {at}", spread(t[1] for _, t in seen)),
            ]
        found.append(Row("triangles", seen[0][1][2], ""))
        browser.close()
    return found
