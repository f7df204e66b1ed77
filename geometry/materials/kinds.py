"""The shape of a material row: what one can buy or dig, each figure with its source.

Lengths are in metres, densities in kg/m3, stresses in kPa unless a name says otherwise.
`None` means that no figure was found: a check must say so, never guess.
"""

from dataclasses import dataclass
from math import pi
from typing import Literal

from geometry.sources import Source

Kind = Literal[
    "stone", "sand", "sheet", "board", "concrete", "fabric", "pipe", "soil", "plastic", "bar"
]
E1745Class = Literal["A", "B", "C"]
DrainageGroup = Literal["I", "II", "III", "IV"]
ReactionClass = Literal["crushed rock", "clean coarse", "coarse with fines", "lean fine", "none"]


@dataclass(frozen=True, kw_only=True)
class Material:
    """One row: the key typed in a design file, a name for people, and where it comes from.

    `source` covers the figures a drawing depends on and is as sure as the weakest of them;
    `also` names the sources of single other figures, each saying which in its clause.
    """

    key: str
    name: str
    kind: Kind
    source: Source
    also: tuple[Source, ...] = ()


@dataclass(frozen=True)
class Passing:
    """Band of the share passing one sieve: opening in metres, shares from 0 to 1."""

    sieve_m: float
    low: float
    high: float


@dataclass(frozen=True, kw_only=True)
class Aggregate(Material):
    """Stone or sand: loose density as a range, voids share, and the grading band.

    `reaction_class` is its class beside a buried pipe (`reaction.py`).
    """

    loose_density_low: float
    loose_density_high: float
    porosity: float | None
    with_fines: bool
    grading: tuple[Passing, ...] = ()
    reaction_class: ReactionClass | None = None

    @property
    def fine_edge(self) -> tuple[tuple[float, float], ...]:
        """The finest curve the band allows, (sieve in metres, share passing)."""
        return tuple((row.sieve_m, row.high) for row in self.grading)

    @property
    def coarse_edge(self) -> tuple[tuple[float, float], ...]:
        """The coarsest curve the band allows, (sieve in metres, share passing)."""
        return tuple((row.sieve_m, row.low) for row in self.grading)


@dataclass(frozen=True, kw_only=True)
class Sheet(Material):
    """A thin sheet: under-slab vapor retarder or wall waterproofing.

    `permeance_perm` is in US perms. For an E1745 class it is the limit of the class, for
    plain sheet the printed figure of one sheet.
    """

    kind: Literal["sheet"] = "sheet"
    use: Literal["vapor retarder", "waterproofing"]
    thickness_m: float
    permeance_perm: float | None
    e1745_class: E1745Class | None = None
    tensile_n_per_m: float | None = None
    puncture_kg: float | None = None


@dataclass(frozen=True, kw_only=True)
class Board(Material):
    """Rigid foam board.

    `strength_kpa` is the stress at 10 % strain or yield, `strain1_kpa` that at 1 % strain,
    the usual limit for a load that stays. `r_per_m` is thermal resistance in m2K/W per metre
    of thickness. `permeability_perm_in` is the permeance of a 1 in board in US perms.
    `foundation_modulus` holds (thickness in m, N/m3) pairs.
    """

    kind: Literal["board"] = "board"
    strength_kpa: float
    r_per_m: float
    density_kg_m3: float | None
    water_absorption: float | None
    permeability_perm_in: float | None
    width_m: float
    length_m: float
    thicknesses_m: tuple[float, ...]
    strain1_kpa: float | None = None
    foundation_modulus: tuple[tuple[float, float], ...] = ()

    @property
    def conductivity_w_mk(self) -> float:
        """Thermal conductivity in W/mK."""
        return 1.0 / self.r_per_m


@dataclass(frozen=True, kw_only=True)
class Concrete(Material):
    """Concrete; `strength_kpa` is the specified cylinder strength, None where not stated.

    `r_per_m` is thermal resistance in m2K/W per metre of thickness.
    """

    kind: Literal["concrete"] = "concrete"
    density_kg_m3: float
    strength_kpa: float | None
    r_per_m: float


