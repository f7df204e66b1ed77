"""The drawings of the app driven without a browser: sections, sheets, and their fields."""

import tomllib
from base64 import b64decode
from html import unescape
from io import BytesIO
from types import SimpleNamespace
from zipfile import ZipFile

import pytest

from geometry.units import FOOT, INCH, read_length
from viz.job import job
from viz.panels import cached, cutting

PAPER = "paper ft-in"


@pytest.fixture
def section(app):
    return app.segmented_control(key="view").set_value("Section").run()


@pytest.fixture
def sheets(app):
    return app.segmented_control(key="view").set_value("Set").run()


def drawn(app):
    """The sheet shown, as SVG; none where a sentence stands in its place."""
    start = "data:image/svg+xml;base64,"
    blocks = [b.proto.body for b in app.get("html") if start in b.proto.body]
    return b64decode(blocks[0].split(start, 1)[1].split('"', 1)[0]).decode() if blocks else ""


def words(app):
    return unescape(drawn(app))


def raw(app):
    return tomllib.loads(app.session_state["design text"])


def own(app, start, end, via=""):
    app.selectbox(key="cut").set_value("own").run()
    for key, text in (("cut from", start), ("cut to", end), ("cut via", via)):
        app.text_input(key=key).set_value(text)
    return app.run()


@pytest.mark.slow
def test_every_telling_cut_is_drawn(section):
    seen = set()
    for name in job(section.session_state["design text"]).cuts:
        section.selectbox(key="cut").set_value(name).run()
        assert not section.warning
        seen.add(drawn(section))
    assert len(seen) == len(job(section.session_state["design text"]).cuts)


def test_ones_own_cut_starts_from_the_one_shown_and_draws_the_same(section):
    section.selectbox(key="cut").set_value("pier").run()
    section.segmented_control(key="section part").set_value("detail").run()
    before = drawn(section)
    section.selectbox(key="cut").set_value("own").run()
    assert section.text_input(key="cut from").value.startswith("13'-0\", ")
    assert drawn(section) == before


@pytest.mark.slow
def test_ones_own_places_outlast_a_look_at_something_else(section):
    own(section, "-10 ft, 6 ft", "60 ft, 6 ft", "20 ft, 6 ft; 20 ft, 9 ft")
    before = drawn(section)
    section.segmented_control(key="view").set_value("Layout").run()
    section.segmented_control(key="view").set_value("Section").run()
    assert section.text_input(key="cut via").value == "20 ft, 6 ft; 20 ft, 9 ft"
    assert drawn(section) == before
    section.selectbox(key="cut").set_value("sump").run()
    section.selectbox(key="cut").set_value("own").run()
    assert drawn(section) == before


@pytest.mark.parametrize(
    ("places", "said"),
    [
        (("500 ft, 0", "600 ft, 0"), "shows nothing"),
        (("-10 ft, 6 ft", "there"), "is not a place"),
        (("-10 ft, 6 ft", "60, 6"), "has no unit"),
        (("-10 ft, 6 ft", "-10 ft, 6 ft"), "two points are one"),
        (("-10 ft, 6 ft", "60 ft, 6 ft", "70 ft, 6 ft"), "runs back"),
        (("", ""), "is not a place"),
    ],
)
def test_a_cut_that_cannot_be_drawn_is_one_sentence(section, places, said):
    own(section, *places)
    assert len(section.warning) == 1
    assert said in section.warning[0].value
    assert not section.warning[0].value[0].islower()
    assert drawn(section) == ""
    assert not section.error
    own(section, "-10 ft, 6 ft", "60 ft, 6 ft")
    assert not section.warning
    assert drawn(section)


@pytest.mark.slow
def test_the_other_side_is_the_same_cut_seen_from_behind(section):
    own(section, "-10 ft, 6 ft", "60 ft, 8 ft", "20 ft, 6 ft; 20 ft, 8 ft")
    before = drawn(section)
    turn = next(b for b in section.button if "other side" in b.label)
    turn.click().run()
    assert section.text_input(key="cut from").value == "60'-0\", 8'-0\""
    assert section.text_input(key="cut via").value == "20'-0\", 8'-0\"; 20'-0\", 6'-0\""
    assert drawn(section) != before
    next(b for b in section.button if "other side" in b.label).click().run()
    assert drawn(section) == before


