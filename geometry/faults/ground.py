"""Faults of the ground: levels that leave no hole or bury the house."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.layout.ground import GroundLayout
from geometry.project import Design


def ground_faults(design: Design, ground: GroundLayout, words: Words) -> Iterator[At]:
    """Yield impossible levels of ground, grade and laser."""
    low = ground.areas[0]
    if ground.existing <= low.footing_bottom:
        yield At(
            ("excavation", "existing"),
            f"the ground at {words.level(ground.existing)} lies below the underside of the lowest footing at "
            f"{words.level(low.footing_bottom)}; check the sign and the datum",
        )
    if ground.at_wall > low.wall_top + 1e-9:
        yield At(
            ("grade", "at_wall"),
            f"the finished grade at {words.level(ground.at_wall)} buries the wall's top at {words.level(low.wall_top)}; "
            "lower the grade or raise the wall",
        )
    datum = design.datum
    if datum.instrument is not None and abs(datum.instrument - datum.top_of_footing) > 30:
        yield At(
            ("datum", "instrument"),
            "the laser stands more than 30 m (100 ft) from top of footing; give both elevations in the same system",
        )
