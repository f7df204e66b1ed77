import re

import pytest
from basement_of_boxes import basement

from geometry.errors import BedcourseError
from viz.scene.orbit import orbit_page

SOLIDS = basement()


def test_the_page_loads_nothing_and_escapes_its_title():
    page = orbit_page(SOLIDS, "Lot 7 <north> & garage")
    assert "<title>Lot 7 &lt;north&gt; &amp; garage</title>" in page
    assert not re.search(r"<(?:script|link|img|iframe)[^>]+(?:src|href)=", page)
    assert "@import" not in page


def test_leaving_everything_out_is_refused_in_a_sentence():
    with pytest.raises(BedcourseError, match="nothing to turn"):
        orbit_page(SOLIDS, "x", without={solid.label.role for solid in SOLIDS})


@pytest.mark.browser
@pytest.mark.parametrize("size", [(390, 700), pytest.param((900, 600), marks=pytest.mark.slow)])
def test_it_draws_offline_with_z_up_and_stays_level(tmp_path, browser, size):
    page_file = tmp_path / "orbit.html"
    page_file.write_text(orbit_page(SOLIDS, "Invented basement"), encoding="utf-8")
    page = browser.new_page(viewport={"width": size[0], "height": size[1]})
    asked, wrong = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto(page_file.as_uri())
    page.wait_for_selector("body[data-drawn]")
    before = page.screenshot()
    page.mouse.move(200, 300)
    page.mouse.down()
    page.mouse.move(280, 330, steps=4)
    page.mouse.up()
    up, box, drawn = page.evaluate(
        "[camera.up.toArray(), (b => [b.min.toArray(), b.max.toArray()])"
        "(new THREE.Box3().setFromObject(scene)), +document.body.dataset.drawn]"
    )
    after = page.screenshot()
    page.close()
    assert asked == [page_file.as_uri()]
    assert wrong == []
    assert up == [0, 1, 0]
    assert drawn == len({s.label.part for s in SOLIDS} - {"soil", "hole"})
    assert box[0][1] == pytest.approx(-0.304, abs=1e-4)  # our z is the page's y
    assert box[1][1] == pytest.approx(2.4, abs=1e-4)
    assert before != after
