"""What of isolation, bonding and earthing must be confirmed, and with whom?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.installation import RULE_HIGH, Circuit, Voltages
from generator.analyses.wiring.to_confirm import (
    Anodes,
    Bonding,
    Isolation,
    Lightning,
    OtherSources,
    Scope,
    ShoreEarth,
    ToConfirm,
    Touch,
)
from generator.case.case import Case
from generator.case.option import Option
from generator.case.usage import Berth
from generator.case.wiring import Wiring
from generator.tables.method import method

INSULATION = method("wiring.insulation")
POTENTIAL_SHIFT = method("wiring.potential_shift")
RESIDUAL = method("wiring.residual_current")
WEEKS = 6.0  # in the water with the charger in use, until anodes are looked at


@dataclass(frozen=True)
class Subjects:
    """What the list speaks of; the height of the mast in m."""

    case: Case
    option: Option
    wiring: Wiring
    volts: Voltages
    circuits: tuple[Circuit, ...]
    mast_height: float


def to_confirm(of: Subjects, nominal: float) -> tuple[ToConfirm, ...]:
    """The list in the order in which a surveyor walks: shore, battery, shaft, mast, papers.

    ``nominal`` is the energy of the bank [J].
    """
    return (
        _shore(of.case.berth),
        _isolation(of.wiring, of.volts),
        _bonding(of),
        _anodes(of.case, of.option),
        Lightning("lightning", "Lightning", "surveyor; insurer", of.mast_height, nominal),
        *_sources(of.option),
        *_documents(of.volts),
    )


def _shore(berth: Berth) -> ShoreEarth:
    power = None
    if berth.breaker is not None and berth.voltage is not None:
        power = scalar(np.asarray(berth.breaker) * np.asarray(berth.voltage))
    return ShoreEarth(
        id="shore",
        title="Shore earth",
        confirm="installer; marina",
        berth=berth.name,
        shore_power=bool(berth.shore_power),
        residual=RESIDUAL,
        breaker=None if berth.breaker is None else scalar(berth.breaker),
        charge_power=power,
    )


def _isolation(wiring: Wiring, volts: Voltages) -> Isolation:
    return Isolation(
        id="isolation",
        title="Isolation of the bank",
        confirm="installer",
        monitor=bool(wiring.insulation_monitor),
        ceiling=volts.ceiling,
        insulation=INSULATION,
        leak=volts.ceiling / INSULATION,
        shift=POTENTIAL_SHIFT,
    )


def _bonding(of: Subjects) -> Bonding:
    motor = next(item for item in of.circuits if item.kind == "motor")
    return Bonding(
        id="bonding",
        title="Bonding without the block",
        confirm="installer; surveyor",
        installation=of.option.propeller.installation,
        area=motor.conductor.area,
        diameter=scalar(of.case.propeller.diameter),
    )


def _anodes(case: Case, option: Option) -> Anodes:
    return Anodes(
        id="anodes",
        title="Anodes",
        confirm="yard; surveyor",
        water=case.waters.kind,
        waters=case.waters.name,
        installation=option.propeller.installation,
        weeks=WEEKS,
    )


def _sources(option: Option) -> Iterator[OtherSources]:
    """Sources of the case that these lists do not size: told, so that none is left live."""
    supply = option.supply
    genset = None if supply is None or supply.genset is None else scalar(supply.genset.power)
    wind = None if supply is None or supply.wind is None else scalar(supply.wind.rated_power)
    if genset is not None or wind is not None:
        yield OtherSources("sources", "Other sources", "installer", genset, wind)


def _documents(volts: Voltages) -> Iterator[Scope | Touch]:
    """Documents that end at 50 V, told by the ceiling and not by the label."""
    if volts.band != RULE_HIGH:
        return
    yield Scope(
        "scope", "Scope of documents", "surveyor; insurer", volts.nominal, volts.ceiling,
        volts.cells,
    )  # fmt: skip
    if volts.ceiling > volts.touch_limit:
        yield Touch(
            "touch", "Above the touch limit", "specialist; insurer", volts.ceiling,
            volts.touch_limit,
        )  # fmt: skip
