"""The report gives each subject when it is asked for, and the same one to everybody."""

import json
from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.report import Report, report
from geometry.solids.foundation import Foundation, build
from tests.designs import design_of, seeded_raw


def house() -> Layout:
    return lay_out(design_of(seeded_raw(3)))


def test_nothing_but_volumes_asks_for_solids() -> None:
    def none() -> Foundation:
        raise LookupError

    made = Report(house(), none)
    whole = json.loads(report(house()).to_json())
    del whole["volumes"]
    assert json.loads(json.dumps(made.figures(*whole))) == whole
    with pytest.raises(LookupError):
        _ = made.volumes


def test_volumes_hold_the_earthworks_where_solids_are_given() -> None:
    layout = house()
    bare, whole = report(layout).volumes, report(layout, build(layout)).volumes
    assert whole[: len(bare)] == bare
    assert {v.part for v in whole[len(bare) :]} > {"ground/backfill"}


def test_many_who_ask_at_once_hear_the_same() -> None:
    made, ready = report(house()), Barrier(4)

    def ask(_: int) -> str:
        ready.wait()
        return made.to_json()

    with ThreadPoolExecutor(4) as pool:
        heard = set(pool.map(ask, range(4)))
    assert heard == {report(house()).to_json()}
