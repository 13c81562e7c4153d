"""How small may bank and charger be? The study again, with another bank, until the legs go."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from generator.arrays import Array
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.draws import Draws, make_draws
from generator.records import number, record
from generator.study import Study, run

FEW = 100  # draws of a try: what is sought moves by less than its steps
MOST_TRIES = 4
CLOSE = 0.01  # share between two tries at which the search ends
GROWING = ("charge", "blocks.discharge_limit", "discharge_limit", "mass")  # with the bank's size


@record
class Smallest:
    """What makes the legs of one battery option go at the pessimistic end. J, m/s, kg, W."""

    place: int  # of the option
    enough: bool  # her own bank is as large
    own_nominal: float = number("energy", "nominal energy of her own bank")
    own_speed: float = number("speed", "mean speed of the owner's legs")
    bank: float | None = number("energy", "smallest bank that makes the legs go, its mass aboard")
    without_mass: float = number("energy", "smallest bank that makes the legs go, weightless")
    heavier: float | None = number("mass", "mass of the smallest bank over her own")
    charger: float | None = number("power", "smallest power that refills a usual day in time")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Tried:
    """A bank that carries its own mass [J], and what it weighs more [kg]; or why there is none."""

    bank: float | None
    heavier: float | None
    why: str = ""


NO_BANK = Tried(None, None, "no_bank_does_it")


def smallest(case: Case, study: Study) -> tuple[Smallest, ...]:
    """For every battery option with legs."""
    found = (
        _smallest(case, study, place)
        for place, option in enumerate(study.options)
        if option.findings.use.sizing is not None
    )
    return tuple(found)


def _smallest(case: Case, study: Study, place: int) -> Smallest:
    use = study.options[place].findings.use
    assert use.sizing is not None
    first = use.sizing.at_own_speeds
    charger = None if use.berth is None else use.berth.least_charger
    tried = _with_its_mass(case, place, first) if np.isfinite(first) else NO_BANK
    return Smallest(
        place=place,
        enough=tried.bank is not None and use.sizing.nominal >= tried.bank,
        own_nominal=use.sizing.nominal,
        own_speed=use.sizing.mean_speed,
        bank=tried.bank,
        without_mass=first,
        heavier=tried.heavier,
        charger=charger,
        absent={
            **dict.fromkeys(("bank", "heavier"), tried.why),
            "without_mass": "no_continuous_power",
            "charger": "no_charger_in_time",
        },
    )


def _with_its_mass(case: Case, place: int, first: float) -> Tried:
    """The bank that carries the legs with its own mass aboard.

    Each try asks the study of a boat with the bank of the last one how much it should be; few
    draws tell by how much that moves, the many of ``first`` where it starts.
    """
    alone, at = _alone(case, place)
    draws = make_draws(alone, FEW)
    start = _asked(alone, draws, at)
    if not np.isfinite(start):  # of the few draws more than one in ten find no bank
        return NO_BANK
    now = start
    for _ in range(MOST_TRIES):
        factor = first * now / start / _nominal(alone.options[at].bank)
        after = _asked(*_resized(alone, draws, at, factor), at)
        if not np.isfinite(after):
            return Tried(None, None, "larger_asks_for_larger")
        done = abs(after / now - 1.0) < CLOSE
        now = after
        if done:
            break
    nominal = first * now / start
    return Tried(nominal, _mass(alone, at, nominal / _nominal(alone.options[at].bank)))


def _asked(case: Case, draws: Draws, at: int) -> float:
    """The smallest bank that the study asks for [J]."""
    sizing = run(case, draws, year=False).options[at].findings.use.sizing
    assert sizing is not None
    return sizing.at_own_speeds


def _alone(case: Case, place: int) -> tuple[Case, int]:
    """The case with one option and the one aboard during the trial."""
    named = None if case.trial is None else case.trial.with_option
    kept = [n for n, option in enumerate(case.options) if n == place or option.id == named]
    moved = {f"options[{n}].": f"options[{new}]." for new, n in enumerate(kept)}
    items = []
    for item in case.assumptions:
        head = item.path.split(".")[0] + "."
        if not head.startswith("options["):
            items.append(item)
        elif head in moved:
            items.append(replace(item, path=item.path.replace(head, moved[head], 1)))
    options = tuple(case.options[n] for n in kept)
    alone = replace(case, options=options, assumptions=tuple(items))
    return alone, kept.index(place)


def _resized(case: Case, draws: Draws, at: int, factor: float) -> tuple[Case, Draws]:
    """The case with a bank of the same kind, ``factor`` times as large, and its mass aboard."""
    option = case.options[at]
    assert option.bank is not None
    larger = replace(option, bank=option.bank.resized(factor))
    if option.added:
        extra = replace(option.added[0], name="Larger bank", mass=_mass(case, at, factor))
        larger = replace(larger, added=(*option.added, extra))
    options = tuple(larger if n == at else other for n, other in enumerate(case.options))
    return replace(case, options=options), replace(draws, values=_scaled(draws.values, at, factor))


def _scaled(values: Mapping[str, Array], at: int, factor: float) -> dict[str, Array]:
    """Drawn numbers of the bank grow with it, or shrink."""
    bank = f"options[{at}].bank."
    scale = {bank + name: factor for name in GROWING} | {bank + "resistance": 1.0 / factor}
    return {path: value * scale.get(path, 1.0) for path, value in values.items()}


def _mass(case: Case, at: int, factor: float) -> float:
    """What a bank ``factor`` times as large weighs more, with tray and fastenings [kg]."""
    option: Option = case.options[at]
    bank = option.bank
    assert bank is not None
    own = (
        _first(bank.mass)
        if bank.mass is not None
        else _nominal(bank) / _first(bank.specific_energy)
    )
    return (factor - 1.0) * own * (1.0 + _first(case.masses.battery_fastening))


def _nominal(bank: Bank | None) -> float:
    assert bank is not None
    return _first(bank.nominal_voltage) * _first(bank.charge)


def _first(value: object) -> float:
    return float(np.asarray(value).flat[0])
