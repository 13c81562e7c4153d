"""What does results.json say of pulling, stopping, the propeller and its match?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.bench import TIP_CLEARANCE, Screw
from generator.analyses.motion.plant import LIMITS
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Numbers
from generator.report.results.suffix import PER_SI, put

Row = dict[str, Any]
NO_PITCH = "no pitch of the series does"
NO_APERTURE = "the height of the aperture is not given"
CROSS_WINDS = (10.0, 15.0, 20.0, 25.0)  # kn, as the analysis takes them


def _middle(values: Numbers, suffix: str, cautious: str = "high") -> float:
    return scalar(spread(values, cautious).middle) * PER_SI[suffix]


def docking_part(found: Findings) -> Row:
    """Pull tied up, stops from 3 and 5 kn, and the wind across the bow."""
    docked, length = found.docking, np.asarray(found.case.boat.hull.length_overall)
    share = docked.power / found.key.rated_shaft_power
    return {
        "ahead_n": _middle(docked.ahead, "n", "low"),
        "ahead_peak_n": _middle(docked.ahead_peak, "n", "low"),
        "astern_n": _middle(docked.astern, "n", "low"),
        "bollard_power_kw": _middle(docked.power, "kw"),
        "bollard_power_share": _middle(share, "1"),
        "bollard_limit": LIMITS[docked.binding],
        "stops": [
            {
                "speed_kn": stop.speed * PER_SI["kn"],
                "distance_m": _middle(stop.distance, "m"),
                "distance_high_m": scalar(spread(stop.distance).high),
                "lengths": _middle(stop.distance / length, "1"),
                "time_s": _middle(stop.time, "s"),
                "time_high_s": scalar(spread(stop.time).high),
            }
            for stop in docked.stops
        ],
        "cross_wind": [
            {
                "wind_kn": wind,
                "bow_force_n": _middle(docked.bow_force[:, [place]], "n"),
                "steerage_kn": _middle(docked.steerage[:, [place]], "kn"),
            }
            for place, wind in enumerate(CROSS_WINDS)
        ],
    }


def match_part(found: Findings) -> Row:
    """Turns at full power, what would match, the best propeller, shaft and thrust."""
    fit, propeller = found.match, found.option.propeller
    best, own = fit.best, fit.own
    suffix = "kw" if found.option.motor is not None else "l_per_h"
    row: Row = {
        "reached_rpm": _middle(found.key.reached.turns, "rpm"),
        "reached_newtonmetre": _middle(found.key.reached.torque, "1"),
        "reached_shaft_kw": _middle(found.key.reached.shaft_power, "kw"),
        "reached_kn": _middle(found.key.reached.speed, "kn"),
        "reached_limit": found.key.reached.limit,
        "full_power_rpm": _middle(fit.turns, "rpm"),
        "full_power_newtonmetre": _middle(fit.torque, "1"),
        "off_share": _middle(fit.deviation, "1"),
        "beyond_curve": fit.beyond_curve,
        "ratio": fit.ratio,
        "advised_ratio": fit.advised,
        "pitch_mm": None if fit.pitch is None else fit.pitch * 1e3,
        "pitch_mm_why": NO_PITCH if fit.pitch is None else None,
        "own_efficiency": own.efficiency,
        "aperture_height_mm": put(propeller.aperture_height, "mm"),
        "aperture_height_mm_why": NO_APERTURE if propeller.aperture_height is None else None,
        "clearance_share": fit.clearance,
        "clearance_share_why": NO_APERTURE if fit.clearance is None else None,
        "stall_newtonmetre": fit.stall_torque,
        "shaft_needed_mm": fit.shaft_needed * 1e3,
        "shaft_diameter_mm": put(propeller.shaft_diameter, "mm"),
        "shaft_diameter_mm_why": "not measured" if propeller.shaft_diameter is None else None,
        "shaft_holds": _shaft_holds(found),
        "blade_area_needed": fit.blade_area_needed,
        "cavitates": fit.blade_area_needed > float(np.asarray(propeller.area_ratio).flat[0]),
        "best": None if best is None else _screw(best, own, suffix),
    }
    return row


def _shaft_holds(found: Findings) -> bool | None:
    shaft = found.option.propeller.shaft_diameter
    return (
        None
        if shaft is None
        else bool(float(np.asarray(shaft).flat[0]) >= found.match.shaft_needed)
    )


def _screw(best: Screw, own: Screw, suffix: str) -> Row:
    return {
        "diameter_mm": best.diameter * 1e3,
        "pitch_mm": best.pitch * 1e3,
        "ratio": best.ratio,
        "aperture_needed_mm": best.diameter * (1.0 + 2.0 * TIP_CLEARANCE) * 1e3,
        "pull_n": best.pull,
        "efficiency": best.efficiency,
        f"cruise_{suffix}": best.drain * PER_SI[suffix],
        f"saving_{suffix}": (own.drain - best.drain) * PER_SI[suffix],
        "saving_share": 1.0 - best.drain / own.drain,
    }
