"""Manning's n of drain pipe, each row with its source."""

from dataclasses import dataclass

from geometry.sources import Source

_AUSTIN = Source("City of Austin Drainage Criteria Manual", clause="5.3.4, Table 5-2")
_WINCHESTER = Source("City of Winchester, Indiana, code", clause="Table 4, crediting FHWA")
_FAA = Source("FAA, in Horonjeff, Planning and Design of Airports", clause="Table 9-10")
_NEH_650 = Source("NRCS NEH 650.14 and practice 606", sure="memory")
_MAKERS = Source("pipe makers and sewer practice, clean water", sure="memory")


@dataclass(frozen=True)
class Roughness:
    """One row: what the pipe is, and Manning's n in s/m^(1/3)."""

    key: str
    name: str
    n: float
    source: Source


ROWS = (
    Roughness("pvc-new", "PVC, new, clean water", 0.009, _MAKERS),
    Roughness("smooth", "smooth-wall plastic", 0.010, _AUSTIN),
    Roughness("smooth-perforated", "smooth-wall plastic, perforated", 0.020, _AUSTIN),
    Roughness("pvc", "PVC", 0.010, _WINCHESTER),
    Roughness("pe-smooth", "polyethylene, smooth inside", 0.011, _WINCHESTER),
    Roughness("concrete", "concrete or clay, good joints", 0.013, _FAA),
    Roughness("metal-corrugated", "corrugated metal, unpaved", 0.024, _FAA),
    Roughness("pe-corrugated-8", "corrugated polyethylene, 3 to 8 in", 0.015, _NEH_650),
    Roughness("pe-corrugated-12", "corrugated polyethylene, 10 to 12 in", 0.017, _NEH_650),
    Roughness("pe-corrugated-15", "corrugated polyethylene, over 12 in", 0.020, _NEH_650),
)
