"""Ledgers, floating and placement worked by hand, or against every way there is."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.percentiles import scalar
from generator.analyses.weight.floating import afloat, loaded
from generator.analyses.weight.mass_ledger import at_fill, ledger
from generator.analyses.weight.placement import LIST_LIMIT, TRIM_LIMIT, Placement, place
from generator.analyses.weight.placement_result import placement_result
from generator.analyses.weight.weight import weigh
from generator.analyses.weight.weight_result import weight_result
from generator.case.boat import Space
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.supply import Genset
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run

CASES = Path(__file__).parents[3] / "cases"
ELECTRIC = 2


@lru_cache(maxsize=4)
def case_of(name: str) -> Case:
    return read_case(CASES / f"{name}.yaml")


def sloop() -> Case:
    return case_of("sloop_30_weekend")


def spaced(case: Case, *spaces: Space) -> Case:
    return replace(case, boat=replace(case.boat, spaces=spaces))


def found_places(case: Case) -> Placement:
    option = case.options[ELECTRIC]
    found = place(case, option, weigh(case, option))
    assert found is not None
    return found


def test_parts_left_out_come_from_the_register_and_say_so() -> None:
    """Case every_key lists engine and fuel, keeps the exhaust: tank and starter battery lack."""
    case = case_of("every_key")
    option = case.options[ELECTRIC]
    assert option.supply is not None
    burning = ledger(case, option)  # its genset keeps the tank
    assert [item.part for item in burning.removed if item.source == "register"] == [
        "starter battery"
    ]
    found = ledger(case, replace(option, supply=replace(option.supply, genset=None)))
    filled = {item.part: item for item in found.removed if item.source == "register"}
    assert set(filled) == {"tank", "starter battery"}
    assert filled["tank"].mass == pytest.approx(0.10 * 120e-3 * 840.0)  # 10 % of 120 l of fuel
    assert filled["starter battery"].mass == 22.0
    assert filled["tank"].x == 2.60  # where the engine stands
    assert [item.part for item in found.added if item.source == "register"] == ["cables"]
    sources = ("panels", "wind generator")  # counted by the year, weighed by nobody
    assert found.not_counted == ("old cables", "fluids", *sources)
    assert burning.not_counted == ("old cables", "fluids", "panels", "genset", "wind generator")


def test_a_ledger_that_names_no_parts_is_taken_as_complete() -> None:
    case = sloop()
    option = case.options[ELECTRIC]
    bare = replace(
        option,
        removed=tuple(replace(item, part="") for item in option.removed),
        added=tuple(replace(item, part="") for item in option.added),
        kept=(),
    )
    found = ledger(case, bare)
    assert found.filled == ()
    assert (len(found.removed), len(found.added)) == (7, 3)


def test_an_empty_ledger_is_the_register_s() -> None:
    case = sloop()
    found = ledger(case, replace(case.options[ELECTRIC], removed=(), added=(), kept=()))
    assert [item.part for item in found.removed] == [
        "engine", "exhaust", "fuel", "tank", "starter battery",
    ]  # fmt: skip
    assert all(item.source == "register" for item in (*found.removed, *found.added))
    assert len(found.unplaced) == 8


def test_tank_and_exhaust_stay_where_a_genset_burns_fuel() -> None:
    case = sloop()
    option = replace(case.options[ELECTRIC], removed=(), added=(), kept=())
    assert option.supply is not None
    burning = replace(option, supply=replace(option.supply, genset=Genset(4000.0, 0.2, 0.8)))
    found = ledger(case, burning)
    assert [item.part for item in found.removed] == ["engine", "starter battery"]
    assert (found.fuel, found.full_tank) == (None, None)


@pytest.mark.parametrize(("power", "mass"), [(3e3, 25.0), (5e3, 25.0), (13e3, 45.5)])
def test_a_small_drive_weighs_its_bed_at_least(power: float, mass: float) -> None:
    """3.5 kg a kilowatt, but 25 kg of motor, controller, bed and coupling."""
    case = sloop()
    motor = case.options[ELECTRIC].motor
    assert motor is not None
    motor = replace(motor, continuous_power=power, mass=None)
    option = replace(case.options[ELECTRIC], motor=motor, removed=(), added=(), kept=())
    (drive,) = [item for item in ledger(case, option).added if item.part == "motor"]
    assert float(np.asarray(drive.mass)) == pytest.approx(mass)


def test_a_mass_without_a_place_has_no_coordinates_in_the_results() -> None:
    case = sloop()
    option = replace(case.options[ELECTRIC], removed=(), added=(), kept=())
    case = replace(case, options=(*case.options[:ELECTRIC], option))
    own = build(case, run(case, make_draws(case, 0)))["options"][ELECTRIC]["weight"]
    assert len(own["ledger"]) == 8
    for row in own["ledger"]:
        assert [row[f"{axis}_m"] for axis in "xyz"] == [None] * 3
        assert {row[f"{axis}_why"] for axis in "xyz"} == {"no place is given"}
    for row in own["ledger"]:
        assert [row[f"moment_{axis}_kgm"] for axis in "xyz"] == [None] * 3


def test_kept_parts_stay_aboard() -> None:
    case = sloop()
    option = replace(case.options[ELECTRIC], removed=(), added=(), kept=("exhaust", "tank"))
    parts = [item.part for item in ledger(case, option).removed]
    assert parts == ["engine", "fuel", "starter battery"]


def test_the_tank_is_full_half_and_empty() -> None:
    """Sandpiper's 55 l tank holds 46.2 kg; net is 51 kg with the 23 kg she was weighed with."""
    case = sloop()
    found = ledger(case, case.options[ELECTRIC])
    assert found.full_tank == pytest.approx(46.2)
    weight = weigh(case, case.options[ELECTRIC])
    net = {
        item.name: float(np.asarray(item.change.after.displacement))
        - float(np.asarray(item.change.before.displacement))
        for item in weight.conditions
    }
    assert net["as she sails, tank full"] == pytest.approx(51.0 + 23.0 - 46.2)
    assert net["as she sails, tank empty"] == pytest.approx(51.0 + 23.0)
    after = [float(np.asarray(item.change.after.displacement)) for item in weight.conditions[:3]]
    assert after == pytest.approx([4351.0] * 3)  # without a tank she floats as she floats
    light = weight.conditions[3].change.before.displacement
    assert float(np.asarray(light)) == pytest.approx(0.85 * 4300.0)
    assert at_fill(found, 0.0).fuel is not None


