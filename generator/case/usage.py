"""How is the boat used: legs, berth, house and plans, and which keys say so?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

import numpy as np

from generator.arrays import Numbers
from generator.case.key_kinds import (
    NEEDED,
    CarbonPerEnergy,
    CarbonPerVolume,
    Current,
    Distance,
    DistanceOrNone,
    EnergyOrNone,
    Group,
    Horizon,
    Length,
    MoneyOrNone,
    Number,
    NumberOrNone,
    PlainGroup,
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
from generator.units.families import CURRENCIES


@dataclass(frozen=True)
class Leg:
    """One passage that is motored. m, m/s."""

    name: str
    distance: Numbers
    times_per_year: Numbers
    speed: Numbers  # through the water, in a calm
    exposed_distance: Numbers  # part of the distance that lies open to wind and sea
    exposed_speed: Numbers  # through the water on that part
    holds_outside: bool  # the owner said how fast he goes on that part
    wind: Numbers  # on the nose on the exposed part, on a bad day
    usual_wind: Numbers | None  # there on an ordinary day; none: by the season's climate
    fetch: Numbers
    depth: Numbers | None  # least depth of any length; none: deep
    width: Numbers | None  # of the channel at the surface; none: open water
    foul_stream: Numbers  # mean over the leg, against her
    spring_stream: Numbers | None  # greatest against her at a gate, springs
    tide_worked: bool  # she waits for the tide that lets her through
    refuge: bool | None  # can it be broken off at a refuge? none: nobody said
    sailable: bool | None  # can it be sailed instead? none: nobody said
    season: str  # first and last month, `May to September`; empty: her sailing season
    nights_away: Numbers  # at anchor or on a buoy after it, without a plug
    follows: int | None  # place of the leg before it on the same outing, no charge between
    track: str | None  # file whose length is the distance
    line: int

    @property
    def stream(self) -> Numbers:
        """Mean stream against her over the leg [m/s]; slack water where she works the tide.

        The greatest stream, at a gate of the leg, stands there alone: criterion 9 asks for it.
        """
        return np.minimum(self.foul_stream, 0.0) if self.tide_worked else self.foul_stream


OPEN_WATERS = ("coastal", "offshore", "ocean")


def must_be_made(legs: tuple[Leg, ...]) -> tuple[bool, ...]:
    """Legs of which the owner said that they have neither refuge nor wind to be sailed by."""
    return tuple(leg.refuge is False and leg.sailable is False for leg in legs)


def as_if_marked(legs: tuple[Leg, ...], exposure: str) -> int | None:
    """Place of the leg to be judged as one that must be made, where nobody said which is.

    In open waters, of the legs that lack an answer, the way home with the longest exposed part.
    """
    if exposure not in OPEN_WATERS or any(must_be_made(legs)):
        return None
    open_ones = [
        place
        for place, leg in enumerate(legs)
        if not (leg.refuge or leg.sailable) and (leg.refuge is None or leg.sailable is None)
    ]
    home = [place for place in open_ones if legs[place].follows is not None] or open_ones
    return max(home, key=lambda place: _first(legs[place].exposed_distance), default=None)


def _first(value: Numbers) -> float:
    return float(np.asarray(value).flat[0])


@dataclass(frozen=True)
class Berth:
    """Where she lies between passages."""

    name: str
    shore_power: bool
    breaker: Numbers | None  # A
    breaker_share: Numbers  # of its rating that the breaker carries for hours
    voltage: Numbers | None  # V
    days_between_use: Numbers | None  # s
    unattended: bool  # she may charge with nobody aboard


@dataclass(frozen=True)
class House:
    """What else draws on the propulsion bank. W, J."""

    under_way: Numbers  # W drawn while motoring
    separate_bank: bool
    buffered: bool | None  # fed through a converter with a small battery of its own
    daily: Numbers  # J a day at anchor
    services: tuple[str, ...]  # what the diesel gave: hot water, cabin heat, charging
    harbour: Numbers  # J a day aboard in harbour
    day_sail: Numbers  # J of a day under way
    passage: Numbers  # J of 24 h under way, by day and by night
    unattended: Numbers  # W with nobody on board
    cooking: Numbers  # J a day aboard, by electricity
    heat: Numbers  # J a day aboard, by electricity: cabin and hot water
    converter_standing: Numbers  # W of the DC-DC converter, day and night
    converter_efficiency: Numbers
    inverter_standing: Numbers  # W on days on which she cooks by electricity


@dataclass(frozen=True)
class Planning:
    """How the skipper plans; m/s, s, [-]."""

    cruise_speed: Numbers
    manoeuvring_speed: Numbers
    manoeuvring_time: Numbers
    hold_speed: Numbers
    hold_wind: Numbers
    hold_time: Numbers
    reserve_share: Numbers  # of usable energy
    reserve_reason: str  # why the owner keeps less back than the rule; empty: none given
    slower_accepted: Numbers  # m/s by which the owner lets a leg be slower
    at_sea: str  # engine or sail: what brings her home far out
    fallback: str | None  # none, tow, oars, second propulsor
    fallback_speed: Numbers | None  # of the second propulsor
    sailing_time: Numbers  # s a year under sail, for what a turning screw gives
    sailing_speed: Numbers  # m/s of that time
    season: str  # first and last month in which she is used; empty: by the sun


SUBJECTS = (
    "quiet", "smell", "ease", "cost", "range", "space", "fuel-free", "which motor", "other",
)  # fmt: skip
_MONTH = f"({'|'.join(MONTHS)})"
Season = Annotated[
    str | None, Pattern(f"{_MONTH} to {_MONTH}", "two months such as `April to October`")
]


class WishKeys(PlainGroup):
    """What the owner wants or gives as a reason, and which subject it belongs to."""

    text: Words = NEEDED
    subject: Annotated[str | None, Word(SUBJECTS)] = None


class StudyKeys(Group):
    """Who asked, who answers, when and what for."""

    reference: Words = None
    client: Words = None
    prepared_by: Words = None
    date: Annotated[str | None, Day()] = NEEDED
    currency: Annotated[str | None, Word(tuple(CURRENCIES))] = NEEDED
    units: Annotated[str | None, Word(("metric", "imperial"))] = None
    qualification: Words = None
    independence: Words = None
    issue: Words = None
    changes: tuple[Words, ...] = ()
    priorities: tuple[WishKeys, ...] = ()
    reasons: tuple[WishKeys, ...] = ()


class PlanningKeys(Group):
    """How the skipper plans."""

    cruise_speed: Speed = NEEDED
    manoeuvring_speed: Speed = None
    manoeuvring_time: TimeOrNone = None
    hold_speed: SpeedOrNone = None
    hold_wind: SpeedOrNone = None
    hold_time: TimeOrNone = None
    reserve_share: ShareOrNone = None
    reserve_reason: Words = None
    slower_accepted: SpeedOrNone = None
    at_sea: Annotated[str | None, Word(("engine", "sail"))] = None
    fallback: Annotated[str | None, Word(("none", "tow", "oars", "second propulsor"))] = None
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
    unattended: YesNo = None


class LegKeys(Group):
    """One passage that is motored."""

    name: Words = NEEDED
    distance: Distance = NEEDED
    times_per_year: NumberOrNone = NEEDED
    speed: Speed = NEEDED
    exposed_distance: DistanceOrNone = None
    exposed_speed: Speed = None
    wind: SpeedOrNone = None
    usual_wind: SpeedOrNone = None
    fetch: Distance = None
    depth: Length = None
    width: Length = None
    foul_stream: Stream = None
    spring_stream: SpeedOrNone = None
    tide_worked: YesNo = None
    refuge: YesNo = None
    sailable: YesNo = None
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
