"""What has the study found of the owner's use of an option: legs, berth, size?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.analyses.store.bank_size import BySize
from generator.analyses.use.berth import Berthed, Charging
from generator.analyses.use.coverage import Coverage
from generator.analyses.use.energy_walk import Step, Walk
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.use.legs import SlowLeg
from generator.analyses.use.sizing import Sizing
from generator.analyses.year.sun_carries import SunCarries
from generator.arrays import Array
from generator.records import number, record, working

WITHOUT = {
    "coverage": "no_passage",
    "walk_leg": "no_walk",
    "berth": "no_propulsion_bank",
    "sun": "no_week_of_sun",
}


@record
class Use:
    """Legs covered, what would mend the others, the walk, the berth, the size, the sun."""

    coverage: Coverage | None  # none without passages
    failing: tuple[LegHelp, ...]  # what would mend the legs that do not fit
    walk: tuple[Step, ...]  # from a full bank down, on the leg that must be made, best estimate
    walk_leg: int | None  # place of that leg
    walk_short: bool  # the walk ends below the reserve
    berth: Berthed | None  # none without a bank
    charging: Charging | None
    sizing: Sizing | None
    walk_nominal: float | None = number("energy", "nominal energy that the walk starts from")
    # Its best estimate is there whenever the walk is, however many draws lack it.
    walk_left: Array | None = number(
        "energy", "energy left above the reserve after the walk", "low", 1.0, expected=True
    )
    slow: tuple[SlowLeg, ...] = working()  # legs at their least-energy speed
    sizes: BySize | None = working()  # usable of another size; none in a brief look
    sun: SunCarries | None = None  # none without a bank, a week of use or a position
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Parts:
    """What is found of the use, one after the other; a brief look leaves most of it out."""

    coverage: Coverage | None
    berth: Berthed | None
    slow: tuple[SlowLeg, ...] = ()
    sizes: BySize | None = None
    failing: tuple[LegHelp, ...] = ()
    walk: Walk | None = None
    sizing: Sizing | None = None


def use_of(parts: Parts) -> Use:
    """The use with its walk laid open, and why what is not there is absent."""
    walk = parts.walk
    lacks = "no_walk" if walk is None else "many_draws_cannot"
    return Use(
        coverage=parts.coverage,
        failing=parts.failing,
        walk=() if walk is None else walk.steps,
        walk_leg=None if walk is None else walk.place,
        walk_short=walk is not None and walk.left < 0.0,
        berth=parts.berth,
        charging=None if parts.berth is None else parts.berth.charging,
        sizing=parts.sizing,
        walk_nominal=None if walk is None else walk.nominal,
        walk_left=None if walk is None else walk.left_each,
        slow=parts.slow,
        sizes=parts.sizes,
        absent=WITHOUT | {"walk_nominal": "no_walk", "walk_left": lacks},
    )
