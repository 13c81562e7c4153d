"""Legs of one outing: one charge for all of them, days of their own, no plug before the evening."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best
from generator.analyses.use.outings import Outings, outings
from generator.analyses.year.weather import weather
from generator.case.case import Case
from generator.draws import drawn, make_draws
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed, faults, line_of

CASES = Path(__file__).parents[3] / "cases"
SLOOP = (CASES / "sloop_30_weekend.yaml").read_text(encoding="utf-8")
FOLLOWS = '    follows: "Berth to Landguard Point, then sails up"\n'
OUT, HOME, CALM = 0, 1, 2


def sloop(*exchanges: tuple[str, str]) -> Case:
    return case_of(changed(*exchanges, text=SLOOP))


def electric(*exchanges: tuple[str, str]) -> Findings:
    return alone(sloop(*exchanges), 2, 40).findings


def calendar(case: Case) -> Outings:
    """As the study makes it, before any option."""
    moved = drawn(case, make_draws(case, 0))
    sky = weather(moved)
    assert sky is not None
    times = outings(moved, sky)
    assert times is not None
    return times


def test_the_way_home_has_what_the_way_out_in_a_calm_leaves() -> None:
    """4.5 nm at 4.8 kn against 0.4 kn are 4.5 / 4.4 h of the calm power at 4.8 kn."""
    found = electric()
    out, home = found.legs.results[OUT], found.legs.results[HOME]
    assert np.all(out.before == 0.0)
    assert out.available == pytest.approx(out.above)
    assert home.available == pytest.approx(home.above - home.before)
    assert home.ratio == pytest.approx(home.available / home.need)
    calm = found.power.curves["calm"]
    drain = np.interp(4.8 * 1852 / 3600, found.power.speed, np.atleast_2d(calm.output.drain)[0])
    at_terminals = float(drain) * 4.5 / 4.4 * 3600.0
    assert float(best(home.before)[0]) == pytest.approx(at_terminals, rel=0.03)  # sag


def test_a_leg_that_follows_none_starts_charged() -> None:
    alone = electric((FOLLOWS, "")).legs.results[HOME]
    after = electric().legs.results[HOME]
    assert alone.need == pytest.approx(after.need, rel=1e-9)
    assert np.all(alone.ratio > after.ratio)
    assert np.all(alone.before == 0.0)


def test_a_house_on_the_bank_draws_between_two_legs() -> None:
    """45 W for three hours are 0.135 kWh, and it draws on the way out too."""
    apart = electric().legs.results[HOME].before
    shared = ("separate_bank: true", "separate_bank: false")
    on_bank = electric(shared).legs.results[HOME].before
    assert float(best(on_bank - apart)[0]) > 45.0 * 3.0 * 3600.0
    assert float(best(on_bank - apart)[0]) < 45.0 * 4.3 * 3600.0


def test_the_walk_and_the_smallest_bank_know_of_the_way_out() -> None:
    after, alone = electric(), electric((FOLLOWS, ""))
    assert after.use.walk_left is not None
    assert alone.use.walk
    assert "the way before it" in [step.name for step in after.use.walk]
    assert "the way before it" not in [step.name for step in alone.use.walk]
    spent = sum(step.energy for step in after.use.walk) + float(after.use.walk_left[0, 0])
    assert spent == pytest.approx(after.use.walk_nominal)
    assert after.use.sizing is not None
    assert alone.use.sizing is not None
    assert after.use.sizing.at_own_speeds > 1.1 * alone.use.sizing.at_own_speeds


def test_a_leg_that_lacks_the_way_out_is_mended_by_sailing_it() -> None:
    small = electric(("charge: 220 Ah", "charge: 165 Ah"))
    (help_of,) = [item for item in small.use.failing if item.leg == HOME]
    assert help_of.sail is not None
    assert help_of.sail >= 1.0
    assert help_of.nominal is not None
    larger = small.use.sizing
    assert larger is not None
    assert help_of.nominal > larger.nominal


def test_the_year_of_the_legs_goes_against_their_stream() -> None:
    """24 x 4.5 / 4.4 + 18 x 4.5 / 4.0 + 4 x 9 / 4.2 hours."""
    found = electric()
    hours = 24 * 4.5 / 4.4 + 18 * 4.5 / 4.0 + 4 * 9 / 4.2
    assert float(best(found.legs.yearly_time)[0]) / 3600.0 == pytest.approx(hours, rel=0.01)


def test_out_for_the_day_she_hangs_on_no_plug() -> None:
    times = calendar(sloop())
    for departure in times.departures:
        evening = departure.hour // 24 * 24 + 20
        assert not times.plugged[departure.hour : evening].any()
    assert times.plugged.mean() > 0.9


def test_outings_have_days_of_their_own_and_the_way_home_those_of_the_way_out() -> None:
    times = calendar(sloop())
    days = {
        place: {item.hour // 24 for item in times.departures if item.leg == place}
        for place in (OUT, HOME, CALM)
    }
    assert [len(days[place]) for place in (OUT, HOME, CALM)] == [24, 18, 4]
    assert days[HOME] <= days[OUT]
    assert not days[CALM] & days[OUT]


def test_more_outings_than_days_share_them() -> None:
    often = ("times_per_year: 4", "times_per_year: 20\n    season: July to July")
    case = sloop(often)
    times = calendar(replace(case, planning=replace(case.planning, season="July to July")))
    assert times.unplaced == 0
    assert len(times.departures) == 24 + 18 + 20


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("    follows: Nowhere\n", "is `Nowhere`"),
        ("    follows: Home from Landguard Point against the ebb\n", "is `Home from"),
    ],
)
def test_a_leg_follows_an_earlier_one(text: str, problem: str, tmp_path: Path) -> None:
    content = changed((FOLLOWS, text), text=SLOOP)
    (fault,) = faults(tmp_path, content)
    assert fault.line == line_of(content, text.strip())
    assert fault.path == "legs[1].follows"
    assert fault.problem.startswith(problem)
    assert "earlier leg" in fault.expected


def test_a_leg_is_made_no_more_often_than_the_one_it_follows(tmp_path: Path) -> None:
    content = changed(("times_per_year: 18", "times_per_year: 30"), text=SLOOP)
    (fault,) = faults(tmp_path, content)
    assert fault.path == "legs[1].follows"
    assert "30 times a year" in fault.problem


def test_a_direct_drive_has_no_gear_to_lose_in() -> None:
    direct = sloop().options[2].motor
    reduced = ("rated_speed: 1500 rpm\n      gear_ratio: 1\n",
               "rated_speed: 3000 rpm\n      gear_ratio: 2\n")  # fmt: skip
    geared = sloop(reduced).options[2].motor
    assert direct is not None
    assert geared is not None
    assert float(best(direct.gear_efficiency)[0]) == 1.0
    assert float(best(geared.gear_efficiency)[0]) == pytest.approx(0.97)
