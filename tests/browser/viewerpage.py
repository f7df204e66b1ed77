"""The 3D page of the demo on disk, opened in a browser that writes down what goes wrong."""

from tests.browser.conftest import PATIENCE

RESTED = "#picture[data-moving=false]"


def rest(page):
    """Wait until the picture has come to rest: the last change drawn, labels placed."""
    page.wait_for_timeout(60)
    page.wait_for_selector(RESTED, timeout=PATIENCE)


def opened(browser, file, width, height, **more):
    """Open the page; `page.wrong` holds errors, and every request but that for the file itself."""
    # Without gliding from view to view, so that a test waits for nothing.
    more = {"reduced_motion": "reduce", **more}
    context = browser.new_context(viewport={"width": width, "height": height}, **more)
    page = context.new_page()
    page.wrong = []
    page.on("console", lambda m: page.wrong.append(m.text) if m.type == "error" else None)
    page.on("pageerror", lambda error: page.wrong.append(str(error)))
    page.route("**/*", lambda route: _stopped(page, route, file.as_uri()))
    page.goto(file.as_uri())
    page.wait_for_selector(RESTED, timeout=PATIENCE)
    return page


def _stopped(page, route, own):
    if route.request.url == own:
        route.continue_()
    else:
        page.wrong.append(route.request.url)
        route.abort()


def state(page):
    """What the page says is chosen."""
    return page.evaluate(
        "() => ({...bedcourse.store.state, hidden: [...bedcourse.store.state.hidden]})"
    )


def stand(page):
    """Where the viewer stands: degrees round and down, metres a pixel, target."""
    return page.evaluate(
        "() => { const s = bedcourse.viewer.eye.stand;"
        " return [s.round, s.down, s.metresPerPixel, ...s.target.toArray()]; }"
    )


def crossing(page, selector):
    """Pairs of elements whose boxes cover each other."""
    return page.evaluate(
        """name => {
      const seen = [...document.querySelectorAll(name)].map(e => [e.textContent,
        e.getBoundingClientRect()]).filter(([, b]) => b.width > 0);
      const found = [];
      seen.forEach(([one, a], i) => seen.slice(i + 1).forEach(([other, b]) => {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (across > 1 && down > 1) { found.push(one + ' / ' + other); }
      }));
      return found;
    }""",
        selector,
    )


def leaders(page):
    """Leaders as lists of points, pixels."""
    return page.evaluate(
        """() => [...document.querySelectorAll('.leaders polyline:not(.halo)')].map(
          line => [...line.points].map(p => [p.x, p.y]))"""
    )