def test_metacentric_height_by_test_by_roll_and_by_height() -> None:
    case = sloop()
    rolled = afloat(case)
    gyration = 0.38 * 3.02
    assert float(np.asarray(rolled.metacentric_height)) == pytest.approx(
        (2 * math.pi * gyration / 2.5) ** 2 / 9.80665
    )
    assert float(np.asarray(rolled.roll_period)) == pytest.approx(2.5)
    given = replace(case.boat.floatation, metacentric_height=0.9)
    inclined = afloat(replace(case, boat=replace(case.boat, floatation=given)))
    assert float(np.asarray(inclined.metacentric_height)) == pytest.approx(0.9)
    plain = replace(case.boat.floatation, roll_period=None)
    assumed = afloat(replace(case, boat=replace(case.boat, floatation=plain)))
    assert assumed.gravity[2] == 0.0
    stands = [item.stands_by for item in (rolled, inclined, assumed)]
    assert stands == ["timed roll", "inclining test", "height of gravity"]


def test_hydrostatics_are_given_then_of_the_lines_then_of_the_dimensions() -> None:
    case = case_of("every_key")
    assert afloat(case).source == "given"
    bare = replace(
        case.boat.floatation,
        waterplane_area=None,
        buoyancy_height=None,
        transverse_radius=None,
        longitudinal_radius=None,
    )
    lined = afloat(replace(case, boat=replace(case.boat, floatation=bare)))
    assert lined.source == "offsets"
    assert float(np.asarray(lined.waterplane_area)) == pytest.approx(16.02, abs=0.01)
    unlined = replace(case.boat, floatation=bare, offsets=None)
    few = afloat(replace(case, boat=unlined))
    assert few.source == "dimensions"
    # Few dimensions against the same hull's lines: the coefficients of the case fit them roughly.
    for name in ("waterplane_area", "transverse_radius", "longitudinal_radius"):
        ratio = float(np.asarray(getattr(few, name))) / float(np.asarray(getattr(lined, name)))
        assert 0.8 < ratio < 1.25, name


def test_a_lighter_boat_is_stiffer_in_her_radius_not_in_her_waterplane() -> None:
    today = afloat(sloop())
    light = loaded(today, 3655.0)
    assert light.waterplane_area == today.waterplane_area
    assert float(np.asarray(light.transverse_radius)) > float(np.asarray(today.transverse_radius))


