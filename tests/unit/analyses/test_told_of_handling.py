"""What is told of power, range, head wind, docking, streams and sailing, by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from generator.analyses.handling.cruising_range import Range
from generator.analyses.handling.docking import Stop
from generator.analyses.handling.headwind import WINDS, Headwind, Ladder
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.handling.stream import Gate, StreamRows
from generator.analyses.handling.under_sail import OneMoreRows, under_sail
from generator.analyses.motion.match import BestScrew
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT
from generator.analyses.motion.rules_of_thumb import rules_of_thumb
from generator.analyses.motion.speed_table import SpeedPower
from generator.report.numbers import Display
from generator.report.template import reason
from generator.report.tree import Telling, tree
from tests.unit.report.lacking import ELECTRIC, found, study

RPM = np.pi / 30.0  # rad/s


def told(item: Any) -> Any:
    return tree(item, "here", Telling(Display("metric", "EUR")))


def ladder(made: float, stops: float) -> Ladder:
    """So many knots against every wind; power binds below 20 kn and torque from there on."""
    speed = np.full((4, WINDS.size), made * KNOT)
    return Ladder(speed, (WINDS >= 19.9 * KNOT).astype(int), np.full((4, 1), stops * KNOT))


def headwind(continuous: Ladder, peak: Ladder) -> Headwind:
    """The formula ends at 30 kn; each knot of wind asks for 100 N and raises 2 cm of sea."""
    steps = np.arange(41.0)
    return Headwind(
        continuous, peak, 0.02 * steps[np.newaxis, :], steps // 4, 0.1 * steps,
        (steps > 30)[np.newaxis, :], np.array([[30 * KNOT]]), steps, steps, 100.0 * steps,
    )  # fmt: skip


def test_nothing_is_told_of_a_wind_beyond_the_wave_formula() -> None:
    own = headwind(ladder(4.0, 20.5), ladder(5.0, 35.0))
    table = told(HeadwindTable.of(found(headwind=own)))
    last, first = table["rows"][30], table["rows"][31]
    assert last["wind_kn"] == pytest.approx(30.0)
    assert (last["beaufort"], last["wave_height_m"]) == (7.0, pytest.approx(0.6))
    assert (last["need_n"], last["beyond_limit"]) == (3000.0, False)
    assert (last["continuous_kn"], last["peak_low_kn"]) == pytest.approx((4.0, 5.0))
    assert (last["continuous_limit"], table["rows"][19]["peak_limit"]) == (LIMITS[1], LIMITS[0])
    for name, key in (("need", "need_n"), ("continuous", "continuous_kn"), ("peak", "peak_kn")):
        assert (first[key], first[f"{name}_why"]) == (None, reason("sea_beyond_formula"))
    assert (first["beyond_limit"], first["continuous_limit"]) == (True, None)


def test_the_wind_in_which_she_stops_is_told_with_what_stops_her() -> None:
    own = headwind(ladder(4.0, 19.5), ladder(5.0, 35.0))
    table = told(HeadwindTable.of(found(headwind=own)))
    assert table["continuous"]["stops_kn"] == pytest.approx(19.5)
    assert table["continuous"]["stops_by"] == LIMITS[0]
    assert table["peak"]["stops_kn"] == table["limit_wind_kn"] == pytest.approx(30.0)
    assert table["peak"]["stops_by"] == "sea"


def test_the_lee_shore_stands_in_the_wind_of_her_waters() -> None:
    """The sloop's waters: criterion 4 names 20 kn there."""
    own = headwind(ladder(4.0, 20.5), ladder(5.0, 35.0))
    shore = told(HeadwindTable.of(found(headwind=own)))["lee_shore"]
    assert (shore["wind_kn"], shore["open_sea_m"]) == pytest.approx((20.0, 2.0))
    assert (shore["need_n"], shore["peak_kn"]) == pytest.approx((2000.0, 5.0))
    steep = replace(own, beyond_limit=np.full((1, 41), True))
    shore = told(HeadwindTable.of(found(headwind=steep)))["lee_shore"]
    assert (shore["beyond_limit"], shore["peak_kn"]) == (True, None)
    assert shore["continuous_why"] == reason("sea_beyond_formula")


