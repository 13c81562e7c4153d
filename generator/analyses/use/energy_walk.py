"""Where does the energy of a full bank go on the leg that must be made?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import Store
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import best, side_by_side
from generator.analyses.store.bank_state import taken
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.leg_energy import Stretch
from generator.analyses.use.legs import LegResult
from generator.arrays import Array, Numbers
from generator.case.factors import Factors
from generator.records import number, record

STILL = Weather(0.0, 1.0)


@record
class Step:
    """One step of the walk down from a full bank [J]."""

    name: str
    energy: float = number("energy", "energy of a step down from a full bank", expected=True)


@dataclass(frozen=True)
class Walk:
    """Best estimate from nominal bank down to what is left, all J."""

    place: int
    nominal: float
    steps: tuple[Step, ...]
    left_each: Array  # the best estimate is what the steps leave; nan where it cannot be done

    @property
    def left(self) -> float:
        """What the steps leave of the nominal bank above its reserve."""
        return self.nominal - sum(step.energy for step in self.steps)


def energy_walk(outfit: Outfit, item: LegResult, place: int) -> Walk | None:
    """The walk of one leg; none without a bank, or where the best estimate cannot do it."""
    need, held = np.atleast_2d(item.need), outfit.store
    spent = float(best(item.before)[0])
    if held.aged is None or not np.isfinite(need[0, 0]) or not np.isfinite(spent):
        return None
    nominal = float(best(held.nominal)[0])
    first = (Step("the way before it", spent),) if spent else ()
    steps = (*_bank(held, outfit.reserve, nominal), *first, *_leg(outfit, item))
    walk = Walk(
        place=place,
        nominal=nominal,
        steps=steps,
        left_each=item.above - item.before - need,
    )
    return walk if np.isfinite(walk.left) else None


def _bank(held: Store, kept: Reserve, nominal: float) -> tuple[Step, ...]:
    """What of the label is not planned with."""
    state = held.aged
    assert state is not None
    floor, share = (float(best(value)[0]) for value in (state.floor, state.condition.share))
    above, aged = nominal * (1.0 - floor), nominal * (1.0 - floor) * share
    usable = float(best(held.usable_aged)[0])
    return (
        Step("below the floor", nominal - above),
        Step("age at the horizon", above - aged),
        Step("cold", aged - usable),
        Step("reserve", min(float(best(kept.of_aged)[0]), usable)),
    )


def _leg(outfit: Outfit, item: LegResult) -> tuple[Step, ...]:
    """Each circumstance added to those before it, so that the parts sum to the need."""
    leg, case, option = item.leg, outfit.case, outfit.option
    clean = _clean(case.factors)
    windy = Weather(side_by_side(0.0, leg.wind), side_by_side(1.0, leg.fetch))
    flat = replace(case.factors, wave_resistance=0.0, pitching_loss=0.0)
    rough = np.asarray(item.outside)
    distances = side_by_side(leg.distance - leg.exposed_distance, leg.exposed_distance)
    # lacking: of the best estimate alone, whose need is known to have a value here
    through = side_by_side(leg.speed, np.where(np.isfinite(rough), rough, leg.speed))

    def both(factors: Factors, weather: Weather, stream: Numbers = 0.0) -> float:
        own = replace(case, factors=factors)
        drain = at_points(own, option, outfit.power, outfit.scale, through, weather).output.drain
        loss = taken(option.bank, outfit.store.aged, drain)
        needs = Stretch(distances, through, np.asarray(loss)).need(stream)
        return float(np.where(best(distances) > 0.0, best(needs), 0.0).sum())

    levels = (
        both(clean, STILL), both(case.factors, STILL), both(flat, windy),
        both(case.factors, windy), both(case.factors, windy, leg.stream),
    )  # fmt: skip
    stream = "stream (tide worked)" if item.slack else "stream"
    names = ("calm, clean boat", "fouling", "wind", "sea", stream)
    gains = np.diff((0.0, *levels))
    house = float(best(item.need)[0]) - levels[-1]
    return (
        *(Step(name, float(gain)) for name, gain in zip(names, gains, strict=True)),
        Step("house", house),
    )


def _clean(factors: Factors) -> Factors:
    """No growth on bottom or blades."""
    return replace(factors, fouling=0.0, propeller_condition=1.0)
