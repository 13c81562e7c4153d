"""What must hold for legs, berth and size, whatever the boat."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.analyses.findings import Findings
from generator.analyses.motion.plant import controller_cut_off, peak_drain
from generator.analyses.store.bank_state import bank_state, floored
from generator.analyses.store.limits import limits
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.physics.energy.charging import acceptance, time_to_full
from generator.search import smallest
from generator.study import run
from tests.alone import alone

CASES = Path(__file__).parents[2] / "cases"
HOUR = 3600.0
CHEMISTRIES = st.sampled_from(["LFP", "NMC", "AGM", "flooded"])


@lru_cache(maxsize=2)
def boat(name: str) -> Case:
    return read_case(CASES / f"{name}.yaml")


def found(case: Case, place: int, draws: int = 60, year: bool = False) -> Findings:
    return alone(case, place, draws, year).findings


def with_charge(case: Case, place: int, factor: float) -> Case:
    option = case.options[place]
    assert option.bank is not None
    larger = replace(option, bank=option.bank.resized(factor))
    options = tuple(larger if n == place else o for n, o in enumerate(case.options))
    return replace(case, options=options)


@given(
    chemistry=CHEMISTRIES,
    state=st.floats(0.0, 1.0),
    rate=st.floats(1e-3, 1.0),
    more=st.floats(1.0, 5.0),
)
def test_a_larger_charger_never_takes_longer(
    chemistry: str, state: float, rate: float, more: float
) -> None:
    takes = acceptance(chemistry)
    times = time_to_full(
        state, np.array([rate, rate * more]) / HOUR, takes.time_constant, takes.tail, takes.kept
    )
    assert times[1] <= times[0] * (1.0 + 1e-12)


@given(chemistry=CHEMISTRIES, state=st.floats(0.0, 1.0), deeper=st.floats(0.0, 1.0),
       rate=st.floats(1e-3, 1.0))  # fmt: skip
def test_a_deeper_bank_never_fills_sooner(
    chemistry: str, state: float, deeper: float, rate: float
) -> None:
    takes = acceptance(chemistry)
    times = time_to_full(
        np.array([state, state * deeper]), rate / HOUR, takes.time_constant, takes.tail, takes.kept
    )
    assert times[1] >= times[0] * (1.0 - 1e-12)


@pytest.mark.parametrize("name", ["sloop_30_weekend", "ketch_34_two_motors"])
def test_as_slowly_as_pays_never_asks_for_more(name: str) -> None:
    for place in range(len(boat(name).options)):
        option = found(boat(name), place)
        for own, slow in zip(option.legs.results, option.use.slow, strict=True):
            need = np.atleast_2d(own.need)
            good = np.isfinite(need)
            assert np.all(np.atleast_2d(slow.need)[good] <= need[good] * (1.0 + 1e-12))


def test_slower_never_needs_more_in_a_calm_without_stream() -> None:
    """Down to where house and standing losses decide, which is below 2.5 kn here."""
    case = boat("sloop_30_weekend")
    speeds = np.array([3.0, 3.5, 4.0, 4.5, 5.0]) * 1852.0 / HOUR
    leg = replace(case.legs[0], exposed_distance=0.0, foul_stream=0.0)
    case = replace(case, legs=tuple(replace(leg, speed=float(speed)) for speed in speeds))
    kept = tuple(item for item in case.assumptions if not item.path.startswith("legs"))
    needs = [item.need for item in found(replace(case, assumptions=kept), 2).legs.results]
    assert np.all(np.diff(np.hstack(needs), axis=1) > 0.0)


@settings(max_examples=5, deadline=None)
@given(factor=st.floats(0.4, 1.5), more=st.floats(1.0, 1.6))
def test_a_larger_bank_never_makes_fewer_legs(factor: float, more: float) -> None:
    """Its own mass is that of the ledger, so that only the bank differs."""
    case = boat("ketch_34_two_motors")
    kept = tuple(i for i in case.assumptions if not i.path.endswith("bank.charge"))
    case = replace(case, assumptions=kept)
    small, large = (
        found(with_charge(case, 3, size), 3).use.coverage for size in (factor, factor * more)
    )
    assert small is not None
    assert large is not None
    assert np.all(large.legs >= small.legs)
    assert np.all(large.miles >= small.miles)


TIDE = pytest.mark.xfail(
    strict=True,
    reason="the size is that of energy alone; the ketch's way home also rests on slack water, which"
    " her owner works and no battery mends, so that her row has a condition at every such size",
)


@pytest.mark.parametrize(
    ("name", "place"),
    [("sloop_30_weekend", 2), pytest.param("ketch_34_two_motors", 3, marks=TIDE)],
)
def test_the_smallest_bank_makes_the_legs_go_and_a_smaller_one_does_not(
    name: str, place: int
) -> None:
    """Asked back of the study itself: 2 % more goes, 4 % less does not."""
    case = boat(name)
    study = run(case, make_draws(case, 300))
    size = next(item for item in smallest(case, study) if item.place == place)
    sizing = study.options[place].findings.use.sizing
    assert size.bank is not None
    assert sizing is not None
    for factor, goes in ((1.02, True), (0.96, False)):
        bank = with_charge(case, place, factor * size.bank / sizing.nominal)
        rows = alone(bank, place, 300).verdict.judgements
        results = {row.result for row in rows if row.criterion.id in (1, 2)}
        assert (results == {"go"}) is goes, factor


@settings(max_examples=20, deadline=None)
@given(share=st.floats(0.3, 6.0))
def test_a_bank_of_the_size_asked_for_has_what_was_asked(share: float) -> None:
    """Never 1 % less; no more than 1 % more unless a smaller bank would not hold what is asked."""
    case, place = boat("sloop_30_weekend"), 2
    study = found(case, place, 8)
    asked = share * np.atleast_2d(study.store.usable_aged)
    assert study.use.sizes is not None
    nominal = study.use.sizes.nominal_for(asked)
    motor, bank, aged = study.option.motor, study.option.bank, study.store.aged
    assert motor is not None
    assert bank is not None
    assert aged is not None
    factor = nominal / np.atleast_2d(study.store.nominal)
    controller = controller_cut_off(bank, motor)
    state = bank_state(
        bank.resized(factor),
        aged.condition,
        peak_drain(motor, study.case.factors),
        controller,
        limits(bank.resized(factor), aged.limits.beside),
    )
    assert study.store.asked is not None
    state = floored(bank.resized(factor), state, study.store.asked, controller)
    inside = (factor > 0.4) & (factor < 4.0)  # beyond, the last share is kept
    assert np.all(state.usable[inside] >= 0.99 * asked[inside])
    if share > 1.0:
        assert np.all(state.usable[inside] <= 1.01 * asked[inside])


@pytest.mark.parametrize(("name", "place"), [("sloop_30_weekend", 2), ("ketch_34_two_motors", 3)])
def test_one_charger_in_cables_berth_and_year(name: str, place: int) -> None:
    """What the charger's cable carries is what comes into the bank, in each of the three."""
    case = boat(name)
    study = found(case, place, 0, year=True)
    assert study.installation is not None
    assert study.use.berth is not None
    assert study.use.berth.into_bank is not None
    assert study.option.bank is not None
    circuit = next(item for item in study.installation.circuits if item.kind == "charger")
    power = circuit.continuous * float(np.asarray(study.option.bank.nominal_voltage).flat[0])
    assert float(study.use.berth.into_bank.flat[0]) == pytest.approx(power, rel=1e-9)
    assert study.year is not None
    fastest = float(np.max(study.year.sources["shore"]) / (31 * 24 * HOUR))
    assert fastest <= power


