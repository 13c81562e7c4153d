"""Which rows of a sea trial cannot be?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.check import Finding, si
from generator.case.leaf import Given
from generator.case.plant_keys import TrialRowKeys
from generator.case.said import Place
from generator.case.schema import CaseKeys
from generator.units.grammar import from_si

GOVERNOR = 1.12  # of rated turns: where a governor holds an engine without load
MOST_FUEL = 0.38e-3 / 3.6e6  # m3/J of rated power: a quarter above the usual line at full load
MOST_POWER = 1.1  # of rated power, off a maker's curve
SAME_TURNS = 0.005  # two rows closer than this are one setting
SAME_SPEED = 0.10  # and then their speeds are no further apart than this


def find_trial_contradictions(case: CaseKeys) -> Iterator[Finding]:
    """Faults of the rows by themselves, against the engine, and against one another."""
    yield from _aboard(case)
    for number, row in enumerate(case.trial.rows):
        place: Place = ("trial", "rows", number)
        yield from _aground(case, row, place)
        yield from _turns(case, row, place)
        yield from _engine(case, row, place)
    yield from _rows(case)


def _aboard(case: CaseKeys) -> Iterator[Finding]:
    """Battery power needs to know which motor it drove."""
    named = case.trial.with_option
    motors = [option.id for option in case.options if option.kind == "battery"]
    if named and named not in motors:
        hope = f"expected the id of a battery option: {', '.join(map(str, motors)) or 'none here'}"
        yield Finding(("trial", "with_option"), f"is `{named}`", hope)
    for number, row in enumerate(case.trial.rows):
        place: Place = ("trial", "rows", number)
        if row.battery_power and not named:
            hope = "expected trial.with_option: which motor was aboard?"
            yield Finding((*place, "battery_power"), f"is {row.battery_power.shown}", hope)


def _aground(case: CaseKeys, row: TrialRowKeys, place: Place) -> Iterator[Finding]:
    """A run over ground that she would have touched."""
    draught = case.boat.hull.draught
    if row.depth and draught and row.depth.value <= draught.value:
        problem = f"is {row.depth.shown}, and she draws {draught.shown}"
        yield Finding((*place, "depth"), problem, "expected more than boat.hull.draught")


def _turns(case: CaseKeys, row: TrialRowKeys, place: Place) -> Iterator[Finding]:
    """A step at more than full throttle, or at more than the governor lets the engine turn."""
    full, turns = case.trial.full_throttle_speed, row.engine_speed
    if not turns or row.battery_power:
        return
    here = (*place, "engine_speed")
    if full and turns.value > full.value * 1.001:
        problem = f"is {turns.shown}, above full throttle at {full.shown}"
        yield Finding(here, problem, "expected at most trial.full_throttle_speed")
    rated = case.engine.rated_speed
    if rated and turns.value > GOVERNOR * rated.value:
        most = from_si(GOVERNOR * rated.value, "rpm")
        problem = f"is {turns.shown}, more than the governor of the engine lets it turn"
        yield Finding(here, problem, f"expected at most {most:.0f} rpm; check the tachometer")


def _engine(case: CaseKeys, row: TrialRowKeys, place: Place) -> Iterator[Finding]:
    """Fuel or power beyond what the engine is rated for."""
    rated = case.engine.rated_power
    if not rated:
        return
    if si(row.fuel_rate) > MOST_FUEL * rated.value:
        most = from_si(MOST_FUEL * rated.value, "l/h")
        hope = f"expected at most {most:.1f} l/h of an engine of {rated.shown}"
        yield Finding((*place, "fuel_rate"), f"is {_shown(row.fuel_rate)}", hope)
    if si(row.curve_power) > MOST_POWER * rated.value:
        hope = f"expected at most engine.rated_power, {rated.shown}"
        yield Finding((*place, "curve_power"), f"is {_shown(row.curve_power)}", hope)


def _rows(case: CaseKeys) -> Iterator[Finding]:
    """Two rows at the same turns with speeds that cannot both be."""
    seen: list[tuple[int, float, float]] = []
    for number, row in enumerate(case.trial.rows):
        if not row.engine_speed or not row.speed_out or not row.speed_back:
            continue
        turns, speed = row.engine_speed.value, (row.speed_out.value + row.speed_back.value) / 2.0
        for earlier, other_turns, other_speed in seen:
            same = abs(turns / other_turns - 1.0) < SAME_TURNS
            if same and abs(speed / other_speed - 1.0) > SAME_SPEED:
                known = from_si(other_speed, "kn"), from_si(speed, "kn")
                problem = (
                    f"makes {known[1]:.2f} kn at the turns that make {known[0]:.2f} kn in "
                    f"rows[{earlier}]"
                )
                hope = "expected the same speed at the same turns"
                yield Finding(("trial", "rows", number, "speed_out"), problem, hope)
                break
        seen.append((number, turns, speed))


def _shown(given: Given | None) -> str:
    return given.shown if given else ""
