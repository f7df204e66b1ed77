"""An edit in the app, on the demo: to the report, to the page run again, to the model's data.

Run it with `python -m tests.bench.bench_app`; `--repeats` says how many edits follow the first.
Times are the server's; sizes are what goes to the browser.
"""

import argparse
from collections.abc import Callable, Iterator
from statistics import median

from streamlit.testing.v1 import AppTest

from geometry.designfile import edited
from tests.bench.clock import now
from tests.bench.row import MS, Row
from viz.carried import app_file, demo
from viz.job import job
from viz.viewer.message import message
from viz.viewer.model import model
from viz.viewer.page import viewer_shell

KILO = 1e3
# What is edited, and the page where it is.
EDITS = {
    "slab": (("floor", "layer", 4, "thickness"), "Floor"),
    "footing": (("footing", "thickness"), "Layout"),
    "wall": (("wall", "thickness"), "Layout"),
}
FIRST_INCHES = {"slab": 4.0, "footing": 12.0, "wall": 8.0}


def edits(what: str, count: int) -> Iterator[str]:
    """Yield the demo with one thickness a little greater every time."""
    text = demo().read_text(encoding="utf-8")
    for number in range(1, count + 1):
        yield edited(text, EDITS[what][0], f"{FIRST_INCHES[what] + number / 8} in")


def timed(work: Callable[[], object]) -> float:
    start = now()
    work()
    return (now() - start) * MS


def model_rows(repeats: int) -> Iterator[Row]:
    """Yield times from a text to the report, and on to the model's data, with their sizes."""
    took, data = _sent(demo().read_text(encoding="utf-8"), set())
    yield Row("the first model's data", took)
    yield Row("bytes of it", len(data) / KILO, "kB")
    shell = len(viewer_shell("house").encode())
    yield Row("bytes of the page itself, sent once, before deflating", shell / KILO, "kB")
    for what in EDITS:
        held: set[str] = set()
        reports, models, sizes = [], [], []
        for text in edits(what, repeats + 1):
            reports.append(timed(lambda text=text: job(text).report.to_json()))
            took, data = _sent(text, held)
            models.append(took)
            sizes.append(len(data) / KILO)
            held |= set(model(job(text))["shapes"])
        yield Row(f"{what} edited: to the whole report", median(reports[1:]), aim=150)
        yield Row(f"{what} edited: to the model's data", median(models[1:]), aim=500)
        yield Row(f"{what} edited: bytes sent", median(sizes[1:]), "kB")


def _sent(text: str, held: set[str]) -> tuple[float, bytes]:
    """Return the milliseconds from a text to the model's data, and the data."""
    start = now()
    data = message(model(job(text)), held)
    return (now() - start) * MS, data


def page_rows(repeats: int) -> Iterator[Row]:
    """Yield times of the page run again after an edit, with all that is shown."""
    app = AppTest.from_file(str(app_file()), default_timeout=120)
    yield Row("the app opened", timed(app.run))
    for what, (path, page) in EDITS.items():
        app.segmented_control(key="view").set_value(page).run()
        key = "field " + "/".join(map(str, path))
        times = []
        for number in range(1, repeats + 1):
            words = f"{FIRST_INCHES[what] + number / 16} in"
            app.text_input(key=key).set_value(words)
            times.append(timed(app.run))
        assert not app.exception
        yield Row(f"{what} edited: page {page} run again", median(times))


def rows(quick: bool) -> Iterator[Row]:
    """Yield all lines."""
    repeats = 3 if quick else 9
    yield from model_rows(repeats)
    yield from page_rows(repeats)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--repeats", type=int, default=9)
    repeats = parser.parse_args().repeats
    for rows in (model_rows(repeats), page_rows(repeats)):
        for row in rows:
            print(row, flush=True)


if __name__ == "__main__":
    main()
