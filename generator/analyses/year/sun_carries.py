"""Does the sun put back what her weeks of use take, and how many panels would?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace

import numpy as np

from generator.analyses.percentiles import best, lacking_share, scalar, spread
from generator.analyses.use.legs import Legs
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.year import Year
from generator.arrays import Array
from generator.case.option import Option
from generator.case.register import find_default
from generator.case.supply import PanelGroup
from generator.records import number, record
from generator.tables.load import read_table

TENTH = 0.1  # share of the draws beyond the pessimistic end
DIM = 0.25  # quantile of the weeks of use, over all years of weather
FACTORS = 17  # of the drawn yield, between which a quantile is read straight
REFERENCE = 1000.0  # W of panels that stand for an option without any
MOST = 1e5  # W; no boat carries as many
KEY = "options.supply.panels"


@record
class SunCarries:
    """Weeks of use without a plug. J, W, m2; arrays are per draw.

    ``ratio`` is the dimmest quarter of the weeks: sun less house, over what the legs take.
    """

    weeks: int = number("count", "weeks of use")
    # nan where a leg cannot be motored
    use: Array = number("energy", "energy that her legs take in a week of use", cautious="high")
    sun: float = number("energy", "sun into the bank in a dim week, by the best estimate")
    house: float = number("energy", "energy that the house takes in a week of use")
    rated: float = number("watts", "rated power of her own panels")
    ratio: Array = number("ratio", "sun less house in a dim week, over what her legs take", "low")
    least: float | None = number("watts", "smallest panels that carry her")
    least_area: float | None = number("area", "area of those as flat panels that stand free")
    absent: Mapping[str, str] = field(default_factory=dict)


def reference_panels(option: Option) -> Option:
    """The option with panels: its own, or flat ones by the register where it has none."""
    supply = option.supply
    if option.bank is None or supply is None or supply.panels:
        return option
    names = ("tilt", "shading", "salt", "under_way", "conversion", "heat_loss")
    found = {name: find_default(f"{KEY}.{name}", ()) for name in names}
    values = {name: 0.0 if row is None else row.value for name, row in found.items()}
    group = PanelGroup(
        name="flat panels", mounting="free", power=REFERENCE, heading=None, line=0, **values
    )
    return replace(option, supply=replace(supply, panels=(group,)))


def sun_carries(
    option: Option, year: Year, panels: PanelYield, efficiency: float, legs: Legs, go: float
) -> SunCarries | None:
    """The dimmest quarter of the weeks in which she is used; none where she never is.

    ``panels`` are her own or the reference; the year holds her house and her legs.
    """
    used = year.weekly_legs > 0.0
    if not used.any():
        return None
    hours = panels.sun[: used.size * 168].reshape(used.size, 168, -1).sum(axis=1) * 3600.0
    sun, house = hours[used] * efficiency, year.weekly_house[used]
    doubt = legs.yearly / best(legs.yearly)[0]
    use = float(year.weekly_legs[used].mean()) * np.atleast_2d(doubt)
    own = bool(option.supply and option.supply.panels)
    ratio = _ratio(sun, house, use, panels.factor) if own else np.zeros((1, 1))
    least = _least(sun, house, use, panels, go)
    per_area = read_table("energy/panel_area")
    area = per_area.column("power")[per_area.row_of("mounting", "free")]
    return SunCarries(
        weeks=int(used.sum()),
        use=use,
        sun=float(np.quantile(sun, DIM)) if own else 0.0,
        house=float(house.mean()),
        rated=panels.rated if own else 0.0,
        ratio=ratio,
        least=least,
        least_area=None if least is None else least / float(area),
        absent=without(use),
    )


def without(use: Array) -> dict[str, str]:
    """Why a number of hers is absent."""
    unknown = lacking_share(use) > TENTH
    return {
        **dict.fromkeys(("use", "ratio"), "leg_beyond"),
        **dict.fromkeys(("least", "least_area"), "leg_beyond" if unknown else "no_panels_do_it"),
    }


def _ratio(sun: Array, house: Array, use: Array, factor: Array) -> Array:
    """Per draw; the quantile is taken at a few yields and read straight between them."""
    shades = np.atleast_2d(factor)
    tried = np.linspace(float(shades.min()), float(shades.max()), FACTORS)
    weeks = np.ravel(sun), np.ravel(np.broadcast_to(house, np.shape(sun)))
    dim = np.quantile(tried[:, np.newaxis] * weeks[0] - weeks[1], DIM, axis=1)
    net = np.interp(shades, tried, dim)
    return np.asarray(np.maximum(net, 0.0) / use)


def _least(sun: Array, house: Array, use: Array, panels: PanelYield, go: float) -> float | None:
    """Rated power at which nine draws of ten reach the ratio [W]."""
    low, high = 0.0, MOST / panels.rated

    def reached(scale: float) -> float:
        return scalar(spread(_ratio(sun * scale, house, use, panels.factor), "low").low)

    if not reached(high) >= go:
        return None
    for _ in range(18):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if reached(middle) < go else (low, middle)
    return high * panels.rated
