"""US test sieves by their numbers, openings in metres.

ASTM E11 (2001), Table 1, from memory; No. 4 to No. 7 seen second-hand.
"""

from collections.abc import Mapping
from types import MappingProxyType

_MM = {
    4: 4.75, 5: 4.00, 6: 3.35, 7: 2.80, 8: 2.36, 10: 2.00, 12: 1.70, 14: 1.40, 16: 1.18, 18: 1.00,
    20: 0.850, 25: 0.710, 30: 0.600, 35: 0.500, 40: 0.425, 45: 0.355, 50: 0.300, 60: 0.250,
    70: 0.212, 80: 0.180, 100: 0.150, 120: 0.125, 140: 0.106, 170: 0.090, 200: 0.075, 230: 0.063,
    270: 0.053, 325: 0.045, 400: 0.038,
}  # fmt: skip

SIEVES_M: Mapping[int, float] = MappingProxyType({no: mm / 1000 for no, mm in _MM.items()})
"""Opening of a sieve by its number."""
