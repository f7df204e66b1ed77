"""The benches under one roof: what each measures, and how it is run whole or quickly."""

from collections.abc import Callable, Iterable

from tests.bench.row import Curve, Row

Made = Iterable[Row | Curve]


def start(quick: bool) -> Made:
    """Whole processes: short commands, the set, the app's start, with their peak memory."""
    from tests.bench import bench_start

    return bench_start.rows(quick)


def engine(quick: bool) -> Made:
    """From text to report and solids; the same parts in Open CASCADE."""
    from tests.bench import bench_engine as bench

    text, repeats = bench.EXAMPLE.read_text(encoding="utf-8"), 5 if quick else 15
    return [*bench.example_rows(text, repeats), *bench.peer_rows(text, repeats)]


def growth(quick: bool) -> Made:
    """Time and memory against holes, corners and areas."""
    from tests.bench import bench_growth

    return bench_growth.curves(quick)


def peers(quick: bool) -> Made:
    """The kernel beside VTK's booleans and other triangulations."""
    from tests.bench import bench_peers

    return bench_peers.rows(quick)


def drawings(quick: bool) -> Made:
    """Sections, also beside manifold3d's slicer; the permit set and its files."""
    from tests.bench import bench_drawings as bench
    from viz.job import job

    repeats = 9 if quick else 31
    work = job(bench.EXAMPLE.read_text(encoding="utf-8"))
    bench.faces_of(work.foundation, next(bench.lines(work)))
    return [*bench.section_rows(work, repeats), *bench.set_rows(work, repeats)]


def survey(_: bool) -> Made:
    """Half a million shots, also beside their triangulation alone by scipy."""
    from tests.bench import bench_survey

    return bench_survey.rows()


def water(_: bool) -> Made:
    """A day of rain through the pit, and the water of a whole house."""
    from tests.bench import bench_water

    return bench_water.rows()


def app(quick: bool) -> Made:
    """An edit in the app: the report, the page, the model's data."""
    from tests.bench import bench_app

    repeats = 3 if quick else 9
    return [*bench_app.model_rows(repeats), *bench_app.page_rows(repeats)]


def viewer(quick: bool) -> Made:
    """The 3D page in a headless browser with software drawing."""
    from tests.bench import bench_viewer

    return bench_viewer.rows(1 if quick else 5)


def batch(quick: bool) -> Made:
    """Many designs on the machine's workers."""
    from tests.bench import bench_batch

    return bench_batch.rows(64 if quick else 1000)


# Those that wait for a browser or for workers: the processor's time says nothing of them.
WAITING = {"viewer", "batch"}
SUITES: dict[str, Callable[[bool], Made]] = {
    each.__name__: each
    for each in (start, engine, growth, peers, drawings, survey, water, app, viewer, batch)
}
