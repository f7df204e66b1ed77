"""The app driven without a browser: what is shown follows the design file's text."""

from html import unescape

import pytest

from geometry.designfile import start_text
from tests.app.walking import on, put
from viz.carried import demo
from viz.panels.pages import PAGES
from viz.tables import report_tables

DEMO = demo().read_text(encoding="utf-8")
SLAB = "field floor/layer/4/thickness"
FOAM = "field floor/layer/3/thickness"


def shown(app):
    """All HTML of the page as one text."""
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def figure(app, name):
    """The figure of one tile."""
    return shown(app).split(f"<span>{name}</span><b>", 1)[1].split("</b>", 1)[0]


def text_of(app):
    return app.session_state["design text"]


def test_it_opens_on_the_demo_with_its_figures(app):
    assert not app.exception
    assert not app.error
    assert "Larkmoor Lane (invented example)" in shown(app)
    assert figure(app, "Finished floor") == "+0'-6\""
    assert figure(app, "Subgrade, cut to") == "-0'-6 1/2\""
    assert "its bottom meets TOF and it runs over the footing to the wall" in shown(app)
    assert "Local code governs" in shown(app)


def test_a_thicker_slab_raises_the_finished_floor_and_keeps_the_comments(app):
    """4 in to 5 in: the floor stands at 10 mil + 2 in + 5 in = 7.01 in above TOF."""
    on(app, "Floor").text_input(key=SLAB).set_value("5 in").run()
    assert figure(app, "Finished floor") == "+0'-7\""
    changed = [
        (a, b) for a, b in zip(DEMO.splitlines(), text_of(app).splitlines(), strict=True) if a != b
    ]
    assert len(changed) == 1
    assert "# retarder and foam run over the footing" in text_of(app)


def test_metric_lengths_are_taken_as_they_are_typed(app):
    """100 mm instead of 4 in: 10 mil + 2 in + 100 mm = 151.05 mm = 5.947 in, 5 15/16 in."""
    on(app, "Floor").text_input(key=SLAB).set_value("100 mm").run()
    assert figure(app, "Finished floor") == "+0'-5 15/16\""
    assert app.text_input(key=SLAB).value == "100 mm"


def test_a_value_that_cannot_be_read_is_said_at_its_field_and_in_the_list(app):
    on(app, "Floor").text_input(key=FOAM).set_value("2").run()
    assert app.text_input(key=FOAM).value == "2"
    assert [e.value for e in app.error] != []
    assert "The design has" in app.error[0].value
    assert "last sound one" in app.error[0].value
    assert '<div class="fault"><i>!</i> 2 has no unit' in shown(app)
    assert figure(app, "Finished floor") == "+0'-6\""
    app.text_input(key=FOAM).set_value("3 in").run()
    assert not app.error
    assert figure(app, "Finished floor") == "+0'-7\""


def test_all_faults_are_said_at_once_and_one_button_goes_back(app):
    on(app, "Floor").text_input(key=FOAM).set_value("2").run()
    on(app, "Layout").text_input(key="field wall/height").set_value("tall").run()
    assert "2 faults" in app.error[0].value or "3 faults" in app.error[0].value
    button = next(b for b in app.button if b.label == "Back to the last sound design")
    button.click().run()
    assert not app.error
    assert text_of(app) == DEMO


def test_text_that_is_no_toml_takes_the_fields_away_but_not_the_figures(app):
    put(app, "[[[")
    assert "not TOML" in app.error[0].value
    assert figure(app, "Finished floor") == "+0'-6\""
    assert any("fields come back" in i.value for i in app.info)
    put(app, DEMO, "Floor")
    assert not app.error
    assert app.text_input(key=SLAB).value == "4 in"


def test_the_units_switch_changes_every_figure(app):
    """+6.010 in is 152.654 mm; figures are printed to the tenth."""
    app.segmented_control(key="units").set_value("metric").run()
    assert figure(app, "Finished floor") == "+152.7 mm"
    assert 'units = "metric"' in text_of(app)
    app.segmented_control(key="units").set_value("ft-in").run()
    assert figure(app, "Finished floor") == "+0'-6\""


def test_examples_and_the_first_design_can_be_opened(app):
    names = app.selectbox(key="example").options
    metric = next(n for n in names if "Erlenweg" in n)
    app.selectbox(key="example").set_value(metric).run()
    assert not app.error
    assert metric in shown(app)
    assert "mm" in figure(app, "Finished floor")
    app.selectbox(key="example").set_value("a first design with notes").run()
    assert text_of(app) == start_text()
    assert not app.error


