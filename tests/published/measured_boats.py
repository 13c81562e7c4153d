"""What does the study foretell of boats whose owners have read speed and battery power?

Run as a script it prints the table of predictions. Inputs and readings stand in CSV beside it;
the inputs were written down before the first prediction of their boats. What the owner did not tell
and the study now draws by itself, the state of the bottom, is left to it.
"""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np
import yaml

from generator.analyses.motion.power import at_speed
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.case.case import Case
from generator.case.open import read_case
from generator.tables.load import read_file
from tests.alone import alone

HERE = Path(__file__).parent
KNOT = 1852.0 / 3600.0
DRAWS = 2000
SETS = ("measured_boats", "measured_boats_more")
UNTOLD = "boat.bottom"
# What a case needs and no reading tells; none of it moves the power at a speed.
FRAME = """
version: 1
study: {date: 2026-11-20, currency: EUR}
boat: {name: boat, market: other, hull: {hull_type: displacement monohull, lcf: -5 %}}
waters: {name: sea, kind: salt, exposure: coastal, country: US}
engine: {rated_power: 15 kW, rated_speed: 3000 rpm, tank: 60 l, condition: worn}
propeller: {kind: fixed, installation: shaft}
planning: {cruise_speed: 4 kn}
berth: {name: berth, shore_power: false}
legs: [{name: leg, distance: 1 nm, times_per_year: 1, speed: 3 kn, refuge: true, sailable: true}]
house: {separate_bank: true}
options:
  - {id: keep, name: keep, kind: keep}
  - id: a
    name: motor
    kind: battery
    bank: {chemistry: LFP, nominal_voltage: 48 V, charge: 300 Ah}
"""


@dataclass(frozen=True)
class Foretold:
    """One reading beside its prediction; W at the battery."""

    boat: str
    knots: float
    read: float
    low: float
    middle: float
    high: float

    @property
    def hit(self) -> bool:
        """Whether the reading lies between one in ten and nine in ten."""
        return self.low <= self.read <= self.high

    @property
    def error(self) -> float:
        """How far the middle lies from the reading, as a share of the reading."""
        return abs(self.middle / self.read - 1.0)

    @property
    def width(self) -> float:
        """Nine in ten over one in ten."""
        return self.high / self.low


def boat_case(boat: str) -> Case:
    """The case that the inputs of one boat make; centre of flotation between old and modern."""
    tree = yaml.safe_load(FRAME)
    tree["study"]["date"] = str(tree["study"]["date"])
    for name, key, value, doubt, origin in _inputs():
        if name == boat and not (key == UNTOLD and origin.startswith("not told")):
            _put(tree, key.split("."), _said(value, doubt))
    tree["options"][1]["motor"] |= {
        "peak_power": tree["options"][1]["motor"]["continuous_power"],
    }
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"{boat}.yaml"
        path.write_text(yaml.safe_dump(tree, sort_keys=False), encoding="utf-8")
        return read_case(path)


@lru_cache(maxsize=1)
def _inputs() -> tuple[tuple[str, ...], ...]:
    columns = ("boat", "key", "value", "plus_minus", "origin")
    tables = [read_file(HERE / f"{name}_inputs.csv", f"{name}_inputs") for name in SETS]
    return tuple(row for table in tables for row in zip(*map(table.text, columns), strict=True))


@lru_cache(maxsize=1)
def readings() -> tuple[tuple[str, float, float], ...]:
    """Boat, speed [kn] and power [W], in the order of the tables."""
    rows: list[tuple[str, float, float]] = []
    for name in SETS:
        table = read_file(HERE / f"{name}_readings.csv", f"{name}_readings")
        power = (table.column("power_low") + table.column("power_high")) / 2.0
        speed = table.column("speed").tolist()
        rows += zip(table.text("boat"), speed, power.tolist(), strict=True)
    return tuple(rows)


def _said(value: str, doubt: str) -> object:
    plain: object = int(value) if value.isdigit() else value
    return {"value": plain, "from": "estimate", "plus_minus": doubt} if doubt else plain


def _put(tree: dict[str, object], steps: list[str], value: object) -> None:
    node: object = tree
    if steps[0] == "motor":
        options = tree["options"]
        assert isinstance(options, list)
        node = options[1]
    for step in steps[:-1]:
        assert isinstance(node, dict)
        node = node.setdefault(step, {})
    assert isinstance(node, dict)
    node[steps[-1]] = value


@lru_cache(maxsize=1)
def predictions() -> tuple[Foretold, ...]:
    """Every reading beside its prediction, in the order of the tables."""
    curves = {boat: _curve(boat) for boat in dict.fromkeys(row[0] for row in readings())}
    rows = []
    for boat, knots, power in readings():
        drain, speed = curves[boat]
        told = spread(at_speed(drain, speed, knots * KNOT))
        rows.append(
            Foretold(boat, knots, power, scalar(told.low), scalar(told.middle), scalar(told.high))
        )
    return tuple(rows)


def _curve(boat: str) -> tuple[Array, Array]:
    """Battery power per draw and speed in a calm, in service."""
    case = boat_case(boat)
    found = alone(case, 1, DRAWS).findings
    curve = found.power.curves["calm"]
    return np.where(curve.demand.feasible, curve.output.drain, np.inf), found.power.speed


def hit_rate(rows: tuple[Foretold, ...]) -> float:
    """Share of the readings between one in ten and nine in ten."""
    return float(np.mean([row.hit for row in rows]))


def median_width(rows: tuple[Foretold, ...]) -> float:
    """Middle of nine in ten over one in ten."""
    return float(np.median([row.width for row in rows]))


def median_error(rows: tuple[Foretold, ...]) -> float:
    """Middle of how far the middles lie from the readings."""
    return float(np.median([row.error for row in rows]))


def lines() -> list[str]:
    """The table of predictions as text."""
    head = "boat       kn    read W   P10 W   P50 W   P90 W  P90/P10  read/P50  inside"
    body = [
        f"{row.boat:8} {row.knots:5.2f} {row.read:8.0f} {row.low:8.0f} {row.middle:7.0f} "
        f"{row.high:7.0f} {row.width:7.2f} {row.read / row.middle:8.2f}   "
        f"{'yes' if row.hit else 'no'}"
        for row in predictions()
    ]
    rows = predictions()
    foot = (
        f"inside {hit_rate(rows):.0%}, median width {median_width(rows):.2f}, "
        f"median error {median_error(rows):.0%}"
    )
    return [head, *body, foot]


if __name__ == "__main__":
    import sys

    sys.stdout.write("\n".join(lines()) + "\n")