@dataclass(frozen=True, kw_only=True)
class Fabric(Material):
    """Drainage fabric of polypropylene, nonwoven unless `woven`.

    `opening_m` is the apparent opening size (O95), `permittivity_per_s` flow per area and
    head, `grab_n` grab strength. `m288_class` is the best AASHTO M 288 strength class the
    grab strength reaches, None where it reaches none.
    """

    kind: Literal["fabric"] = "fabric"
    thickness_m: float
    mass_kg_m2: float
    opening_m: float
    permittivity_per_s: float
    grab_n: float
    m288_class: Literal[1, 2, 3] | None
    woven: bool = False

    @property
    def permeability_m_s(self) -> float:
        """Permeability across the fabric in m/s, permittivity times thickness."""
        return self.permittivity_per_s * self.thickness_m

    @property
    def porosity(self) -> float:
        """Share of voids, polypropylene at 910 kg/m3 (from memory)."""
        return 1.0 - self.mass_kg_m2 / (910.0 * self.thickness_m)


@dataclass(frozen=True)
class Perforation:
    """Rows of round holes: each row's angle in degrees from straight down, the hole's
    diameter, and the spacing along the pipe within a row (metres)."""

    angles_deg: tuple[float, ...]
    hole_diameter_m: float
    spacing_m: float
    source: Source

    @property
    def inlet_area_per_m(self) -> float:
        """Open area in m2 per metre of pipe."""
        return len(self.angles_deg) * pi / 4 * self.hole_diameter_m**2 / self.spacing_m


@dataclass(frozen=True, kw_only=True)
class Pipe(Material):
    """Drain pipe.

    The inside diameter is the average outside diameter less two MINIMUM walls, so it is a
    maximum: real walls are a little thicker. For corrugated pipe `wall_m` is the depth of the
    corrugation. `perforation` is the pattern of the pipe when bought perforated, None where
    the standard has none. `stiffness_kpa` is pipe stiffness at 5 % (ASTM D2412 sense).
    `manning_n` is the roughness of the clean pipe, unperforated; `manning_perforated` what a
    published table asks of the same pipe with holes. `modulus_kpa` is the least short-term
    modulus of the wall's plastic, for solid walls whose standard states no stiffness.
    """

    kind: Literal["pipe"] = "pipe"
    standard: str
    outside_diameter_m: float
    wall_m: float
    perforation: Perforation | None
    stiffness_kpa: float | None
    manning_n: float
    corrugated: bool = False
    manning_perforated: float | None = None
    modulus_kpa: float | None = None

    @property
    def inside_diameter_m(self) -> float:
        """Outside diameter less two minimum walls, in metres."""
        return self.outside_diameter_m - 2 * self.wall_m


@dataclass(frozen=True, kw_only=True)
class Soil(Material):
    """A soil group of the Unified Soil Classification (ASTM D2487).

    Presumptive figures only: they hold where no soil report speaks. `density_kg_m3` is moist
    in place, `friction_angle_deg` the Rankine angle of `active_coefficient`. Lateral loads
    are equivalent fluid weights in N/m3. `bearing_pa` is allowable. `permeability_m_s` is
    (low, high), high None where the source gives only a floor. `fines` is the band of the
    share passing No. 200, `swell` the growth from in-place to loose volume.

    `compacted_friction_deg` and `dry_density_kg_m3` (low, high) are typical of soil compacted
    to its best, `saturated_density_kg_m3` the same with its voids full of water;
    `friction_range_deg` runs from loose to dense in place. `wall_table_load_n_m3` is the fluid
    weight by which the IRC's wall tables are entered. `conductivity_w_mk` is for heat, W/mK.
    `reaction_class` is the class beside a buried pipe (`reaction.py`).
    """

    kind: Literal["soil"] = "soil"
    group: str | None
    drainage_group: DrainageGroup | None = None
    density_kg_m3: float | None = None
    active_coefficient: float | None = None
    friction_angle_deg: float | None = None
    active_load_n_m3: float | None = None
    at_rest_load_n_m3: float | None = None
    bearing_pa: float | None = None
    permeability_m_s: tuple[float, float | None] | None = None
    fines: tuple[float, float] | None = None
    swell: float | None = None
    friction_range_deg: tuple[float, float] | None = None
    compacted_friction_deg: float | None = None
    dry_density_kg_m3: tuple[float, float] | None = None
    saturated_density_kg_m3: tuple[float, float] | None = None
    wall_table_load_n_m3: float | None = None
    conductivity_w_mk: float | None = None
    reaction_class: ReactionClass | None = None


@dataclass(frozen=True, kw_only=True)
class Plastic(Material):
    """Solid plastic of basins, lids and fittings."""

    kind: Literal["plastic"] = "plastic"
    density_kg_m3: float


@dataclass(frozen=True, kw_only=True)
class Bar(Material):
    """Deformed reinforcing bar: nominal sizes; order by the tabulated mass, not area x steel."""

    kind: Literal["bar"] = "bar"
    diameter_m: float
    area_m2: float
    mass_kg_m: float