def test_blocks_go_where_trim_and_list_are_least_of_all_ways() -> None:
    """Every way to share the blocks out, tried one by one, is no better."""
    case = sloop()
    found = found_places(case)
    option = case.options[ELECTRIC]
    change = weigh(case, option).change
    flotation = float(np.asarray(change.before.flotation))
    along = [float(np.asarray(berth.space.x)) - flotation for berth in found.berths]
    across = [float(np.asarray(berth.space.y)) for berth in found.berths]
    counts = [berth.blocks for berth in found.berths]
    assert sum(counts) == 2
    assert all(berth.blocks <= berth.room for berth in found.berths)
    assert found.trim_moment is not None
    assert found.list_moment is not None
    assert found.trim is not None
    assert found.list is not None
    mass = found.block_mass
    rest = (
        found.trim_moment - mass * sum(n * a for n, a in zip(counts, along, strict=True)),
        found.list_moment - mass * sum(n * a for n, a in zip(counts, across, strict=True)),
    )
    per = (found.trim / found.trim_moment, found.list / found.list_moment)

    def badness(way: tuple[int, ...]) -> float:
        trim = rest[0] + mass * sum(n * a for n, a in zip(way, along, strict=True))
        side = rest[1] + mass * sum(n * a for n, a in zip(way, across, strict=True))
        return abs(trim * per[0]) / TRIM_LIMIT + abs(side * per[1]) / LIST_LIMIT

    ways = itertools.product(*(range(berth.room + 1) for berth in found.berths))
    least = min(badness(way) for way in ways if sum(way) == 2)
    assert badness(tuple(counts)) == pytest.approx(least, rel=1e-4)


def test_blocks_that_do_not_fit_are_a_result_with_a_reason() -> None:
    case = sloop()
    small = replace(case.boat.spaces[0], max_mass=60.0)
    found = found_places(spaced(case, small))
    assert not found.fits
    assert found.why == "the blocks do not fit"
    assert found.trim is None


def test_a_small_volume_binds_before_the_mass() -> None:
    case = sloop()
    tight = replace(case.boat.spaces[0], volume=0.080, max_mass=500.0)  # one block of 74 l
    berth = found_places(spaced(case, tight)).berths[0]
    assert (berth.room, berth.bound_by) == (1, "volume")


def test_what_must_shift_brings_trim_and_list_to_their_limits() -> None:
    case = sloop()
    ahead = replace(case.boat.spaces[0], x=6.5, y=0.9, max_mass=500.0, volume=1.0)
    found = found_places(spaced(case, ahead))
    assert not found.level
    assert found.trim is not None
    assert found.trim_moment is not None
    along, across = found.to_shift()
    assert along < 0.0 < found.trim_moment  # aft, against a trim by the bow
    assert across < 0.0  # to port
    left = (found.trim_moment + along) / found.trim_moment * found.trim
    assert left == pytest.approx(TRIM_LIMIT)


def test_boxes_at_sea_are_held_upside_down_too() -> None:
    """215 kg times 2 times g sideways; upwards only where she may turn over."""
    case = sloop()
    option = case.options[ELECTRIC]
    held = weigh(case, option).restraints
    assert [float(np.asarray(each.sideways)) for each in held] == pytest.approx([215 * 2 * 9.80665])
    assert held[0].upwards is None
    coastal = replace(case, waters=replace(case.waters, exposure="coastal"))
    assert weigh(coastal, option).restraints[0].upwards == held[0].sideways


def test_the_plate_loses_what_the_boat_gains() -> None:
    case = sloop()
    plate = replace(case.boat.floatation, plate_load=1000.0)
    plated = replace(case, boat=replace(case.boat, floatation=plate))
    left = weigh(plated, case.options[ELECTRIC]).plate_left
    # cruising less light: 0.20 of 4300 kg; net 51 kg
    assert float(np.asarray(left)) == pytest.approx(1000.0 - 0.20 * 4300.0 - 51.0)


def test_mass_of_bank_and_motor_is_that_of_the_owners_ledger() -> None:
    """Not the register's, which trim and fastenings would contradict; in carbon as well."""
    case = case_of("ketch_34_two_motors")
    option = case.options[ELECTRIC]
    assert float(np.asarray(weigh(case, option).bank_mass)) == pytest.approx(278.0)
    carbon = run(case, make_draws(case, 5)).options[ELECTRIC].findings.emissions
    assert carbon is not None
    made = float(np.asarray(case.carbon.motor_made).flat[0])
    assert carbon.drive_made[0, 0] == pytest.approx(62.0 * made)
    bare = replace(option, added=(), removed=())  # the register fills in
    assert option.bank is not None
    energy = option.bank.nominal_voltage * option.bank.charge / option.bank.specific_energy
    fastened = energy * (1.0 + np.asarray(case.masses.battery_fastening))
    assert weigh(case, bare).bank_mass == pytest.approx(fastened)