def test_a_file_of_ones_own_is_opened_and_a_broken_one_leaves_the_last_design(app):
    mine = DEMO.replace("Larkmoor Lane (invented example)", "Hill <b>House</b> & Co")
    app.file_uploader(key="upload").set_value(("mine.toml", mine.encode(), "text/plain")).run()
    assert "Hill <b>House</b> & Co" in shown(app)
    assert not any("<b>House</b>" in block.proto.body for block in app.get("html"))
    bad = ("bad.toml", b"\xff\xfe\x00", "text/plain")
    app.file_uploader(key="upload").set_value(bad).run()
    assert any("not UTF-8" in w.value for w in app.warning)
    assert figure(app, "Finished floor") == "+0'-6\""


def test_piers_are_added_moved_and_taken_out_by_their_lines(app):
    piers = app.text_area(key="field area/0/pier")
    assert piers.value.splitlines() == [
        "P1: 13 ft, 10 ft", "P2: 26 ft, 10 ft", "P3: 13 ft, 21 ft",
    ]  # fmt: skip
    piers.set_value("P1: 14 ft, 10 ft\nP3: 13 ft, 21 ft\nP9: 30 ft, 9 ft").run()
    assert not app.error
    parts = {s.label.part for s in _job(app).foundation.solids if "column" in s.label.part}
    assert parts == {f"basement/pier {name} column" for name in ("P1", "P3", "P9")}
    assert _job(app).layout.design.areas[0].piers[1].column == "round"
    assert _job(app).layout.design.areas[0].piers[0].at[0] == pytest.approx(14 * 0.3048)


def _job(app):
    from viz.job import job

    return job(text_of(app))


def test_the_outline_is_edited_corner_by_corner(app):
    app.text_area(key="field area/0/corners").set_value("0, 0\n42 ft, 0\n42 ft, 18 ft").run()
    assert len(_raw(app)["area"][0]["corners"]) == 3


def _raw(app):
    return _tables(text_of(app))


def _tables(text):
    import tomllib

    return tomllib.loads(text)


def test_holes_angles_are_numbers_in_the_file(app):
    on(app, "Drain").text_input(key="field drain/holes/rows").set_value("-45, 0, 45").run()
    assert _raw(app)["drain"]["holes"]["rows"] == [-45.0, 0.0, 45.0]
    assert not app.error
    app.text_input(key="field drain/holes/rows").set_value("down").run()
    assert app.error


@pytest.mark.parametrize("page", PAGES)
def test_every_page_and_stage_opens_and_offers_what_it_shows_as_a_file(app, page):
    on(app, page)
    stages = [c for c in app.segmented_control if c.key == f"{page.lower()} stage"]
    for stage in stages[0].options if stages else [None]:
        on(app, page, stage)
        assert not app.exception
        assert not app.warning
        # Besides the button that saves the design file.
        offered = len(app.get("download_button")) - 1
        bare = page == "Compare" or stage in ("Model", "Plan", "Stills", "As dug")
        assert offered >= (0 if bare else 1), stage


def test_stills_without_opengl_say_what_to_install(app, monkeypatch):
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setattr("viz.scene.worker.found", lambda _: False)
    on(app, "Set", "Stills")
    offered = app.selectbox(key="still").options
    assert {"Cut open", "Fabric wrap, open"} < set(offered)
    assert any(title.startswith("Stage 1 of") for title in offered)
    next(b for b in app.button if b.label == "Draw the picture").click().run()
    assert any("apt-get install" in w.value for w in app.warning)
    assert not app.exception


def test_an_area_with_its_own_floor_is_edited_in_its_own_table(app):
    on(app, "Floor").selectbox(key="area shown").set_value(1).run()
    app.text_input(key="field area/1/floor/layer/2/thickness").set_value("6 in").run()
    assert not app.error
    assert _raw(app)["area"][1]["floor"]["layer"][2]["thickness"] == "6 in"
    assert _raw(app)["floor"]["layer"][4]["thickness"] == "4 in"


@pytest.mark.slow
def test_a_floor_that_is_not_written_out_can_be(app):
    lines = DEMO.split("[floor]")
    text = lines[0] + "[[area]]" + lines[1].split("[[area]]", 1)[1]
    put(app, text, "Floor")
    assert not app.error
    next(b for b in app.button if b.label == "Change its layers").click().run()
    assert not app.error
    assert [layer["name"] for layer in _raw(app)["floor"]["layer"]] == [
        "stone", "sand", "retarder", "foam", "slab",
    ]  # fmt: skip
    app.text_input(key=SLAB).set_value("5 in").run()
    assert figure(app, "Finished floor") == "+0'-7\""