@pytest.mark.slow
def test_paper_and_scale_are_those_asked_for(section):
    section.selectbox(key=PAPER).set_value("ARCH D").run()
    section.selectbox(key="section scale ft-in").set_value('1/4" = 1\'-0"').run()
    assert not section.warning
    assert 'Scale 1/4" = 1\'-0", ARCH D' in words(section)
    assert 'width="914.4mm"' in drawn(section)
    section.selectbox(key=PAPER).set_value("letter").run()
    assert "does not fit this paper" in section.warning[0].value


def test_a_metric_design_has_metric_papers_and_scales(section):
    section.segmented_control(key="units").set_value("metric").run()
    assert section.selectbox(key="paper metric").value == "A3"
    assert "1:50" in section.selectbox(key="section scale metric").options
    assert "Scale 1:" in words(section)


def test_a_detail_needs_a_footing(section):
    section.segmented_control(key="section part").set_value("detail").run()
    assert "Detail at the footing" in words(section)
    own(section, "10 ft, 5 ft", "20 ft, 5 ft")
    assert "goes through no footing" in section.warning[0].value


def state_of(monkeypatch, **start):
    held = dict(start)
    monkeypatch.setattr(cutting, "st", SimpleNamespace(session_state=held))
    return held


def work(text, units="ft-in"):
    return job(text.replace('units = "ft-in"', f'units = "{units}"'))


@pytest.mark.parametrize(("units", "step"), [("ft-in", INCH), ("metric", 0.01)])
def test_a_line_drawn_on_the_plan_becomes_the_cut_on_whole_sizes(app, monkeypatch, units, step):
    house = work(app.session_state["design text"], units)
    state_of(monkeypatch)
    line = {"points": [[-2.0011, 3.0007], [12.3456, 3.2]], "moved": 1, "fresh": True}
    cutting.drawn(house, line)
    (x, y), (far, same) = cutting.corners(house)
    assert cutting.asked(house).name == cutting.OWN
    assert same == y
    for drawn_at, kept in ((-2.0011, x), (3.0007, y), (12.3456, far)):
        assert abs(kept - drawn_at) <= step / 2 + 1e-9
        assert kept / step == pytest.approx(round(kept / step), abs=1e-6)


def test_dragging_one_end_leaves_the_other_and_the_jogs(app, monkeypatch):
    house = work(app.session_state["design text"])
    held = state_of(monkeypatch)
    held["cut asked"] = cutting.Asked("own", "-10 ft, 6.01 ft", "60 ft, 9 ft", "20 ft, 6 ft")
    before = cutting.corners(house)
    moved = [list(p) for p in before]
    moved[2] = [40 * FOOT, 30 * FOOT]
    cutting.drawn(house, {"points": moved, "moved": 2, "fresh": False})
    after = cutting.corners(house)
    assert after[2] == pytest.approx((40 * FOOT, 30 * FOOT))
    assert after[1] == pytest.approx(before[1])
    assert after[0] == pytest.approx(before[0], abs=INCH / 16)


@pytest.mark.parametrize(
    "odd",
    [
        None, 5, {}, {"points": []}, {"points": [[0, 0]], "moved": 7, "fresh": True},
        {"points": [[0, None], [1, 1]], "moved": 1, "fresh": True},
        {"points": [["a", 0], [1, 1]], "moved": 0, "fresh": False},
        {"points": [[float("inf"), 0], [1, 1]], "moved": 0, "fresh": False},
    ],
)  # fmt: skip
def test_what_is_no_line_changes_nothing(app, monkeypatch, odd):
    house = work(app.session_state["design text"])
    held = state_of(monkeypatch)
    cutting.drawn(house, odd)
    assert held == {}


@pytest.mark.slow
def test_the_set_is_shown_sheet_by_sheet(sheets):
    names = sheets.segmented_control(key="sheet").options
    assert any("Foundation plan" in name for name in names)
    seen = set()
    for name in names:
        sheets.segmented_control(key="sheet").set_value(name.split()[0]).run()
        assert not sheets.exception
        assert f">{name.split()[0]}</text>" in drawn(sheets)
        seen.add(drawn(sheets))
    assert len(seen) == len(names)


