"""Which class of IFC4 each part is, by its role.

IFC4 has no earthworks (they come with IFC4.3) and no drainage stone: stone and fill are building
element proxies with an object type, moved soil is a geographic element. A base course or sand
under a slab is a part of the floor's assembly. The drain's fabric lets water through, so it is no
MEMBRANE, which IFC4 calls impervious; a cap is neither ENTRY nor EXIT, for nothing passes it.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.label import Role
from geometry.materials.kinds import Pipe


@dataclass(frozen=True)
class Kind:
    """A class of IFC4, its predefined type, and the object type in words."""

    ifc: str
    predefined: str
    words: str = ""


def _own(ifc: str, words: str) -> Kind:
    return Kind(ifc, "USERDEFINED", words)


_SEGMENT = "IfcPipeSegment"
_PROXY = "IfcBuildingElementProxy"
_LAYER = "IfcBuildingElementPart"

_KINDS: Mapping[Role, Kind] = {
    "footing": Kind("IfcFooting", "STRIP_FOOTING"),
    "pad": Kind("IfcFooting", "PAD_FOOTING"),
    "wall": Kind("IfcWall", "SOLIDWALL"),
    "column": Kind("IfcColumn", "COLUMN"),
    "slab": Kind("IfcSlab", "BASESLAB"),
    "insulation": Kind("IfcCovering", "INSULATION"),
    "edge board": Kind("IfcCovering", "INSULATION", "EDGE BOARD"),
    "retarder": Kind("IfcCovering", "MEMBRANE", "VAPOR RETARDER"),
    "base": _own(_LAYER, "BASE COURSE"),
    "blinding": _own(_LAYER, "BLINDING"),
    "fill": _own(_PROXY, "FILL"),
    "pipe": Kind(_SEGMENT, "RIGIDSEGMENT", "PERFORATED PIPE"),
    "lead": Kind(_SEGMENT, "RIGIDSEGMENT", "SOLID PIPE"),
    "cleanout": Kind(_SEGMENT, "RIGIDSEGMENT", "CLEANOUT RISER"),
    "bleeder": Kind(_SEGMENT, "RIGIDSEGMENT", "BLEEDER"),
    "sleeve": _own(_SEGMENT, "SLEEVE"),
    "drain stone": _own(_PROXY, "DRAIN STONE"),
    "pit stone": _own(_PROXY, "PIT STONE"),
    "wall stone": _own(_PROXY, "WALL STONE"),
    "wrap": _own("IfcCovering", "FILTER FABRIC"),
    "basin": Kind("IfcDistributionChamberElement", "SUMP"),
    "lid": _own(_PROXY, "SUMP LID"),
    "vent": Kind(_SEGMENT, "RIGIDSEGMENT", "SOIL GAS VENT"),
    "backfill": _own("IfcGeographicElement", "BACKFILL"),
    "grading": _own("IfcGeographicElement", "FINISHED GRADE"),
}
# What a floor's assembly is made of: its layers, its edge board and the fill under it.
LAYERS: frozenset[Role] = frozenset(
    {"base", "blinding", "fill", "retarder", "insulation", "slab", "edge board"}
)
FITTINGS: Mapping[str, Kind] = {
    "bend": Kind("IfcPipeFitting", "BEND"),
    "tee": Kind("IfcPipeFitting", "JUNCTION", "TEE"),
    "cap": _own("IfcPipeFitting", "CAP"),
}


def kind_of(role: Role) -> Kind:
    """Return the class of a part. Raises KeyError for the hole, which is no part."""
    return _KINDS[role]


def segment(role: Role, pipe: Pipe) -> Kind:
    """Return the class of a length of pipe: corrugated pipe bends, other pipe is stiff."""
    kind = kind_of(role)
    if pipe.corrugated and kind.predefined == "RIGIDSEGMENT":
        return Kind(kind.ifc, "FLEXIBLESEGMENT", kind.words)
    return kind
