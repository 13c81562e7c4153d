"""Boat: dimensions, weights, and where things sit."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers

# Where a datum lies, as a share of the waterline forward of its aft end.
DATUMS = {"aft end of the waterline": 0.0, "midships": 0.5, "fore end of the waterline": 1.0}

RIGS = ("sloop", "cutter", "ketch", "yawl", "cat")


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

    rig: str  # of RIGS
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
    second_mast_share: Numbers  # drag of mizzen and its wires, over that of the main mast and wires


@dataclass(frozen=True)
class Floatation:
    """What is known of how she floats and stands; kg, m, m2, s. Heights above the waterline.

    Absent values follow from the dimensions, or from the offsets where there are any.
    """

    light_displacement: Numbers | None  # without crew, stores, fuel and water
    light_share: Numbers  # of displacement, used when light_displacement is absent
    cruising_displacement: Numbers | None  # tanks, stores and crew for a cruise
    cruising_share: Numbers  # of displacement, used when cruising_displacement is absent
    tank_fill: Numbers  # of the diesel tank when she was weighed
    plate_load: Numbers | None  # maximum load of the builder's plate
    waterplane_area: Numbers | None
    buoyancy_height: Numbers | None  # centre of buoyancy, negative below the waterline
    transverse_radius: Numbers | None  # metacentric
    longitudinal_radius: Numbers | None
    metacentric_height: Numbers | None  # GM by an inclining test or from papers
    roll_period: Numbers | None  # timed in still water
    gravity_height: Numbers  # used when neither of the two is given
    gyration_share: Numbers  # radius of gyration in roll, of beam
    freeboard_aft: Numbers | None
    drain_height: Numbers | None  # lowest cockpit drain or outlet


@dataclass(frozen=True)
class Offsets:
    """Half breadths of the hull, one row a point; m. x from the aft end of the waterline."""

    file: str
    x: tuple[float, ...]
    z: tuple[float, ...]  # above the waterline
    half_breadth: tuple[float, ...]


@dataclass(frozen=True)
class Space:
    """A place where batteries may stand; m, m3, kg. Its centre by x, y, z."""

    name: str
    x: Numbers
    y: Numbers
    z: Numbers
    volume: Numbers
    max_mass: Numbers
    above_bilge: Numbers | None  # height of its floor above the bilge water
    line: int


@dataclass(frozen=True)
class Boat:
    """The boat, without what drives her."""

    name: str
    type: str
    year_on_market: int | None  # year first placed on the EEA or UK market
    import_date: str | None  # brought into the EEA or the UK from elsewhere, ISO 8601
    market: str  # EEA, GB, NI, US, other
    assessment: str  # presumed, not required (in writing), done
    worth: Numbers | None  # currency of the case
    design_category: str  # A, B, C, D, none
    hull: Hull
    keel: Keel
    rudder: Rudder
    windage: Windage
    floatation: Floatation
    offsets: Offsets | None
    spaces: tuple[Space, ...]
    bottom: str  # state of the underwater hull: a row of tables/hull/fouling.csv; empty: not told
    bottom_share: Numbers | None  # friction added over a smooth one, where it is not told
    datum: str  # where x is measured from: a key of DATUMS


@dataclass(frozen=True)
class Waters:
    """Where she sails."""

    name: str
    kind: str  # salt, fresh
    exposure: str  # narrow, sheltered, coastal, offshore, ocean
    temperature: Numbers  # degC, of the season
    coldest: Numbers | None  # degC, lowest temperature of a battery in use; else by season_swing
    season_swing: Numbers  # K, from the season's water down to the coldest battery in use
    fetch: Numbers  # m, for the hold-off case and exposed legs without their own
    combustion_engines: str  # allowed, banned by the rules of the waters
    refuge_distance: Numbers | None  # m, farthest from a harbour or anchorage
    country: str  # ISO 3166 alpha-2, for electricity
    latitude: Numbers | None  # degrees, north positive; none: no year by the sun
    longitude: Numbers | None  # degrees, east positive
    sun: tuple[Numbers, ...]  # J/m2 a day on the level, by month; empty: from file or grid
    weather_file: str  # beside the case; empty: none