def test_a_stop_is_told_in_metres_lengths_and_seconds() -> None:
    """Draws of 9, 10 and 11 m: the ends lie a fifth of a step in; 20 m of boat."""
    way = np.array([[10.0], [9.0], [10.0], [11.0]])
    row = told(Stop(3.0 * KNOT, way, way / 20.0, 2.0 * way))
    assert row["speed_kn"] == pytest.approx(3.0)
    assert [row[key] for key in ("distance_low_m", "distance_m", "distance_high_m")] == (
        pytest.approx([9.2, 10.0, 10.8])
    )
    assert (row["lengths"], row["time_high_s"]) == pytest.approx((0.5, 21.6))


def test_docking_is_told_with_what_binds_at_the_quay() -> None:
    """The screw takes what the rating gives the shaft, or less; lengths are ways over hers."""
    own = found().docking
    row, length = told(own), found().case.boat.hull.length_overall
    rated = found().key.rated_shaft_power
    np.testing.assert_array_equal(own.of_rated, own.bollard_power / rated)
    assert row["of_rated_share"] <= 1.0
    assert row["bollard_limit"] in LIMITS
    assert [stop["speed_kn"] for stop in row["stops"]] == pytest.approx([3.0, 5.0])
    for stop in own.stops:
        np.testing.assert_array_equal(stop.lengths, stop.distance / length)
    assert [each["wind_kn"] for each in row["cross_wind"]] == pytest.approx([10, 15, 20, 25])
    forces = [each["bow_force_n"] for each in row["cross_wind"]]
    assert forces[2] == pytest.approx(4.0 * forces[0])  # by the square of the wind


def test_the_best_propeller_is_told_beside_her_own() -> None:
    """Of 2 kW at cruise it takes 1.5: a quarter is saved; in fuel for a diesel."""
    screw = BestScrew("bank", 0.4, 0.3, 2.0, 0.48, 900.0, 0.6, 1500.0, 500.0, 0.25)
    row = told(screw)
    assert (row["diameter_mm"], row["pitch_mm"]) == pytest.approx((400.0, 300.0))
    assert row["aperture_needed_mm"] == pytest.approx(480.0)
    assert (row["cruise_kw"], row["saving_kw"], row["saved_share"]) == (1.5, 0.5, 0.25)
    row = told(replace(screw, kept_in="tank", cruise=1e-6, saving=1e-7))
    assert (row["cruise_l_per_h"], row["saving_l_per_h"]) == pytest.approx((3.6, 0.36))


def test_what_fits_is_told_of_the_propeller_that_is_in_her() -> None:
    fit = found().match
    assert fit.best is not None
    assert fit.best.saving == pytest.approx(fit.own.drain - fit.best.cruise)
    assert fit.best.saved == pytest.approx(fit.best.saving / fit.own.drain)
    assert fit.best.aperture_needed == pytest.approx(1.2 * fit.best.diameter)  # a tenth each side
    row = told(replace(fit, pitch=None, clearance=None, aperture_height=None, shaft_diameter=None))
    assert row["pitch_why"] == reason("no_pitch_does")
    assert row["clearance_why"] == row["aperture_height_why"] == reason("no_aperture")
    assert row["shaft_diameter_why"] == reason("shaft_not_measured")
    assert row["deviation_share"] == pytest.approx(row["turns_rpm"] * RPM / rated_turns() - 1.0)


def rated_turns() -> float:
    motor = found().option.motor
    assert motor is not None
    return float(np.ravel(motor.rated_speed)[0])


def rows(least: Any, kept_in: str = "bank") -> StreamRows:
    """Two streams; 3,600 J a metre are 1.852 kWh a mile."""
    through = np.array([2.5, 3.0]) * KNOT
    streams = np.array([0.0, 0.5]) * KNOT
    return StreamRows(kept_in, streams, least, least, through, through - streams)


