"""Workers: limits, deaths, kills, stops, going on; and a cluster where its library is there."""

import json
import os
import signal
import subprocess
import sys
import time
from functools import partial

import pytest

from tests.viz.batch.test_batch_designs import HOUSE
from viz.batch.cluster import there
from viz.batch.designs import Asked
from viz.batch.outcome import Outcome
from viz.batch.pool import pooled, too_long
from viz.batch.run import How, run
from viz.batch.store import Store

pytestmark = pytest.mark.slow
MANY = 24


def work(asked, _with_set):
    """Do what the design's name says."""
    if asked.name.startswith("dies"):
        os._exit(9)
    if asked.name.startswith("sleeps"):
        time.sleep(600)
    return Outcome("done", asked.name), None


def test_one_that_dies_or_takes_too_long_costs_itself_alone():
    names = ["one", "dies 1", "sleeps", "two", "dies 2", "three", "four"]
    asked = [Asked(name, "") for name in names]
    found = {one.name: made[0] for one, made in pooled(asked, 2, 2.0, False, work)}
    assert {n: o.status for n, o in found.items()} == {
        "one": "done", "two": "done", "three": "done", "four": "done",
        "dies 1": "died", "dies 2": "died", "sleeps": "took too long",
    }  # fmt: skip
    assert found["sleeps"].limit_s == 2.0


def test_more_time_tries_again_what_took_too_long_and_a_death_is_tried_again(tmp_path):
    one, store = Asked("plain", HOUSE), Store(tmp_path)
    store.keep(store.key(one), too_long(5.0))
    assert run([one], How(tmp_path, 1, 5.0))[0].outcome == too_long(5.0)
    assert run([one], How(tmp_path, 1, 300.0))[0].outcome.status == "done"
    store.keep(store.key(one), Outcome("died", "out of memory"))
    assert run([one], How(tmp_path, 1, 300.0))[0].outcome.status == "done"


def results(out):
    return {file.name: file.read_bytes() for file in (out / "results").glob("*.json")}


@pytest.mark.skipif(os.name == "nt", reason="signals of another kind")
@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGINT])
def test_killed_or_stopped_it_leaves_whole_results_and_goes_on(tmp_path, how):
    (tmp_path / "plain.toml").write_text(HOUSE, encoding="utf-8")
    out, heights = tmp_path / "out", ",".join(f"{48 + n} in" for n in range(MANY))
    words = ["batch", str(tmp_path / "plain.toml"), "--out", str(out), "--workers", "2"]
    command = [
        sys.executable, "-c", "from viz.commands.main import run; run()", *words,
        "--vary", f"wall.height={heights}",
    ]  # fmt: skip
    # Begun in the background, a shell's children ignore the stop; this one is to hear it.
    heard = partial(signal.signal, signal.SIGINT, signal.SIG_DFL)
    with subprocess.Popen(
        command, stderr=subprocess.PIPE, start_new_session=True, preexec_fn=heard
    ) as first:
        until = time.monotonic() + 120
        while time.monotonic() < until and len(list(out.glob("results/*.json"))) < 3:
            time.sleep(0.02)
        first.send_signal(how)
        _, told = first.communicate(timeout=60)
        assert first.returncode == (130 if how == signal.SIGINT else -signal.SIGKILL)
        assert (b"goes on from here" in told) == (how == signal.SIGINT)
        ended(first.pid)
    before = results(out)
    assert 3 <= len(before) < MANY
    assert all(json.loads(data)["status"] == "done" for data in before.values())
    subprocess.run(command, check=True, capture_output=True, timeout=300)
    after = results(out)
    assert len(after) == MANY
    assert before.items() <= after.items(), "what was finished was run again"
    assert len((out / "designs.csv").read_text(encoding="utf-8").splitlines()) == MANY + 1


def ended(group):
    """Wait until no process of a group is left."""
    for _ in range(300):
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return
        time.sleep(0.1)
    raise AssertionError("workers outlived their parent")


def test_sets_are_written_with_the_table_and_drawn_again_where_one_is_missing(tmp_path):
    one, how = Asked("street/plain", HOUSE), How(tmp_path, 1, 300.0, with_sets=True)
    assert run([one], how)[0].outcome.status == "done"
    file = tmp_path / "sets/street/plain.pdf"
    assert file.read_bytes().startswith(b"%PDF")
    file.unlink()
    run([one], how)
    assert file.exists()


@pytest.mark.skipif(not there(), reason="the extra batch (dask.distributed) is not installed")
def test_a_cluster_gives_the_same_lines(tmp_path):
    from distributed import LocalCluster

    asked = [Asked("plain", HOUSE), Asked("bad", "[project")]
    with LocalCluster(
        n_workers=1, threads_per_worker=1, processes=False, dashboard_address=None
    ) as cluster:
        how = How(tmp_path / "c", 1, 120.0, scheduler=cluster.scheduler_address)
        there_made = run(asked, how)
    here = run(asked, How(tmp_path / "h", 1, 120.0))
    for a, b in zip(there_made, here, strict=True):
        assert (a.outcome.status, a.outcome.figures) == (b.outcome.status, b.outcome.figures)


def test_a_cluster_that_is_not_there_is_said(tmp_path):
    from geometry.errors import BedcourseError

    said = "no cluster answers" if there() else "is not installed"
    with pytest.raises(BedcourseError, match=said):
        run([Asked("plain", HOUSE)], How(tmp_path, 1, 1.0, scheduler="tcp://127.0.0.1:9"))