@pytest.mark.slow
def test_another_paper_keeps_the_sheet_or_takes_one_of_its_own(sheets):
    sheets.segmented_control(key="sheet").set_value("S-501").run()
    sheets.selectbox(key="set paper ft-in").set_value("ARCH D").run()
    assert not sheets.exception
    assert sheets.segmented_control(key="sheet").value in {"S-501", "S-101"}
    assert 'width="914.4mm"' in drawn(sheets)


def test_a_scale_that_does_not_fit_is_said_and_the_list_stays(sheets):
    sheets.selectbox(key="set scale ft-in").set_value('3" = 1\'-0"').run()
    assert "does not fit this paper" in sheets.warning[0].value
    assert drawn(sheets) == ""
    assert any("leave open" in c.value for c in sheets.caption)


@pytest.mark.slow
def test_the_zip_holds_pdf_and_every_sheet(sheets):
    next(b for b in sheets.button if "ZIP" in b.label).click().run()
    assert not sheets.exception
    _, data = sheets.session_state["zip made"]
    numbers = [name.split()[0] for name in sheets.segmented_control(key="sheet").options]
    with ZipFile(BytesIO(data)) as bundle:
        names = bundle.namelist()
        assert bundle.read(cached.SET_PDF).startswith(b"%PDF")
        for number in numbers:
            assert bundle.read(f"sheets/{number}.svg").startswith(b"<svg")
            assert bundle.read(f"sheets/{number}.png").startswith(b"\x89PNG")
    assert len(names) == 1 + 2 * len(numbers)
    assert any(b.label == "ZIP" for b in sheets.get("download_button"))
    sheets.text_input(key="field project/revision").set_value("3").run()
    assert not any(b.label == "ZIP" for b in sheets.get("download_button"))


TITLES = {
    "name": "Hill House", "address": "1 Hill", "parcel": "Lot 9", "drawn_for": "Owner",
    "prepared_by": "Builder", "date": "2026-05-06", "revision": "B7", "code": "Town code",
}  # fmt: skip


@pytest.mark.slow
def test_the_title_blocks_words_are_edited_and_stand_on_the_sheet(sheets):
    for key, text in TITLES.items():
        sheets.text_input(key=f"field project/{key}").set_value(text)
    sheets.run()
    assert not sheets.error
    assert {key: raw(sheets)["project"][key] for key in TITLES} == TITLES
    for text in TITLES.values():
        assert f">{text}</text>" in words(sheets)


def counted(app, state):
    line = next(c.value for c in app.caption if "leave open" in c.value)
    return int(line.split(f" {state}")[0].split()[-1])


@pytest.mark.slow
def test_an_emptied_field_is_one_more_thing_not_stated(sheets):
    before, outside = counted(sheets, "not stated"), counted(sheets, "not covered")
    sheets.text_input(key="field project/parcel").set_value("").run()
    assert "parcel" not in raw(sheets)["project"]
    assert counted(sheets, "not stated") == before + 1
    assert counted(sheets, "not covered") == outside
    listed = next(b.proto.body for b in sheets.get("html") if 'class="asked"' in b.proto.body)
    assert listed.count("<li>") == before + 1 + outside
    assert "[project] parcel" in listed


def test_a_design_without_a_name_is_a_fault_at_its_field(app):
    app.segmented_control(key="view").set_value("Set").run()
    app.text_input(key="field project/name").set_value("").run()
    assert app.error
    assert any('class="fault"' in block.proto.body for block in app.get("html"))


@pytest.mark.slow
def test_the_pumps_levels_are_taken_out_added_and_edited(app):
    app.segmented_control(key="view").set_value("Drain").run()
    out = next(b for b in app.button if b.label == "Take the pump's levels out")
    out.click().run()
    assert "pump" not in raw(app)["sump"]
    next(b for b in app.button if b.label == "Add a pump's levels").click().run()
    assert not app.error
    app.text_input(key="field sump/pump/on").set_value("11 in").run()
    app.text_input(key="field sump/pump/alarm").set_value("15 in").run()
    assert not app.error
    pump = job(app.session_state["design text"]).layout.sump.sump.pump
    assert (pump.on, pump.alarm) == (read_length("11 in"), read_length("15 in"))
    app.text_input(key="field sump/pump/on").set_value("1 in").run()
    assert app.error
    faults = [b.proto.body for b in app.get("html") if 'class="fault"' in b.proto.body]
    assert len(faults) == len(set(faults)) == 1
