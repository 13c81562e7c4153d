"""Which keys describe what drives her, today and in an option?"""

from __future__ import annotations

from typing import Annotated

from generator.case.key_kinds import (
    NEEDED,
    NEEDED_LIST,
    AirFlow,
    AreaOrNone,
    CalendarYear,
    CarbonPerEnergy,
    Charge,
    Coldness,
    Conductance,
    CRate,
    Current,
    Energy,
    Group,
    Length,
    LengthOrNone,
    Life,
    Mass,
    Name,
    Number,
    NumberOrNone,
    Power,
    PowerOrNone,
    Ratio,
    Resistance,
    ResistanceCharge,
    Rotation,
    Share,
    ShareOrNone,
    SpecificEnergy,
    Speed,
    SpeedOrNone,
    Tilt,
    Time,
    TimeOrNone,
    Voltage,
    Volume,
    VolumeRate,
    Warming,
    Years,
    YesNo,
)
from generator.case.leaf import Whole, Word

COOLINGS = ("air", "water")


class EngineKeys(Group):
    """The diesel auxiliary, its gear and its tank."""

    rated_power: Power = NEEDED
    rated_speed: Rotation = NEEDED
    gear_ratio: Ratio = None
    gear_efficiency: Share = None
    fuel_scale: Number = None
    tank: Volume = NEEDED
    usable_tank_share: Share = None
    year: CalendarYear = None
    hours: TimeOrNone = None
    hours_per_year: TimeOrNone = None
    life: Time = None
    calendar_life: Years = None
    wear_shape: Number = None
    condition: Annotated[str | None, Word(("good", "worn", "dying"))] = NEEDED
    enough: YesNo = None
    alternator_power: PowerOrNone = None
    reversal_time: Time = None


class PropellerKeys(Group):
    """The screw and how it stands behind the hull."""

    kind: Annotated[str | None, Word(("fixed", "folding", "feathering"))] = NEEDED
    installation: Annotated[str | None, Word(("shaft", "saildrive"))] = NEEDED
    blades: Annotated[int | None, Whole(2, 7)] = NEEDED
    diameter: Length = NEEDED
    pitch: Length = NEEDED
    area_ratio: Share = None
    thrust_scale: Number = None
    torque_scale: Number = None
    wake_fraction: ShareOrNone = None
    thrust_deduction: ShareOrNone = None
    rotative_efficiency: Number = None
    shaft_efficiency: Share = None
    astern_share: Share = None
    aperture_height: Length = None
    shaft_diameter: Length = None
    shaft_depth: Length = None
    shaft_diameter_share: Share = None
    shaft_run: LengthOrNone = None
    shaft_run_share: NumberOrNone = None
    shaft_slope: Tilt = None
    stern_gear_area: AreaOrNone = None
    stern_gear_share: ShareOrNone = None
    stern_gear_drag: NumberOrNone = None


class TrialRowKeys(Group):
    """One throttle setting on two opposite courses."""

    engine_speed: Rotation = NEEDED
    engine_speed_back: Rotation = None
    speed_out: Speed = NEEDED
    speed_back: Speed = None
    wind: SpeedOrNone = NEEDED
    depth: Length = None
    fuel_rate: VolumeRate = None
    alternator_power: PowerOrNone = None
    curve_power: Power = None
    battery_power: Power = None


class TrialKeys(Group):
    """The sea trial."""

    full_throttle_speed: Rotation = None
    with_option: Name = None
    propeller_law_exponent: Number = None
    rows: tuple[TrialRowKeys, ...] = NEEDED_LIST


class MotorKeys(Group):
    """Electric motor and controller."""

    continuous_power: Power = NEEDED
    peak_power: Power = NEEDED
    peak_time: Time = None
    rated_speed: Rotation = NEEDED
    gear_ratio: Ratio = NEEDED
    gear_efficiency: Share = None
    electronics_standby: PowerOrNone = None
    seal_and_bearings: PowerOrNone = None
    cable_efficiency: Share = None
    reversal_time: Time = None
    lowest_voltage: Voltage = None
    cut_off_share: Share = None
    time_constant: Time = None
    controller_time_constant: Time = None
    rated_ambient: Coldness = None
    derating: ShareOrNone = None
    intake_temperature: Coldness = None
    airflow: AirFlow = None
    space_conductance: Conductance = None
    cooling: Annotated[str | None, Word(COOLINGS)] = None
    heat_share: ShareOrNone = None
    mass: Mass = None


class BlocksKeys(Group):
    """Batteries that make up the bank, in series and in strings side by side."""

    series: Annotated[int | None, Whole(1, 200)] = None
    parallel: Annotated[int | None, Whole(1, 50)] = None
    voltage: Voltage = None
    charge: Charge = None
    discharge_limit: Current = None
    mixed: YesNo = None


class BankKeys(Group):
    """The propulsion battery."""

    chemistry: Annotated[str | None, Word(("LFP", "NMC", "AGM", "flooded"))] = NEEDED
    nominal_voltage: Voltage = None
    charge: Charge = None
    energy: Energy = None
    cells: Annotated[int | None, Whole(1, 400)] = None
    end_of_charge: Voltage = None
    blocks: BlocksKeys = BlocksKeys()
    split: YesNo = None
    usable_share: Share = None
    aged_share: Share = None
    discharge_limit: Current = None
    specific_energy: SpecificEnergy = None
    cruise_rate_limit: CRate = None
    continuous_rate: CRate = None
    sharing: Share = None
    resistance: Resistance = None
    resistance_charge: ResistanceCharge = None
    link_resistance: Resistance = None
    resistance_growth: NumberOrNone = None
    gauge_error: ShareOrNone = None
    calendar_life: Life = None
    cycle_life: Number = None
    resting_state: Share = None
    above_water: Warming = None
    charge_lock_out: YesNo = None
    mass: Mass = None
    life: Years = None
    manufacture: CarbonPerEnergy = None
    block_volume: Volume = None
