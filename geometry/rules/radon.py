"""Rules on the vent pipe for soil gas: IRC appendix F (AF), ANSI/AARST."""

from geometry.rules.limit import Limit
from geometry.sources import Source
from geometry.units import FOOT, INCH

_AF = Source("IRC", "2015", "appendix F, AF103.4.3, as a city's code prints it")

PLACED = Limit(
    "radon-placed", "a tee in the stone under the sheet, a pipe from it up through the roof",
    "A pipe set before the pour costs little; afterwards the slab is broken for it.", _AF, code="",
)  # fmt: skip
# Nominal 3 in pipe is 3.07 to 3.11 in inside, 4 in and 110 mm pipe 4.0 to 4.1 in.
PIPE = Limit(
    "radon-pipe-size", "a pipe of 3 or 4 in",
    "A thinner pipe draws too little air for a floor; a thicker one finds no wall to rise in.",
    _AF, least=2.85 * INCH, most=4.4 * INCH, code="",
)  # fmt: skip
FLOOR_OF_ONE = Limit(
    "radon-floor", "a pipe for every 4,000 ft2 of floor",
    "Stone far away lets too little air pass to one pipe.", _AF, most=4000 * FOOT**2, code="",
)  # fmt: skip
