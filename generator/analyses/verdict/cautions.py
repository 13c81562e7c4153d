"""Which hazards does this boat's conversion bring, for which number, and who confirms it?

One record for each; its words stand in templates/words/cautions.html.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.store.bank import BankResult
from generator.analyses.wiring.installation import Fault
from generator.arrays import Numbers
from generator.case.boat import Boat
from generator.physics.energy.protection import FIFTY_VOLTS
from generator.records import number, record
from generator.tables.method import method

MARKET_DATE = 1998  # boats first placed on the market after 16 June of that year are in scope
MARKETS = ("EEA", "GB", "NI")
TOUCH_LIMIT = method("wiring.touch_voltage")
IN_FILE = "cautions"


@record
class LossOfDrive:
    """Every knot gone at once, what warns before it, and what is kept for it."""

    SAID_BY: ClassVar[str] = "loss_of_drive"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    nominal: float = number("energy", "nominal energy")
    first_alarm: float | None = number("share", "first alarm, at a charge of")
    second_alarm: float | None = number("share", "second alarm, at a charge of")
    reserve: Numbers = number("energy", "reserve taken, aged", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Fire:
    """What a bank of this chemistry gives off."""

    SAID_BY: ClassVar[str] = "fire"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    chemistry: str
    lead: bool
    nominal: float = number("energy", "nominal energy")


@record
class ShortCircuit:
    """What the bank feeds into a fault, beside what its peak asks for."""

    SAID_BY: ClassVar[str] = "short_circuit"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    by_maker: bool
    charge: float = number("charge", "charge on the label")
    nominal_voltage: float = number("voltage", "voltage on the label")
    likely: float | None = number("short_circuit", "likely short circuit at the busbar")
    greatest: float | None = number("short_circuit", "greatest short circuit at the busbar")
    peak_current: Numbers = number("current", "current at peak", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Winter:
    """What cold does to a bank."""

    SAID_BY: ClassVar[str] = "winter"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    lead: bool
    charge: float = number("charge", "charge on the label")


@record
class HighVoltage:
    """What the bank is sold as, and what it reaches."""

    SAID_BY: ClassVar[str] = "high_voltage"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    below_touch: bool
    fifty: bool  # in the class of fuse rules from there upwards
    nominal_voltage: float = number("voltage", "voltage on the label")
    ceiling: float = number("voltage", "voltage at the end of charge")
    cells: int = number("count", "cells in series")
    touch_limit: float = number("voltage", "limit of voltage that may be touched")


@record
class Securing:
    """What a small net change hides."""

    SAID_BY: ClassVar[str] = "securing"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    net: Numbers = number("mass", "net change of mass")
    removed: Numbers = number("mass", "mass taken out")
    added: Numbers = number("mass", "mass put in")


@record
class LeftBehind:
    """What the diesel leaves behind, and what goes with it."""

    SAID_BY: ClassVar[str] = "left_behind"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    services: tuple[str, ...]
    tank: Numbers | None = number("fuel", "tank of the present engine", expected=True)
    absent: Mapping[str, str] = field(default_factory=lambda: {"tank": "not_said"})


@record
class Conformity:
    """``outcome``: no_year, before (the first directive), after."""

    SAID_BY: ClassVar[str] = "conformity"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    outcome: str
    first: float | None = number("year", "first placed on the market")
    absent: Mapping[str, str] = field(default_factory=lambda: {"first": "not_said"})


@record
class Insurance:
    """What the insurer is told before any deposit."""

    SAID_BY: ClassVar[str] = "insurance"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    nominal: float = number("energy", "nominal energy")
    nominal_voltage: float = number("voltage", "voltage on the label")
    peak_power: Numbers = number("power", "peak power on the plate", expected=True)


@record
class WindAndSea:
    """What holding her head to wind asks for."""

    SAID_BY: ClassVar[str] = "wind_and_sea"
    SAID_IN: ClassVar[str] = IN_FILE
    id: str
    title: str
    confirm: str
    speed: Numbers = number("speed", "speed to be held", expected=True)
    wind: Numbers = number("speed", "wind to be held against", expected=True)
    shaft_power: Numbers = number("power", "shaft power that this asks", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


CautionItem = (
    LossOfDrive | Fire | ShortCircuit | Winter | HighVoltage | Securing | LeftBehind | Conformity
    | Insurance | WindAndSea
)  # fmt: skip


def cautions(options: tuple[Findings, ...], as_she_is: Findings) -> tuple[CautionItem, ...]:
    """The cautions that belong to this case, hazards of the battery options first."""
    electric = [(found, found.bank) for found in options if found.bank is not None]
    items: list[CautionItem | None] = []
    if electric:
        largest, bank = max(electric, key=lambda pair: pair[1].nominal)
        fire, winter = _of_bank(bank)
        items += [_loss(largest, bank), fire, _fault(largest, bank), winter, _shock(bank)]
        items += [_securing(largest), _left_behind(largest), _conformity(largest.case.boat)]
        items.append(_insurance(largest, bank))
    items.append(_at_sea(as_she_is))
    return tuple(item for item in items if item is not None)


def _loss(found: Findings, bank: BankResult) -> LossOfDrive:
    made = found.installation
    managed = None if made is None else made.settings.management
    return LossOfDrive(
        id="loss",
        title="Loss of propulsion",
        confirm="installer; skipper",
        nominal=bank.nominal,
        first_alarm=None if managed is None else managed.first_alarm,
        second_alarm=None if managed is None else managed.second_alarm,
        reserve=found.reserve.of_aged,
        absent={
            "reserve": found.reserve.absent["of_aged"],
            "first_alarm": "not_said",
            "second_alarm": "not_said",
        },
    )


def _of_bank(bank: BankResult) -> tuple[Fire, Winter]:
    """What hangs on the chemistry."""
    return (
        Fire("fire", "Fire and gas", "installer; insurer", bank.chemistry, bank.lead, bank.nominal),
        Winter("cold", "Cold", "maker's data sheet", bank.lead, bank.charge),
    )


def _fault(found: Findings, bank: BankResult) -> ShortCircuit:
    fault: Fault | None = None if found.installation is None else found.installation.fault
    return ShortCircuit(
        id="fault",
        title="Short circuit and arc",
        confirm="installer, by the maker's figure",
        by_maker=fault is not None and fault.by_maker,
        charge=bank.charge,
        nominal_voltage=bank.nominal_voltage,
        likely=None if fault is None else fault.bank_likely,
        greatest=None if fault is None else fault.bank_greatest,
        peak_current=bank.peak_current,
        absent={
            "peak_current": "peak_not_given", "likely": "not_said", "greatest": "not_said",
        },
    )  # fmt: skip


def _shock(bank: BankResult) -> HighVoltage:
    return HighVoltage(
        id="shock",
        title="Voltage",
        confirm="installer",
        below_touch=bank.ceiling <= TOUCH_LIMIT,
        fifty=bank.ceiling >= FIFTY_VOLTS,
        nominal_voltage=bank.nominal_voltage,
        ceiling=bank.ceiling,
        cells=bank.cells,
        touch_limit=TOUCH_LIMIT,
    )


def _securing(found: Findings) -> Securing:
    weight, who = found.weight, "naval architect; yard"
    net, out, new = weight.net, weight.removed_mass, weight.added_mass
    return Securing("mass", "Mass and securing", who, net, out, new)


def _left_behind(found: Findings) -> LeftBehind:
    services, tank = tuple(found.case.house.services), found.case.engine.tank
    return LeftBehind("removal", "What the diesel leaves behind", "yard", services, tank)


def _conformity(boat: Boat) -> Conformity | None:
    if boat.market not in MARKETS:
        return None
    title, who, year = "Recreational craft rules", "notified or approved body", boat.year_on_market
    outcome = "no_year" if year is None else "before" if year < MARKET_DATE else "after"
    return Conformity("conformity", title, who, outcome, year)


def _insurance(found: Findings, bank: BankResult) -> Insurance:
    motor = found.option.motor
    assert motor is not None
    return Insurance(
        id="insurer",
        title="Insurance",
        confirm="insurer, in writing",
        nominal=bank.nominal,
        nominal_voltage=bank.nominal_voltage,
        peak_power=motor.peak_power,
    )


def _at_sea(found: Findings) -> WindAndSea:
    plan = found.case.planning
    return WindAndSea(
        id="sea",
        title="Wind and sea",
        confirm="skipper",
        speed=np.asarray(plan.hold_speed),
        wind=np.asarray(plan.hold_wind),
        shaft_power=found.reserve.hold_shaft_power,
        absent={"shaft_power": found.reserve.absent["hold_shaft_power"]},
    )
