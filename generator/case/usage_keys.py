"""Which keys describe the study, the use of the boat and the prices?"""

from __future__ import annotations

from typing import Annotated

from generator.case.group import NEEDED, Group
from generator.case.key_kinds import (
    CarbonPerEnergy,
    CarbonPerVolume,
    Current,
    Distance,
    DistanceOrNone,
    EnergyOrNone,
    Horizon,
    Length,
    MoneyOrNone,
    Number,
    NumberOrNone,
    PowerOrNone,
    PricePerEnergy,
    PricePerVolume,
    Rate,
    Share,
    ShareOrNone,
    Speed,
    SpeedOrNone,
    Stream,
    TimeOrNone,
    Voltage,
    Words,
    YesNo,
)
from generator.case.leaf import Day, Pattern, Word
from generator.case.months import MONTHS
from generator.unit_list import CURRENCIES

_MONTH = f"({'|'.join(MONTHS)})"
Season = Annotated[
    str | None, Pattern(f"{_MONTH} to {_MONTH}", "two months such as `April to October`")
]


class StudyKeys(Group):
    """Who asked, who answers, when and what for."""

    reference: Words = None
    client: Words = None
    prepared_by: Words = None
    date: Annotated[str | None, Day()] = NEEDED
    currency: Annotated[str | None, Word(tuple(CURRENCIES))] = NEEDED
    units: Annotated[str | None, Word(("metric", "imperial"))] = None
    priorities: tuple[Words, ...] = ()
    reasons: tuple[Words, ...] = ()


class PlanningKeys(Group):
    """How the skipper plans."""

    cruise_speed: Speed = NEEDED
    manoeuvring_speed: Speed = None
    manoeuvring_time: TimeOrNone = None
    hold_speed: SpeedOrNone = None
    hold_wind: SpeedOrNone = None
    hold_time: TimeOrNone = None
    reserve_share: ShareOrNone = None
    fallback: Annotated[str | None, Word(("none", "tow", "second propulsor"))] = None
    fallback_speed: Speed = None
    sailing_time: TimeOrNone = None
    sailing_speed: Speed = None
    season: Season = None


class BerthKeys(Group):
    """Where she lies between passages."""

    name: Words = NEEDED
    shore_power: YesNo = NEEDED
    breaker: Current = None
    breaker_share: Share = None
    voltage: Voltage = None
    days_between_use: TimeOrNone = None


class LegKeys(Group):
    """One passage that is motored."""

    name: Words = NEEDED
    distance: Distance = NEEDED
    times_per_year: NumberOrNone = NEEDED
    speed: Speed = NEEDED
    exposed_distance: DistanceOrNone = None
    exposed_speed: Speed = None
    wind: SpeedOrNone = None
    fetch: Distance = None
    depth: Length = None
    width: Length = None
    foul_stream: Stream = None
    spring_stream: SpeedOrNone = None
    refuge: YesNo = NEEDED
    sailable: YesNo = NEEDED
    season: Season = None
    nights_away: NumberOrNone = None
    follows: Words = None
    track: Words = None


class HouseKeys(Group):
    """What else draws on the bank."""

    under_way: PowerOrNone = None
    separate_bank: YesNo = NEEDED
    buffered: YesNo = None
    daily: EnergyOrNone = None
    harbour: EnergyOrNone = None
    day_sail: EnergyOrNone = None
    passage: EnergyOrNone = None
    unattended: PowerOrNone = None
    cooking: EnergyOrNone = None
    heat: EnergyOrNone = None
    converter_standing: PowerOrNone = None
    converter_efficiency: Share = None
    inverter_standing: PowerOrNone = None
    services: tuple[Annotated[str | None, Word(("charging", "hot water", "cabin heat"))], ...] = ()


class PricesKeys(Group):
    """What energy and money cost."""

    diesel: PricePerVolume = None
    electricity: PricePerEnergy = None
    discount_rate: Rate = None
    horizon: Horizon = None
    charging_efficiency: Share = None
    diesel_service: MoneyOrNone = None
    electric_service: MoneyOrNone = None
    contingency: ShareOrNone = None
    terms: Annotated[str | None, Word(("real", "nominal"))] = None
    inflation: Rate = None
    vat_rate: ShareOrNone = None
    quote_scale: Number = None
    diesel_trend: Number = None
    electricity_trend: Number = None
    energy_correlation: ShareOrNone = None
    use_scale: Number = None
    assessment: MoneyOrNone = None
    overhaul: MoneyOrNone = None
    battery_later: Number = None
    residual_share: ShareOrNone = None


class CarbonKeys(Group):
    """What fuel, electricity and the making of things emit."""

    diesel_burnt: CarbonPerVolume = None
    diesel_upstream: CarbonPerVolume = None
    grid: CarbonPerEnergy = None
    grid_trend: Number = None
    network_loss: ShareOrNone = None
    motor_made: NumberOrNone = None
    engine_made: NumberOrNone = None
