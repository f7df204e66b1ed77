"""The 3D page's cuts against the engine's, its keys, its openness to all, and other data loaded."""

import random
from pathlib import Path

import pytest

from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from tests.browser.test_viewer import SCREENS
from tests.browser.viewerpage import opened, rest, stand, state
from tests.conftest import CHROMIUM
from viz.carried import demo
from viz.job import job
from viz.viewer.model import model

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

AXE = Path(__file__).parents[2] / "viz/viewer/node_modules/axe-core/axe.min.js"
FAR_M = 60.0

CUT = """([along, share, turn, flip]) => {
  const { store, viewer } = bedcourse;
  const way = viewer.house.choices.find(c => c.key === along);
  store.set({ cut: { along, at: way.low + share * (way.high - way.low), turn, flip } });
  const filled = view => {
    const uv = view.cap.geometry.attributes.uv;
    let sum = 0;
    for (let i = 0; uv && i < uv.count; i += 3) {
      const [a, b, c] = [0, 1, 2].map(k => [uv.getX(i + k), uv.getY(i + k)]);
      sum += Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
    }
    return sum;
  };
  const cut = viewer.house.views.filter(v => v.cut.length);
  return { plane: viewer.house.plane, areas: viewer.house.areas(),
           filled: Object.fromEntries(cut.map(v => [v.part.id, filled(v)])) };
}"""


@pytest.fixture
def desk(browser, house_file):
    page = opened(browser, house_file, *SCREENS[1])
    yield page
    assert page.wrong == []
    page.context.close()


def test_cut_faces_have_the_areas_the_engine_cuts(desk):
    work = job(demo().read_text(encoding="utf-8"))
    assert compared(desk, work, 25) > 200


def test_so_they_have_of_a_design_whose_parts_have_moved_since(desk):
    """A deeper footing: its drain and stone only stand lower, wall and floor stay."""
    text = demo().read_text(encoding="utf-8")
    work = job(text.replace('thickness = "12 in"', 'thickness = "14 in"', 1))
    desk.evaluate("model => bedcourse.load(model)", model(work))
    assert compared(desk, work, 5) > 40


def compared(desk, work, cuts):
    """Hold cuts at random against the engine's; return how many faces there were."""
    dice = random.Random(7)  # noqa: S311
    seen = 0
    for _ in range(cuts):
        asked = [dice.choice(["x", "y", "side 0", "side 1"]), dice.uniform(0.02, 0.98),
                 dice.choice([0, 0, 5, 30, -45]), dice.random() < 0.5]  # fmt: skip
        found = desk.evaluate(CUT, asked)
        (nx, ny, _), at = found["plane"]["normal"], found["plane"]["at"]
        x, y = at * nx, at * ny
        line = CutLine((x + ny * FAR_M, y - nx * FAR_M), (x - ny * FAR_M, y + nx * FAR_M))
        wanted = {f.label.part: f.shape.area for f in cut(work.foundation.solids, line)}
        for part, area in wanted.items():
            got = found["areas"].get(part, 0.0)
            assert got == pytest.approx(area, rel=1e-3, abs=1e-7), (asked, part)
            assert found["filled"].get(part, 0.0) == pytest.approx(area, rel=1e-3, abs=1e-6)
            seen += 1
        assert set(found["areas"]) - set(wanted) <= {"ground/undisturbed"}
    return seen


def test_named_cuts_are_those_of_the_drawings(desk):
    work = job(demo().read_text(encoding="utf-8"))
    buttons = desk.locator("#cut .row button")
    assert buttons.count() == len(work.cuts)
    for number, line in enumerate(work.cuts.values()):
        buttons.nth(number).click()
        rest(desk)
        areas = desk.evaluate("bedcourse.viewer.house.areas()")
        faces = {f.label.part: f.shape.area for f in cut(work.foundation.solids, line)}
        assert areas["footing"] == pytest.approx(faces["footing"], rel=1e-3)


def test_all_is_reached_and_done_by_keys(desk):
    desk.locator("#picture canvas").focus()
    begin = stand(desk)
    desk.keyboard.press("ArrowLeft")
    desk.keyboard.press("ArrowUp")
    turned = stand(desk)
    assert turned[0] != begin[0]
    assert turned[1] > begin[1]
    desk.keyboard.press("Shift+ArrowRight")
    assert stand(desk)[3:] != turned[3:]
    desk.keyboard.press("+")
    assert stand(desk)[2] < begin[2]
    desk.keyboard.press("f")
    rest(desk)
    assert stand(desk)[1] == 0
    desk.keyboard.press("Home")
    rest(desk)
    assert stand(desk)[1] > 10
    reached = set()
    for _ in range(150):
        desk.keyboard.press("Tab")
        name = desk.evaluate("document.activeElement.id || document.activeElement.className")
        reached.add(name)
        ring = desk.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        assert ring != "none" or name == "", name
    for name in ("view-face", "cut-at", "apart", "stage-next", "cut-along", "cut-flip", "group-by",
                 "language", "theme", "print"):  # fmt: skip
        assert name in reached, name
    desk.locator("#stage-back").focus()
    desk.keyboard.press("Enter")
    desk.keyboard.press("Enter")
    stages = desk.evaluate("bedcourse.viewer.house.model.stages.length")
    assert state(desk)["stage"] == stages - 2
    # The controls were made anew twice, and the focus stayed.
    assert desk.evaluate("document.activeElement.id") == "stage-back"


