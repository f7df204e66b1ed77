"""The 3D page in a real browser, on a phone's and a desk's screen: every control, no network."""

import itertools
import math

import pytest
from shapely import LineString

from tests.browser.viewerpage import crossing, leaders, opened, rest, stand, state
from tests.conftest import CHROMIUM

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

SCREENS = [(390, 844), (1280, 900)]
LABELLED = ".label b, .label small, .numeral"


@pytest.fixture(params=SCREENS, ids=lambda size: f"{size[0]} wide")
def page(request, browser, house_file):
    width, height = request.param
    found = opened(browser, house_file, width, height, has_touch=width < 500)
    yield found
    assert found.wrong == []
    found.context.close()


@pytest.fixture
def phone(browser, house_file):
    found = opened(browser, house_file, *SCREENS[0], has_touch=True)
    yield found
    assert found.wrong == []
    found.context.close()


def places(page):
    """Whether leaders cross each other, and whether labels cover each other."""
    assert crossing(page, LABELLED) == []
    lines = [LineString(points) for points in leaders(page)]
    return [
        (list(a.coords), list(b.coords))
        for a, b in itertools.combinations(lines, 2)
        if a.crosses(b)
    ]


def test_the_page_opens_fits_a_phone_and_asks_nothing(phone):
    assert int(phone.get_attribute("#picture", "data-drawn")) > 20
    assert phone.evaluate("document.documentElement.scrollWidth") <= 390
    assert places(phone) == []
    phone.locator("#view-detail").tap()
    rest(phone)
    assert phone.locator(".tape > div").count() > 5
    assert crossing(phone, ".tape > div") == []


@pytest.mark.slow
def test_labels_cover_nothing_in_every_view(page):
    for view in ("whole", "face", "detail", "below"):
        page.locator(f"#view-{view}").click()
        rest(page)
        assert page.locator(".label").count() > 3, view
        assert places(page) == [], view
        assert crossing(page, ".tape > div") == [], view
        box = page.locator("#picture").bounding_box()
        for label in page.locator(".label").all():
            spot = label.bounding_box()
            assert spot["x"] >= box["x"] - 1
            assert spot["x"] + spot["width"] <= box["x"] + box["width"] + 1
    page.get_by_role("button", name="Labels", exact=True).click()
    rest(page)
    assert page.locator(".label").count() == 0


@pytest.mark.slow
def test_views_stand_where_they_say(page):
    page.locator("#view-face").click()
    rest(page)
    facing = stand(page)
    assert facing[1] == 0
    normal = page.evaluate("bedcourse.viewer.house.plane.normal")
    turn = math.radians(facing[0])
    assert (math.cos(turn), math.sin(turn)) == pytest.approx(normal[:2], abs=1e-9)
    page.locator("#view-detail").click()
    rest(page)
    # Two inches of foam are to be seen: more than six pixels on a phone.
    assert 0.0508 / stand(page)[2] > 6
    page.locator("#view-below").click()
    rest(page)
    assert stand(page)[1] < -20
    shown = page.evaluate(
        "() => bedcourse.viewer.house.views.filter(v => v.show === 'solid').map(v => v.part.role)"
    )
    assert "pipe" in shown
    assert not {"wrap", "drain stone"} & set(shown)
    page.locator("#view-whole").click()
    rest(page)
    assert stand(page)[1] > 10


@pytest.mark.slow
def test_mouse_wheel_and_fingers_turn_move_and_zoom(page):
    box = page.locator("#picture canvas").bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    start = stand(page)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 60, y + 30, steps=3)
    page.mouse.up()
    turned = stand(page)
    assert turned[0] != start[0]
    assert turned[1] > start[1]
    assert turned[2:] == start[2:]
    page.mouse.wheel(0, -300)
    page.wait_for_timeout(200)
    assert stand(page)[2] < turned[2]
    hand = page.context.new_cdp_session(page)

    def touch(kind, *points):
        spots = [{"x": px, "y": py, "id": n} for n, (px, py) in enumerate(points)]
        hand.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

    before = stand(page)
    touch("touchStart", (x - 40, y), (x + 40, y))
    touch("touchMove", (x - 80, y + 20), (x + 80, y + 20))
    touch("touchEnd")
    page.wait_for_timeout(200)
    pinched = stand(page)
    assert pinched[2] == pytest.approx(before[2] / 2, rel=0.05)
    assert pinched[:2] == before[:2]
    assert pinched[3:] != before[3:]


@pytest.mark.slow
def test_a_part_is_tapped_read_and_taken_off(page):
    page.locator("#view-detail").click()
    rest(page)
    spot = page.evaluate(
        """() => { const { seen } = bedcourse.viewer, { parts } = bedcourse.viewer.house.model;
      const number = parts.findIndex(p => p.id === 'footing') + 1;
      const all = [...seen.part.keys()].filter(n => seen.part[n] === number);
      const at = all[all.length >> 1];
      return [(at % seen.width + 0.5) * seen.size, (Math.floor(at / seen.width) + 0.5) * seen.size];
    }"""
    )
    page.locator("#picture canvas").click(position={"x": spot[0], "y": spot[1]})
    card = page.locator("#part")
    assert state(page)["picked"] == "footing"
    words = card.inner_text()
    for said in ("Strip footing", '20" × 12"', "yd³", "-1'-0\"", "ft"):
        assert said in words
    before = int(page.get_attribute("#picture", "data-drawn"))
    card.get_by_role("button", name="Take this part off").click()
    rest(page)
    assert state(page)["hidden"] == ["footing"]
    assert int(page.get_attribute("#picture", "data-drawn")) == before - 1
    page.get_by_role("checkbox", name="Show Strip footing").check()
    assert state(page)["hidden"] == []


