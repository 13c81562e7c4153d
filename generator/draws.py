"""Which values do the uncertain numbers take, draw by draw? One table for the whole study."""

from __future__ import annotations

import dataclasses
import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from generator.arrays import Array
from generator.case.assumption import Assumption
from generator.case.case import Case

SEED = 20
TIED = ("prices.diesel_trend", "prices.electricity_trend")  # by prices.energy_correlation
NINETY_PER_CENT = 1.6448536269514722  # normal deviate of the 5 % and 95 % points


@dataclass(frozen=True)
class Draws:
    """``values[path]`` has shape (count + 1, 1); its first row is the best estimate.

    With ``count`` 0 only the best estimate is there.
    """

    count: int
    seed: int
    values: Mapping[str, Array]


def make_draws(case: Case, count: int, seed: int = SEED) -> Draws:
    """Draw every number of the case that has a range, each by a stream of its own.

    A stream is named by its number's ``draw_key`` and shared by the fields that move together,
    so whatever else the case holds moves no draw of it. Register ranges are triangular between
    their ends unless their row says otherwise; a plus_minus holds nine values in ten. In two pieces
    half of the draws lie on each side of the value, thinning out to the ends: it is the median.
    """
    moving = [item for item in case.assumptions if item.shape != "fixed" and item.high > item.low]
    uniform = {key: strata(key, count, seed) for key in {item.draw_key for item in moving}}
    _tie(uniform, [_key(moving, path) for path in TIED], _correlation(case))
    values = {
        item.path: np.concatenate(([item.value], quantile(item, uniform[item.draw_key])))[
            :, np.newaxis
        ]
        for item in moving
    }
    return Draws(count, seed, values)


def strata(name: str, count: int, seed: int = SEED) -> Array:
    """One number between 0 and 1 from each of ``count`` equal strata, in an order by chance.

    The stream is seeded by its name alone. The order comes from sorted uniform numbers, because
    numpy promises those to stay the same from version to version, and shuffles it does not.
    """
    words = np.frombuffer(hashlib.sha256(name.encode()).digest(), dtype="<u4")
    stream = np.random.Generator(np.random.PCG64(np.random.SeedSequence([seed, *words.tolist()])))
    order = np.argsort(stream.random(count), kind="stable")
    return np.asarray((order + stream.random(count)) / max(count, 1))


def _key(moving: list[Assumption], path: str) -> str | None:
    return next((item.draw_key for item in moving if item.path == path), None)


def _correlation(case: Case) -> float:
    return float(np.asarray(case.prices.energy_correlation).flat[0])


def _tie(uniform: dict[str, Array], keys: list[str | None], correlation: float) -> None:
    """Let the second stream follow the first one in rank; each keeps its own values.

    Normal deviates are mixed (a Gaussian copula), and the sorted values of the second stream
    are dealt out in the order of the mixture, so that its strata stay what they are.
    """
    first, second = keys
    if first is None or second is None or first == second or correlation == 0.0:
        return
    from scipy.special import ndtri

    lead, follow = ndtri(uniform[first]), ndtri(uniform[second])
    mixed = correlation * lead + np.sqrt(1.0 - correlation**2) * follow
    tied = np.empty_like(follow)
    tied[np.argsort(mixed)] = np.sort(uniform[second])
    uniform[second] = tied


def quantile(item: Assumption, uniform: Array) -> Array:
    """The value below which a share ``uniform`` of all values lies."""
    from scipy.special import ndtri

    low, value, high = item.low, item.value, item.high
    if item.shape == "normal":
        return np.asarray(value + (high - low) / (2 * NINETY_PER_CENT) * ndtri(uniform))
    if item.shape == "lognormal":
        sigma = np.log(high / low) / (2 * NINETY_PER_CENT)
        return np.asarray(value * np.exp(sigma * ndtri(uniform)))
    if item.shape == "two-piece":
        share = 1.0 - np.sqrt(1.0 - np.abs(2.0 * uniform - 1.0))
        end = np.where(uniform < 0.5, low, high)
        return np.asarray(value + (end - value) * share)
    below = (value - low) / (high - low)
    rising = low + np.sqrt(uniform * (high - low) * (value - low))
    falling = high - np.sqrt((1 - uniform) * (high - low) * (high - value))
    return np.asarray(np.where(uniform < below, rising, falling))


def drawn(case: Case, draws: Draws) -> Case:
    """The case with every uncertain field replaced by its column of draws."""
    changed: Case = _replace(case, {tuple(_steps(path)): v for path, v in draws.values.items()})
    return changed


def put(case: Case, fields: Mapping[tuple[str, ...], Any]) -> Case:
    """The case with other values in some of its fields, by their steps."""
    changed: Case = _replace(case, fields)
    return changed


def _steps(path: str) -> list[str]:
    return re.findall(r"[^.\[\]]+", path)


def _replace(node: Any, changes: Mapping[tuple[str, ...], Any]) -> Any:
    """A copy of ``node`` with the fields that ``changes`` names by their steps."""
    if () in changes:
        return changes[()]
    groups: dict[str, dict[tuple[str, ...], Any]] = {}
    for steps, value in changes.items():
        groups.setdefault(steps[0], {})[steps[1:]] = value
    if isinstance(node, tuple):
        return tuple(
            _replace(item, groups[str(place)]) if str(place) in groups else item
            for place, item in enumerate(node)
        )
    return dataclasses.replace(
        node, **{name: _replace(getattr(node, name), group) for name, group in groups.items()}
    )