def test_a_chosen_part_is_let_go_by_escape(desk):
    desk.locator("[data-choose='footing']").focus()
    desk.keyboard.press("Enter")
    assert state(desk)["picked"] == "footing"
    desk.locator("#picture canvas").focus()
    desk.keyboard.press("Escape")
    assert state(desk)["picked"] is None


@pytest.mark.skipif(not AXE.exists(), reason="npm ci in viz/viewer brings axe-core")
@pytest.mark.parametrize(("width", "theme"), [(390, "light"), (390, "contrast"), (1280, "dark")])
def test_no_serious_fault_for_readers_of_screens(browser, house_file, width, theme):
    page = opened(browser, house_file, width, 900)
    page.locator("#theme").select_option(theme)
    page.locator("#stage-back").click()
    page.locator("[data-choose='footing']").click()
    page.locator("#view-detail").click()
    rest(page)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run()")
    grave = [
        (fault["id"], [node["target"] for node in fault["nodes"]][:3])
        for fault in found["violations"]
        if fault["impact"] in ("serious", "critical")
    ]
    assert grave == []
    assert page.wrong == []
    page.context.close()


def test_a_screen_reader_finds_every_part_with_its_figures(desk):
    work = job(demo().read_text(encoding="utf-8"))
    rows = desk.locator("#figures table").last.locator("tbody tr")
    parts = {part["full"]["en"] for part in model(work)["parts"]}
    said = {row.split("\t")[0].split("  ")[0] for row in rows.all_inner_texts()}
    assert rows.count() == len(parts)
    assert all(any(words.startswith(part) for words in said) for part in parts)


def test_another_state_of_the_design_keeps_camera_cut_and_choices(browser, house_file, tmp_path):
    thicker = demo().read_text(encoding="utf-8").replace('thickness = "4 in"', 'thickness = "5 in"')
    record = model(job(thicker))
    frame = tmp_path / "around.html"
    frame.write_text(f'<iframe src="{house_file.as_uri()}" width="1200" height="880"></iframe>')
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    page.goto(frame.as_uri())
    inner = page.frames[1]
    inner.wait_for_selector("#picture[data-moving=false]")
    inner.evaluate(
        "() => { bedcourse.store.set({ hidden: new Set(['drain/wrap']), picked: 'basement/slab' });"
        "bedcourse.viewer.eye.put({ round: 12, down: 41, metresPerPixel: 0.007 });"
        "bedcourse.viewer.moved(); }"
    )
    old = [inner.evaluate("bedcourse.store.state.cut"), inner.evaluate(STAND)]
    slab = inner.locator("#part").inner_text()
    page.evaluate("model => frames[0].postMessage({ bedcourse: 'load', model }, '*')", record)
    page.wait_for_timeout(1500)
    assert [inner.evaluate("bedcourse.store.state.cut"), inner.evaluate(STAND)] == old
    assert inner.evaluate("[...bedcourse.store.state.hidden]") == ["drain/wrap"]
    assert inner.locator("#part").inner_text() != slab
    tops = inner.evaluate(
        "bedcourse.viewer.house.views.filter(v => v.part.id === 'basement/slab')"
        ".map(v => [v.low.z, v.high.z])"
    )
    (slab_,) = (s for s in job(thicker).foundation.solids if s.label.part == "basement/slab")
    assert tops == [pytest.approx([slab_.vertices[:, 2].min(), slab_.vertices[:, 2].max()])]
    page.close()


STAND = """() => { const s = bedcourse.viewer.eye.stand;
  return [s.round, s.down, s.metresPerPixel, ...s.target.toArray()]; }"""


def test_where_nothing_can_be_drawn_the_still_picture_stands(browser, house_file):
    page = browser.new_page()
    page.add_init_script("HTMLCanvasElement.prototype.getContext = () => null")
    page.goto(house_file.as_uri())
    assert page.locator("#still img").first.is_visible()
    assert not page.locator("#desk").is_visible()
    page.close()


def test_print_and_no_script_say_something(desk, browser, house_file):
    desk.emulate_media(media="print")
    desk.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    assert desk.locator("#printed").is_visible()
    assert desk.evaluate("document.querySelector('#printed').src.length") > 10_000
    assert not desk.locator("#controls").is_visible()
    assert desk.get_by_text("competent person").first.is_visible()
    still = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844})
    page = still.new_page()
    page.goto(house_file.as_uri())
    assert page.locator("#still img").first.is_visible()
    assert not page.locator("#desk").is_visible()
    assert page.locator("#figures").is_visible()
    still.close()
