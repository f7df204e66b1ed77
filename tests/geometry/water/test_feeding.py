"""Which drains bring their water to the one in view, and which of them meet rain and ground."""

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.water.feeding import catching, feeders, share_of
from tests.whole.networks import network


def view_of(layout: Layout, area: str, line: str = "outside") -> tuple[Layout, DrainLayout]:
    """The house with its drain of that area and line in view."""
    (found,) = (
        (view, view.drain) for view in layout.views()
        if view.drain and (view.drain.area.name, view.drain.drain.line) == (area, line)
    )  # fmt: skip
    return found


def test_an_upper_drain_over_lower_stone_feeds_the_lower_one() -> None:
    layout = lay_out(network("upper to lower stone"))
    lower, upper = view_of(layout, "basement"), view_of(layout, "garage")
    assert feeders(lower[0]) == (upper[1],)
    assert feeders(upper[0]) == ()
    assert catching(lower[0]) == (lower[1], upper[1])
    assert catching(upper[0]) == (upper[1],)


def test_of_two_drains_along_one_footing_the_outer_one_meets_the_rain() -> None:
    # The outer one empties through the footing into the inner one, and that into the pit.
    layout = lay_out(network("both to the pit"))
    inner, outer = view_of(layout, "basement", "inside"), view_of(layout, "basement")
    assert feeders(inner[0]) == (outer[1],)
    assert catching(inner[0]) == (outer[1],)
    assert (feeders(outer[0]), catching(outer[0])) == ((), (outer[1],))


def test_drains_with_outlets_of_their_own_feed_nobody() -> None:
    layout = lay_out(network("upper to daylight"))
    for area in ("basement", "garage"):
        view, drain = view_of(layout, area)
        assert (feeders(view), catching(view)) == ((), (drain,))
        assert sum(share_of(drain, low) for low in drain.lows) == 1


def test_without_a_drain_nothing_is_fed() -> None:
    bare = lay_out(network("inside").model_copy(update={"drains": (), "sump": None}))
    assert (feeders(bare), catching(bare)) == ((), ())
