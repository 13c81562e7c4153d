"""Boat: dimensions, weights, and where things sit."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers

# Where a datum lies, as a share of the waterline forward of its aft end.
DATUMS = {"aft end of the waterline": 0.0, "midships": 0.5, "fore end of the waterline": 1.0}


@dataclass(frozen=True)
class Hull:
    """Main dimensions as she floats today; lengths m, mass kg.

    ``lcb`` and ``lcf`` are fractions of the waterline from midships, forward positive.
    ``canoe_draught`` may be absent: then it follows from displacement and midship coefficient.
    """

    length_overall: Numbers
    waterline_length: Numbers
    waterline_beam_share: Numbers  # of beam
    waterline_beam: Numbers | None
    beam: Numbers
    draught: Numbers
    canoe_draught: Numbers | None
    displacement: Numbers
    canoe_share: Numbers  # canoe-body volume over total volume [-]
    prismatic_coefficient: Numbers
    midship_coefficient: Numbers  # used only when canoe_draught is absent
    waterplane_coefficient: Numbers
    bow_share: Numbers  # stem to 95 % of waterline beam, over waterline length
    lcb: Numbers
    lcf: Numbers
    keel_type: str  # fin, long
    hull_type: str  # monohull displacement; others are refused by the checks


@dataclass(frozen=True)
class Keel:
    """The fin, or the body below the canoe line of a long keel; m, m2, m3."""

    wetted_area: Numbers | None  # both sides
    wetted_area_share: Numbers  # of canoe wetted area, used when wetted_area is absent
    chord_share: Numbers  # of waterline length, used when chord is absent
    chord: Numbers | None
    thickness_ratio: Numbers
    volume: Numbers | None
    volume_share: Numbers  # of what is displaced below the canoe body, used without volume
    centre_depth: Numbers | None  # of its buoyancy below the bottom of the canoe body
    centre_share: Numbers  # of the depth from there to the keel's foot, used without it


@dataclass(frozen=True)
class Rudder:
    """Rudder and skeg; m, m2."""

    wetted_area: Numbers | None
    wetted_area_share: Numbers
    chord_share: Numbers
    chord: Numbers | None
    thickness_ratio: Numbers


@dataclass(frozen=True)
class Windage:
    """What the wind sees from ahead; m, m2. ``drag_area`` given replaces all the rest."""

    drag_area: Numbers | None
    freeboard: Numbers | None
    freeboard_share: Numbers  # of length overall
    mast_height: Numbers | None
    mast_height_share: Numbers  # of length overall
    mast_diameter_share: Numbers  # of mast height
    mast_diameter: Numbers | None
    wire_width: Numbers  # summed diameters of standing and running rigging, times mast height [m]
    furled_sail_width: Numbers  # furled headsail, m, over the mast height
    sprayhood_area: Numbers  # sprayhood, bimini, dinghy on davits, seen from ahead [m2]


@dataclass(frozen=True)
class Boat:
    """The boat, without what drives her."""

    name: str
    type: str
    year_on_market: int | None  # year first placed on the EEA or UK market
    market: str  # EEA, GB, NI, US, other
    design_category: str  # A, B, C, D, none
    hull: Hull
    keel: Keel
    rudder: Rudder
    windage: Windage
    bottom: str  # state of the underwater hull: a row of tables/hull/fouling.csv
    datum: str  # where x is measured from: a key of DATUMS


@dataclass(frozen=True)
class Waters:
    """Where she sails."""

    name: str
    kind: str  # salt, fresh
    exposure: str  # coastal, sheltered
    temperature: Numbers  # degC, of the season
    coldest: Numbers | None  # degC, lowest temperature of a battery in use; else by season_swing
    season_swing: Numbers  # K, from the season's water down to the coldest battery in use
    fetch: Numbers  # m, for the hold-off case and exposed legs without their own
    country: str  # ISO 3166 alpha-2, for electricity
    latitude: Numbers | None  # degrees, north positive; none: no year by the sun
    longitude: Numbers | None  # degrees, east positive
    sun: tuple[Numbers, ...]  # J/m2 a day on the level, by month; empty: from file or grid
    weather_file: str  # beside the case; empty: none