@pytest.mark.slow
def test_parts_go_by_group_and_by_kind(page):
    page.get_by_label("In groups by").select_option("role")
    page.get_by_role("checkbox", name="slab", exact=True).uncheck()
    assert sorted(state(page)["hidden"]) == ["basement/slab", "garage/slab"]
    page.get_by_role("button", name="All off").click()
    rest(page)
    assert page.get_attribute("#picture", "data-drawn") == "0"
    page.get_by_role("button", name="All on").click()
    assert state(page)["hidden"] == []
    page.locator("[data-choose='drain/pipe']").click()
    assert state(page)["picked"] == "drain/pipe"
    assert "holes down" in page.locator("#part").inner_text()


@pytest.mark.slow
def test_the_cut_moves_turns_and_looks_from_the_other_side(page):
    cuts = page.locator("#cut .row button")
    assert cuts.count() == 3
    cuts.nth(2).click()
    rest(page)
    assert state(page)["cut"]["along"] == "y"
    page.locator("#cut-along").select_option("side 1")
    rest(page)
    before = page.evaluate("bedcourse.viewer.house.areas()")
    page.locator("#cut-at").focus()
    for _ in range(20):
        page.keyboard.press("ArrowRight")
    rest(page)
    assert page.evaluate("bedcourse.viewer.house.areas()") != before
    normal = page.evaluate("bedcourse.viewer.house.plane.normal")
    page.locator("#cut-flip").click()
    rest(page)
    turned = page.evaluate("bedcourse.viewer.house.plane.normal")
    assert turned[:2] == pytest.approx([-n for n in normal[:2]])
    page.locator("#cut-turn").focus()
    page.keyboard.press("ArrowRight")
    angle = math.degrees(math.atan2(*page.evaluate("bedcourse.viewer.house.plane.normal")[1::-1]))
    was = math.degrees(math.atan2(turned[1], turned[0]))
    assert (angle - was) % 360 == pytest.approx(5)
    page.locator("#cut-along").select_option("none")
    rest(page)
    assert page.evaluate("bedcourse.viewer.house.areas()") == {}


@pytest.mark.slow
def test_parts_pull_apart_in_build_order(page):
    page.locator("#apart").focus()
    page.keyboard.press("End")
    rest(page)
    lifts = page.evaluate(
        """() => Object.fromEntries(bedcourse.viewer.house.views.map(
          v => [v.part.id, v.group.position.z]))"""
    )
    order = ("footing", "drain/wrap", "drain/stone", "basement/stone", "basement/foam",
             "basement/slab")  # fmt: skip
    assert all(lifts[a] < lifts[b] for a, b in itertools.pairwise(order))
    assert page.get_attribute("#apart", "aria-valuetext") == "100 %"


@pytest.mark.slow
def test_stages_are_stepped_through_with_their_words(page):
    page.get_by_role("button", name="Footings and walls stand").click()
    rest(page)
    bare = int(page.get_attribute("#picture", "data-drawn"))
    seen = []
    for _ in range(4):
        page.locator("#stage-next").click()
        rest(page)
        seen.append(int(page.get_attribute("#picture", "data-drawn")))
        assert page.locator(".card").inner_text()
    assert [bare, *seen] == sorted([bare, *seen])
    assert seen[-1] > bare
    show = "() => bedcourse.viewer.house.views.filter(v => v.show === 'ghost').length"
    assert page.evaluate(show) > 5
    page.locator("#later").select_option("hidden")
    rest(page)
    assert page.evaluate(show) == 0
    page.locator("#stage-back").click()
    assert "3 " in page.locator(".courses [aria-current]").inner_text()
    assert page.get_by_text("Holes DOWN").count() or page.get_by_text("holes down").count()


@pytest.mark.slow
def test_the_page_speaks_spanish_and_changes_its_tones(page):
    page.locator("#language").select_option("es")
    assert page.get_attribute("html", "lang") == "es"
    assert page.get_by_role("button", name="Corte de frente").count() == 1
    assert page.get_by_text("Zapata", exact=False).count() > 0
    assert page.locator("section.figures [lang=en]:visible").count() == 0
    tones = set()
    for theme in ("light", "dark", "contrast"):
        page.locator("#theme").select_option(theme)
        rest(page)
        tones.add(page.evaluate("getComputedStyle(document.body).backgroundColor"))
        assert page.evaluate("'#' + bedcourse.viewer.house.scene.background.getHexString()")
    assert len(tones) == 3
    page.locator("#ground").select_option("whole")
    rest(page)
    shown = "() => bedcourse.viewer.house.views.filter(v => v.show === 'solid' && v.part.earth)"
    assert page.evaluate(f"({shown})().length") >= 2


@pytest.mark.slow
def test_the_system_s_wishes_are_followed(browser, house_file):
    page = opened(browser, house_file, *SCREENS[1], color_scheme="dark")
    assert page.get_attribute("html", "data-theme") == "dark"
    page.locator("#view-face").click()
    # Without gliding the picture stands at once.
    assert stand(page)[1] == 0
    page.emulate_media(color_scheme="light", contrast="more")
    rest(page)
    assert page.get_attribute("html", "data-theme") == "contrast"
    assert page.wrong == []
    page.context.close()
