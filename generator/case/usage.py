"""Usage: legs, berth and house loads."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class Leg:
    """One passage that is motored. m, m/s."""

    name: str
    distance: Numbers
    times_per_year: Numbers
    speed: Numbers  # through the water, in a calm
    exposed_distance: Numbers  # part of the distance that lies open to wind and sea
    exposed_speed: Numbers  # through the water on that part
    wind: Numbers  # on the nose on the exposed part
    fetch: Numbers
    depth: Numbers | None  # least depth of any length; none: deep
    width: Numbers | None  # of the channel at the surface; none: open water
    foul_stream: Numbers  # mean over the leg, against her
    spring_stream: Numbers | None  # greatest against her at a gate, springs
    refuge: bool  # can it be broken off at a refuge?
    sailable: bool  # can it be sailed instead?
    season: str  # first and last month, `May to September`; empty: her sailing season
    nights_away: Numbers  # at anchor or on a buoy after it, without a plug
    follows: int | None  # place of the leg before it on the same outing, no charge between
    track: str | None  # file whose length is the distance
    line: int


@dataclass(frozen=True)
class Berth:
    """Where she lies between passages."""

    name: str
    shore_power: bool
    breaker: Numbers | None  # A
    breaker_share: Numbers  # of its rating that the breaker carries for hours
    voltage: Numbers | None  # V
    days_between_use: Numbers | None  # s


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
    fallback: str | None  # none, tow, second propulsor
    fallback_speed: Numbers | None  # of the second propulsor
    sailing_time: Numbers  # s a year under sail, for what a turning screw gives
    sailing_speed: Numbers  # m/s of that time
    season: str  # first and last month in which she is used; empty: by the sun