def test_a_mile_against_a_stream_is_energy_or_fuel() -> None:
    first, second = told(rows(np.array([[3600.0, 7200.0]])))
    assert (first["stream_kn"], second["stream_kn"]) == pytest.approx((0.0, 0.5))
    assert (first["least_kwh_per_nm"], second["cruise_kwh_per_nm"]) == (
        pytest.approx(1.852), pytest.approx(3.704)
    )  # fmt: skip
    assert (second["through_kn"], second["over_kn"]) == pytest.approx((3.0, 2.5))
    fuel = told(rows(np.array([[1e-6, 2e-6]]), "tank"))
    assert [row["least_l_per_nm"] for row in fuel] == pytest.approx([1.852, 3.704])
    stemmed = told(rows(np.array([[3600.0, np.nan]])))[1]
    assert (stemmed["least_kwh_per_nm"], stemmed["least_why"]) == (
        None, reason("too_slow_over_ground")
    )  # fmt: skip


def test_the_stream_that_doubles_a_mile_lies_between_two_rows() -> None:
    """By the sloop's own middles: straight between the row below twice slack water and above."""
    own = found().stream
    table = told(own)
    costs = [row["least_kwh_per_nm"] for row in table["rows"]]
    above = next(place for place, cost in enumerate(costs) if cost >= 2.0 * costs[0])
    step = (2.0 * costs[0] - costs[above - 1]) / (costs[above] - costs[above - 1])
    assert table["doubles_kn"] == pytest.approx(0.25 * (above - 1 + step))
    assert told(replace(own, doubles=None))["doubles_why"] == reason("not_doubled")


def test_a_gate_is_told_with_what_is_to_spare() -> None:
    """Draws of 1, 2 and 3 kn to spare: one in ten has 1.2."""
    leg = found().case.legs[0]
    margin = np.array([[2.0], [1.0], [2.0], [3.0]]) * KNOT
    gate = Gate(
        "bank", "bar", True, False, 2.0 * KNOT, margin, np.full((4, 1), np.nan), np.nan, leg
    )
    row = told(gate)
    assert (row["margin_kn"], row["margin_low_kn"]) == pytest.approx((2.0, 1.2))
    assert (row["stream_kn"], row["name"], row["must_make"]) == (pytest.approx(2.0), "bar", True)
    assert row["least_why"] == row["through_why"] == reason("too_slow_over_ground")


def test_a_knot_more_is_drawn_from_the_bank_or_the_tank() -> None:
    item = OneMoreRows("bank", np.array([2.0 * KNOT]), np.array([[300.0]]), np.array([[400.0]]))
    (row,) = told(item)
    assert (row["sailing_kn"], row["shaft_w"], row["drain_w"]) == pytest.approx((2.0, 300.0, 400.0))
    (row,) = told(replace(item, kept_in="tank", drain=np.array([[1e-6 / 3.6]])))
    assert row["drain_l_per_h"] == pytest.approx(1.0)


def test_what_a_propeller_gives_back_under_sail_is_told_or_why_not() -> None:
    """The sloop's own is fixed; her diesel's gives nothing, nor does one that folds."""
    motor, diesel = found(), study().options[0].findings
    assert motor.sail is not None
    assert diesel.sail is not None
    rows = told(motor.sail)["rows"]
    assert [row["sailing_kn"] for row in rows] == pytest.approx([4.0, 5.0, 6.0])
    assert all(row["returned_w"] > 0.0 for row in rows)
    assert all(row["locked_n"] > row["folded_n"] > 0.0 for row in rows)
    assert all(row["locked_lost_kn"] > row["folded_lost_kn"] > 0.0 for row in rows)
    assert motor.sail.state == "locked"
    row = told(diesel.sail)["rows"][0]
    assert row["returned_w"] is None
    assert row["returned_why"] == row["returned_lost_why"] == reason("diesel_gives_nothing_back")
    folding = replace(motor.option, propeller=replace(motor.option.propeller, kind="folding"))
    sail = under_sail(motor.case, folding, motor.power, motor.trial.scale)
    assert sail.state == "folded"
    assert told(sail)["rows"][0]["returned_why"] == reason("screw_gives_nothing_back")