@pytest.mark.parametrize(("name", "place"), [("sloop_30_weekend", 2), ("ketch_34_two_motors", 3)])
def test_the_walk_adds_up(name: str, place: int) -> None:
    study = found(boat(name), place)
    use, worst = study.use, study.key.worst_leg
    assert worst is not None
    assert worst == use.walk_leg
    assert use.walk_nominal is not None
    assert use.walk_left is not None
    item = study.legs.results[worst]
    left = float(np.atleast_2d(item.available)[0, 0] - np.atleast_2d(item.need)[0, 0])
    assert float(use.walk_left[0, 0]) == pytest.approx(left, rel=1e-9)
    gone = sum(step.energy for step in use.walk)
    assert use.walk_nominal - gone == pytest.approx(left, rel=1e-9)
    parts = {step.name: step.energy for step in use.walk}
    assert all(parts[name] >= 0.0 for name in ("reserve", "calm, clean boat", "wind", "sea"))


def test_what_would_mend_a_leg_mends_it() -> None:
    """The ketch's long calm leg under her small motor, at the speed that the study names."""
    case, place = boat("ketch_34_two_motors"), 2
    study = found(case, place, 300)
    mend = next(item for item in study.use.failing if item.slower is not None)
    assert mend.slower is not None
    kept = tuple(i for i in case.assumptions if i.path != f"legs[{mend.leg}].speed")
    legs = tuple(
        replace(leg, speed=mend.slower) if number == mend.leg else leg
        for number, leg in enumerate(case.legs)
    )
    slower = found(replace(case, legs=legs, assumptions=kept), place, 300)
    assert mend.leg not in [item.leg for item in slower.use.failing]
