"""Which keys describe the boat and her waters?"""

from __future__ import annotations

from typing import Annotated

from generator.case.boat import DATUMS, RIGS
from generator.case.key_kinds import (
    NEEDED,
    Area,
    AreaOrNone,
    CalendarYear,
    Centre,
    Coldness,
    DailySun,
    Deviate,
    Distance,
    Group,
    Latitude,
    Length,
    LengthOrNone,
    Longitude,
    Mass,
    MassOrNone,
    MassPerPower,
    Money,
    Number,
    NumberOrNone,
    Position,
    Share,
    ShareOfLength,
    ShareOrNone,
    Temperature,
    Time,
    Volume,
    Warming,
    Words,
    needed,
)
from generator.case.leaf import Day, Pattern, Word

# The state of the bottom is a row of tables/hull/fouling.csv; a test holds the two together.
BOTTOMS = ("smooth", "fresh antifouling", "light slime", "heavy slime", "weed or small shell",
           "medium shell", "heavy shell")  # fmt: skip
OFFSETS_FORM = r"[A-Za-z0-9][A-Za-z0-9_-]{0,60}\.csv"
OFFSETS_HOPE = "the name of a CSV file that lies beside the case, such as `fieldfare_lines.csv`"
_MONOHULL = (
    "expected `displacement monohull`: the resistance series holds for no multihull and no "
    "planing hull"
)


class HullKeys(Group):
    """Main dimensions as she floats today."""

    hull_type: Annotated[str | None, Word(("displacement monohull",), _MONOHULL)] = NEEDED
    keel_type: Annotated[str | None, Word(("fin", "long"))] = NEEDED
    length_overall: Length = NEEDED
    waterline_length: Length = NEEDED
    waterline_beam_share: Share = None
    waterline_beam: Length = None
    beam: Length = NEEDED
    draught: Length = NEEDED
    canoe_draught: Length = None
    displacement: Mass = NEEDED
    canoe_share: Share = None
    prismatic_coefficient: Share = None
    midship_coefficient: Share = None
    waterplane_coefficient: Share = None
    bow_share: Share = None
    lcb: Centre = None
    lcf: Centre = None


class AppendageKeys(Group):
    """Wetted area, chord and thickness of what stands below the canoe body."""

    wetted_area: Area = None
    wetted_area_share: Share = None
    chord_share: Share = None
    chord: Length = None
    thickness_ratio: Share = None


class KeelKeys(AppendageKeys):
    """The fin, or the body below the canoe line."""

    volume: Volume = None
    volume_share: Share = None
    centre_depth: Length = None
    centre_share: Share = None


class RudderKeys(AppendageKeys):
    """Rudder and skeg."""


class WindageKeys(Group):
    """What the wind sees from ahead."""

    rig: Annotated[str | None, Word(RIGS)] = None
    drag_area: Area = None
    freeboard: Length = None
    freeboard_share: ShareOfLength = None
    mast_height: Length = None
    mast_height_share: ShareOfLength = None
    mast_diameter_share: Share = None
    mast_diameter: Length = None
    wire_width: LengthOrNone = None
    furled_sail_width: LengthOrNone = None
    sprayhood_area: AreaOrNone = None
    second_mast_share: ShareOrNone = None


class FloatationKeys(Group):
    """What is known of how she floats and stands."""

    light_displacement: Mass = None
    light_share: Share = None
    cruising_displacement: Mass = None
    cruising_share: ShareOfLength = None
    tank_fill: ShareOrNone = None
    plate_load: Mass = None
    waterplane_area: Area = None
    buoyancy_height: Position = None
    transverse_radius: Length = None
    longitudinal_radius: Length = None
    metacentric_height: Length = None
    roll_period: Time = None
    gravity_height: Position = None
    gyration_share: Share = None
    freeboard_aft: Length = None
    drain_height: Length = None


class SpaceKeys(Group):
    """A place where batteries may stand."""

    name: Words = NEEDED
    x: Position = NEEDED
    y: Position = None
    z: Position = NEEDED
    volume: Volume = NEEDED
    max_mass: Mass = NEEDED
    above_bilge: LengthOrNone = None


class BoatKeys(Group):
    """The boat, without what drives her."""

    name: Words = NEEDED
    type: Words = None
    year_on_market: CalendarYear = None
    import_date: Annotated[str | None, Day()] = None
    market: Annotated[str | None, Word(("EEA", "GB", "NI", "US", "other"))] = NEEDED
    assessment: Annotated[str | None, Word(("presumed", "not required", "done"))] = None
    worth: Money = None
    design_category: Annotated[str | None, Word(("A", "B", "C", "D", "none"))] = None
    datum: Annotated[str | None, Word(tuple(DATUMS))] = None
    bottom: Annotated[str | None, Word(BOTTOMS)] = None
    bottom_share: ShareOrNone = None
    hull: HullKeys = needed(HullKeys())
    keel: KeelKeys = KeelKeys()
    rudder: RudderKeys = RudderKeys()
    windage: WindageKeys = WindageKeys()
    floatation: FloatationKeys = FloatationKeys()
    offsets: Annotated[str | None, Pattern(OFFSETS_FORM, OFFSETS_HOPE)] = None
    spaces: tuple[SpaceKeys, ...] = ()


EXPOSURES = ("narrow", "sheltered", "coastal", "offshore", "ocean")


class WatersKeys(Group):
    """Where she sails."""

    name: Words = NEEDED
    kind: Annotated[str | None, Word(("salt", "fresh"))] = NEEDED
    exposure: Annotated[str | None, Word(EXPOSURES)] = NEEDED
    temperature: Temperature = None
    coldest: Coldness = None
    season_swing: Warming = None
    fetch: Distance = None
    combustion_engines: Annotated[str | None, Word(("allowed", "banned"))] = None
    refuge_distance: Distance = None
    country: Annotated[
        str | None, Pattern(r"(?!UK)[A-Z]{2}", "a country code of two letters such as `GB`, `NO`")
    ] = NEEDED
    latitude: Latitude = None
    longitude: Longitude = None
    sun: tuple[DailySun, ...] = ()
    weather_file: Annotated[
        str | None, Pattern(r"[\w][\w .-]*\.(epw|csv|CSV|tm2)", "a file such as `harbour.epw`")
    ] = None


class FactorsKeys(Group):
    """Named parts of what a boat in service needs above a clean hull."""

    hull_model: Number = None
    residuary_deviate: Deviate = None
    fouling: NumberOrNone = None
    propeller_condition: Number = None
    wind_and_chop: Number = None
    steering_and_trim: Number = None
    wave_resistance: NumberOrNone = None
    pitching_loss: ShareOrNone = None
    motor_loss: NumberOrNone = None
    trial_error: Number = None
    fuel_error: Number = None
    trial_level_deviate: Deviate = None
    trial_growth_deviate: Deviate = None
    prior_sigma: Number = None
    prior_growth: Number = None
    trial_sigma: Number = None


class MassesKeys(Group):
    """Aggregate masses for what the ledgers leave out."""

    diesel_fixed: MassOrNone = None
    diesel_per_kilowatt: MassPerPower = None
    diesel_fittings: MassOrNone = None
    motor_per_kilowatt: MassPerPower = None
    battery_fastening: ShareOrNone = None
    cabling: MassOrNone = None
    starter_battery: MassOrNone = None
    tank_share: ShareOrNone = None
    shock_allowance: Number = None