def test_the_rules_of_thumb_stand_beside_the_computed_need() -> None:
    """Half of Gerr's is no input error; more than his is."""
    own = found()
    gerr = own.rules.gerr
    for need, above in ((0.5 * gerr, False), (1.1 * gerr, True)):
        rules = rules_of_thumb(own.case, own.power, np.full((3, 1), need))
        assert rules.above is above
        assert told(rules)["of_gerr_share"] == pytest.approx(need / gerr)
        assert told(rules)["gerr_kw"] == pytest.approx(gerr / 1e3)


def test_power_over_speed_is_told_of_the_battery_or_of_the_tank() -> None:
    """The best estimate's own curve, without draws; the slowest row is 1.5 kn."""
    for place, name, other in (
        (ELECTRIC, "battery_power_kw", "fuel_rate"), (0, "fuel_rate_l_per_h", "battery_power")
    ):  # fmt: skip
        own = study().options[place].findings
        rows = told(SpeedPower.calm(own))
        assert rows[0]["speed_kn"] == pytest.approx(1.5)
        assert all(row[name] > 0.0 for row in rows)
        assert all(row[f"{other}_why"] for row in rows)
        assert {row["sea"] for row in rows} == {"calm"}
        held = [row["within_continuous"] for row in rows]
        assert all(row["limit"] in (LIMITS if not fits else (None,))
                   for row, fits in zip(rows, held, strict=True))  # fmt: skip
        winds = told(SpeedPower.in_wind(own))
        assert [row["sea"] for row in winds] == sorted(row["sea"] for row in winds)
        assert {row["sea"] for row in winds} == {"wind_15", "wind_20", "wind_25"}


def test_a_range_is_absent_for_what_stands_in_its_way() -> None:
    """Two hours and 1 kW at each speed; nothing above the reserve at 2 kn."""
    own = found()
    width = own.power.speed.size
    hours = np.full((3, width), 7200.0)
    hours[:, 4] = 0.0
    item = Range("calm", "new", hours * own.power.speed, hours, 2.0 * hours, hours / 7.2)
    rows = told(RangeRows.of(replace(own, ranges=(item,))))
    first, second = rows[2], rows[3]  # the speed of place 4, and the next
    assert (first["range_nm"], first["per_mile_kwh_per_nm"]) == (None, None)
    assert first["range_why"] == first["endurance_why"] == reason("nothing_above_reserve")
    assert second["range_nm"] == pytest.approx(2.0 * second["speed_kn"])
    assert (second["endurance_h"], second["sea"], second["bank_age"]) == (2.0, "calm", "new")
    assert second["per_mile_kwh_per_nm"] == pytest.approx(1.0 / second["speed_kn"])  # of 1 kW


@pytest.mark.parametrize("place", range(len(LIMITS)))
def test_a_range_above_the_rating_names_the_limit(place: int) -> None:
    own = found()
    calm = own.power.curves["calm"]
    shape = np.broadcast_shapes(np.shape(calm.output.load), (1, own.power.speed.size))
    output = replace(
        calm.output, load=np.full(shape, 2.0), binding=np.full(shape, place, dtype=np.float64)
    )
    power = replace(own.power, curves={"calm": replace(calm, output=output)})
    none = np.zeros((3, own.power.speed.size))
    item = Range("calm", "new", none, none, none, none)
    rows = told(RangeRows.of(replace(own, power=power, ranges=(item,))))
    assert rows[0]["range_why"] == f"above the continuous rating: {LIMITS[place]}"
    assert rows[0]["kept_in"] == "bank"