def test_a_line_of_the_ledger_has_its_moments_or_says_why_not() -> None:
    """100 kg that leave from 2 m forward, 0.5 m to port and 0.3 m down: -200, 50, 30 kg m."""
    case = sloop()
    base = case.options[ELECTRIC].removed[0]
    item = replace(base, mass=100.0, x=2.0, y=-0.5, z=-0.3)
    option = replace(case.options[ELECTRIC], removed=(item, replace(item, x=None)))
    first, other = weight_result(case, weigh(case, option)).ledger[:2]
    assert (first.way, other.way) == ("out", "out")
    assert first.mass == -100.0
    assert [first.moment_x, first.moment_y, first.moment_z] == pytest.approx([-200.0, 50.0, 30.0])
    assert (other.x, other.y, other.z) == (None, None, None)
    assert other.moment_y is None
    assert set(other.absent) == {"x", "y", "z", "moment_x", "moment_y", "moment_z"}


def test_masses_of_an_option_are_told_of_lightship() -> None:
    case = sloop()
    weight = weigh(case, case.options[ELECTRIC])
    told, light = weight_result(case, weight), np.asarray(weight.light_displacement)
    assert told.net == pytest.approx(np.asarray(told.added) - told.removed)
    assert told.absolute == pytest.approx(np.asarray(told.added) + told.removed)
    assert told.net_share == pytest.approx(told.net / light)
    assert told.absolute_share == pytest.approx(told.absolute / light)
    assert told.displacement_after == pytest.approx(told.displacement_before + told.net)


def test_trim_is_told_as_angle_length_and_share() -> None:
    """The fore end goes down by sinkage and its part of the trim, the aft end comes up by it."""
    case = sloop()
    weight = weigh(case, case.options[ELECTRIC])
    told, length = weight_result(case, weight), scalar(weight.change.before.waterline_length)
    assert told.trim_share is not None
    assert told.trim_angle is not None
    assert told.fore is not None
    assert told.aft is not None
    assert told.trim == pytest.approx(told.trim_share * length)
    assert np.tan(told.trim_angle) == pytest.approx(told.trim_share)
    assert scalar(told.fore) - scalar(told.aft) == pytest.approx(told.trim, rel=1e-3)
    assert scalar(told.trim_limit) == pytest.approx(0.005 * length)
    board = case.boat.floatation.freeboard_aft
    if board is not None:
        assert told.freeboard_aft_after is not None
        assert scalar(told.freeboard_aft_after) == pytest.approx(scalar(board) - scalar(told.aft))


def test_a_trim_that_cannot_be_told_says_why() -> None:
    case = sloop()
    option = replace(case.options[ELECTRIC], removed=(), added=(), kept=())
    told = weight_result(case, weigh(case, option))
    assert (told.trim, told.list, told.gravity_up) == (None, None, None)
    assert told.absent["trim"] == "mass_without_place"
    assert told.unplaced
    assert {item.absent["trim"] for item in told.conditions} == {"mass_without_place"}


def test_what_sinks_her_a_centimetre_is_a_slice_at_the_waterline() -> None:
    case = sloop()
    before = weigh(case, case.options[ELECTRIC]).change.before
    told = weight_result(case, weigh(case, case.options[ELECTRIC])).before
    assert told.per_cm == pytest.approx(before.waterplane_area * before.water_density * 0.01)
    moment = before.displacement * before.longitudinal_radius * 0.01 / before.waterline_length
    assert told.trim_per_cm == pytest.approx(moment)


def test_what_must_shift_besides_is_told_to_one_side() -> None:
    """The moment beyond a limit is a mass moved a metre: forward or aft, never both."""
    case = sloop()
    weight = weigh(case, case.options[ELECTRIC])
    placed = place(case, case.options[ELECTRIC], weight)
    assert placed is not None
    beyond = replace(placed, trim=2.0 * TRIM_LIMIT, trim_moment=80.0, list_moment=0.0, list=0.0)
    told = placement_result(beyond, weight)
    assert told is not None
    assert (told.shift_forward, told.shift_aft) == pytest.approx((0.0, 40.0))
    assert told.level is False
    assert sum(space.blocks for space in told.spaces) == told.blocks
    tight = placement_result(replace(placed, fits=False, trim=None, list=None), weight)
    assert tight is not None
    assert tight.absent["trim"] == "blocks_do_not_fit"
    assert placement_result(None, weight) is None