@pytest.mark.parametrize(
    "text",
    [
        "",
        "area = 5",
        "[[area]]",
        "[[area]]\npier = [1, 2]\nfloor = 3\ncorners = 4",
        'area = [1, "a"]',
        "[[area]]\nname = [1]\n[floor]\nlayer = [1, {role = 2, name = 3}]",
        "floor = 1\ndrain = 2\nsump = 3\ngrade = []\n[[area]]\ncorners = [[1, 2], 3]",
    ],
)
def test_no_text_however_odd_brings_the_page_down(app, text):
    put(app, text)
    assert "The design has" in app.error[0].value
    assert not any("unexpected" in e.value for e in app.error)
    assert figure(app, "Finished floor") == "+0'-6\""


@pytest.mark.slow
def test_what_an_empty_field_says_is_usual_is_what_the_engine_takes(app):
    """Typing every greyed-out value changes no figure of the report."""
    bare = (
        '[project]\nname = "bare"\n[drain]\n[sump]\nat = "5 ft, 8 ft"\n'
        '[[area]]\nname = "house"\ncorners = ["0, 0", "30 ft, 0", "30 ft, 24 ft", "0, 24 ft"]\n'
    )
    put(app, bare)
    assert not app.error
    before = _figures(app)
    words = ("none", "on its bedding", "8 in below top of wall", "foam over the footing",
             "not given", "all dug open", "by the soil", "farthest", "nearest", "the drain's",
             "by Sichardt's rule", "underside of drain stone", "a usual range",
             "the catalogue's", "not known", "not said", "usual for the tube",
             "the middle of a wall", "by the soil's group",
             "that of rooms, 40 psf or 1.9 kPa")  # fmt: skip
    typed = 0
    for page in PAGES:
        on(app, page)
        usual = [f for f in app.text_input if f.placeholder and f.placeholder not in words]
        for field in usual:
            field.set_value(field.placeholder)
        app.run()
        typed += len(usual)
    assert typed > 45
    assert not app.error
    assert _figures(app) == before
    assert text_of(app).count("=") > typed


def _figures(app):
    """Levels and volumes to the micrometre."""
    report = _job(app).report
    return report_tables.level_figures(report), report_tables.volume_figures(report)


def test_changes_are_taken_back_and_made_again(app):
    assert app.button(key="undo").disabled
    on(app, "Floor").text_input(key=SLAB).set_value("5 in").run()
    app.text_input(key=FOAM).set_value("wrong").run()
    assert app.error
    app.button(key="undo").click().run()
    assert not app.error
    assert figure(app, "Finished floor") == "+0'-7\""
    app.button(key="undo").click().run()
    assert text_of(app) == DEMO
    assert app.button(key="undo").disabled
    app.button(key="redo").click().run()
    assert figure(app, "Finished floor") == "+0'-7\""
    app.text_input(key=SLAB).set_value("6 in").run()
    assert app.button(key="redo").disabled


def test_a_thickness_slides(app):
    """5 in instead of 4 in: the floor stands 7.01 in above TOF."""
    on(app, "Floor").select_slider(key=f"slide {SLAB}").set_value("5 in").run()
    assert figure(app, "Finished floor") == "+0'-7\""
    assert app.text_input(key=SLAB).value == "5 in"
    app.text_input(key=SLAB).set_value("5 1/4 in").run()
    assert app.select_slider(key=f"slide {SLAB}").value == "5 1/4 in"


def test_layers_are_added_moved_and_taken_out(app):
    on(app, "Floor").selectbox(key="one more field floor/layer").set_value("insulation").run()
    next(b for b in app.button if b.label == "Add the layer").click().run()
    assert not app.error
    names = [layer["name"] for layer in _raw(app)["floor"]["layer"]]
    assert names == ["stone", "sand", "retarder", "foam", "foam 2", "slab"]
    assert figure(app, "Finished floor") == "+0'-8\""
    app.button(key="Move down field floor/layer/4").click().run()
    assert [layer["name"] for layer in _raw(app)["floor"]["layer"]][3:5] == ["foam 2", "foam"]
    app.button(key="Take out field floor/layer/3").click().run()
    assert _raw(app)["floor"]["layer"] == _tables(DEMO)["floor"]["layer"]
    assert "# retarder and foam run over the footing" in text_of(app)
