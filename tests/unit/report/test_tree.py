"""A record becomes keys by rule, and a view shows nothing that the results do not hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import Any

import numpy as np
import pytest

from generator.arrays import Array, Numbers
from generator.records import number, record, working
from generator.report.numbers import Display
from generator.report.template import environment, reason
from generator.report.tree import Telling, dictionary, tree
from generator.report.view import View, cautious, label_of, unit_in, whys, with_flag

METRIC = Display("metric", "EUR")
HOUR = 3600.0


@record
class Inner:
    """One entry of a list."""

    name: str
    speed: Numbers = number("speed", "speed made good", cautious="low")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Outer:
    """A record with a bit of everything."""

    kept_in: str
    fits: bool
    inner: Inner | None
    rows: tuple[Inner, ...]
    need: Numbers | None = number("stored", "needed", cautious="high")
    time: Array = number("hours", "time under way", cautious="high")
    mass: float = number("mass", "mass of it")
    draws: Array = working()
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Along:
    """A table along speed."""

    ALONG = "speed"
    kept_in: str
    held: tuple[bool, ...]
    speed: Array = number("speed", "speed through the water")
    power: Array = number("power", "shaft power", cautious="high", most_lacking=0.1)
    mile: Array = number("per_mile", "energy or fuel for a mile")
    absent: Mapping[str, str | tuple[str, ...]] = field(default_factory=dict)


@record
class Holder:
    """A record with a table in it."""

    along: Along


def inner(speed: float) -> Inner:
    return Inner("a", speed)


def outer(kept_in: str = "bank", need: Numbers | None = 3.6e6, time: float = HOUR) -> Outer:
    times = np.array([[time], [time], [2 * time], [3 * time]])
    return Outer(
        kept_in, True, inner(1.0), (inner(1.0), inner(2.0)), need, times, 12.0, times,
        {"need": "no_speed_held", "time": "stopped_by_power"},
    )  # fmt: skip


def made(item: Any) -> Any:
    return tree(item, "here", Telling(METRIC))


def view_of(item: Any) -> View:
    return View(made(item), type(item), "here", METRIC)


def test_a_number_has_its_keys_by_rule() -> None:
    """Time: draws of 1, 2 and 3 hours; the tenth percentile lies a fifth of a step up, by hand."""
    node = made(outer())
    assert node["need_kwh"] == pytest.approx(1.0)
    assert node["time_h"] == pytest.approx(2.0)
    assert node["time_low_h"] == pytest.approx(1.2)
    assert node["time_high_h"] == pytest.approx(2.8)
    assert (node["mass_kg"], node["time_why"], node["fits"]) == (12.0, None, True)
    assert "mass_low_kg" not in node
    assert "draws" not in node
    assert [row["speed_kn"] for row in node["rows"]] == pytest.approx([1.943844, 3.887689])


def test_a_stored_number_is_energy_in_a_bank_and_fuel_in_a_tank() -> None:
    assert made(outer("tank", 0.002))["need_l"] == pytest.approx(2.0)
    assert "need_kwh" not in made(outer("tank", 0.002))


def test_keys_depend_on_the_declarations_alone() -> None:
    assert made(outer()).keys() == made(outer(need=None, time=np.nan)).keys()


def test_the_dictionary_names_every_number_and_no_other() -> None:
    """The keys of a bank and of a tank, without the reasons and the facts."""
    named = {key for key, _, _ in dictionary(Outer, "here")}
    both = {f"here.{key}" for kept in ("bank", "tank") for key in made(outer(kept))}
    facts = ("kept_in", "fits", "inner", "rows")
    both = {key for key in both if not key.endswith("_why") and key[5:] not in facts}
    deeper = {f"here.{part}.speed{end}_kn" for part in ("inner", "rows.*")
              for end in ("", "_low", "_high")}  # fmt: skip
    assert named == both | deeper


def test_a_number_that_is_absent_has_its_reason_in_words() -> None:
    node = made(outer(need=None))
    assert node["need_kwh"] is None
    assert node["need_why"] == reason("no_speed_held") == "no speed is held"


def test_a_number_is_excused_where_only_its_cautious_end_is_absent() -> None:
    values = np.array([[1.0], *[[HOUR]] * 7, *[[np.nan]] * 3])
    node = made(
        Outer("bank", True, None, (), 1.0, values, 1.0, values, {"time": "stopped_by_power"})
    )
    assert node["time_h"] == pytest.approx(1.0)
    assert node["time_high_h"] is None
    assert node["time_why"] == reason("stopped_by_power")


def test_a_null_that_nobody_gave_a_reason_for_is_a_mistake() -> None:
    with pytest.raises(KeyError, match="speed"):
        made(inner(np.nan))


def test_a_number_without_a_declaration_is_a_mistake() -> None:
    with pytest.raises(TypeError, match="without a declaration"):
        made((1.0,))


def along(kept_in: str = "bank", power: Array | None = None) -> Along:
    """Two speeds; 3,600 J or 1e-6 m3 a metre are 1.852 kWh or L a mile."""
    mile = np.array([[3600.0, 7200.0]]) if kept_in == "bank" else np.array([[1e-6, 2e-6]])
    given = np.array([[1e3, 2e3]]) if power is None else power
    why = {"power": ("no_speed_held", "stopped_by_power")}
    return Along(kept_in, (True, False), np.array([1.0, 2.0]), given, mile, why)


def test_a_table_is_a_list_of_rows_each_with_its_own_facts_and_reason() -> None:
    rows = made(along(power=np.array([[1e3, 2e3], [1e3, np.nan], [1e3, np.nan]])))
    assert [row["power_kw"] for row in rows] == [1.0, None]
    assert [row["power_why"] for row in rows] == [None, reason("stopped_by_power")]
    assert [(row["kept_in"], row["held"]) for row in rows] == [("bank", True), ("bank", False)]


def test_one_reason_may_be_that_of_all_rows() -> None:
    item = replace(along(power=np.full((1, 2), np.nan)), absent={"power": "no_speed_held"})
    assert {row["power_why"] for row in made(item)} == {reason("no_speed_held")}


def test_energy_or_fuel_for_a_mile_is_named_by_where_it_is_kept() -> None:
    assert [row["mile_kwh_per_nm"] for row in made(along())] == pytest.approx([1.852, 3.704])
    assert [row["mile_l_per_nm"] for row in made(along("tank"))] == pytest.approx([1.852, 3.704])
    row = View(made(along("tank"))[0], Along, "here", METRIC)
    assert row.mile.text == "1.85\u00a0L/nm"


def test_the_dictionary_names_the_numbers_of_a_table_with_a_star() -> None:
    named = {key for key, _, _ in dictionary(Holder, "here")}
    rows = {f"here.along.*.{key}" for kept in ("bank", "tank") for key in made(along(kept))[0]}
    assert named == {key for key in rows if not key.endswith(("_why", "kept_in", "held"))}


def test_a_view_prints_numbers_in_their_own_unit_and_dress() -> None:
    view = view_of(outer())
    assert view.time.text == "2.0\u00a0h"
    assert cautious(view.time).text == "2.8\u00a0h"
    assert with_flag(view.time, "bare").text == "2.0"
    assert view.rows[1].speed.text == "3.9\u00a0kn"
    assert (label_of(view, "time"), unit_in(view, "need")) == ("Time under way", "kWh")
    assert cautious(view.rows[0].speed).full_key == "here.rows.0.speed_low_kn"
    assert 'data-key="here.time_high_h"' in cautious(view.time).element
    assert "12\u00a0kg" in view.mass.full


def test_a_view_is_imperial_where_the_report_is() -> None:
    view = View(made(outer()), Outer, "here", Display("imperial", "EUR"))
    assert view.mass.text == "26\u00a0lb"


def test_a_number_is_no_condition_and_a_lost_one_no_sentence() -> None:
    view = view_of(outer(need=None))
    assert not view.need.there
    assert whys([view.need, view.time]) == ["no speed is held"]
    with pytest.raises(TypeError, match="named fact"):
        bool(view.time)
    with pytest.raises(TypeError):
        _ = view.time > 1.0
    with pytest.raises(ValueError, match="has no value"):
        _ = view.need.text
    with pytest.raises(AttributeError, match="has no guess"):
        _ = view.guess


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{{ it.mass.value }}", "without a declaration"),
        ("{{ it.fits }}", "without a declaration"),
        ("{% if it.time %}x{% endif %}", "named fact"),
        ("{{ it.guess }}", "has no attribute"),
        ("{{ it.need }}", "has no value"),
    ],
)
def test_a_template_computes_nothing_and_loses_nothing(text: str, says: str) -> None:
    for page in (True, False):
        made_of = environment(page).from_string(text)
        with pytest.raises(Exception, match=says):
            made_of.render(it=view_of(outer(need=None)))


def test_words_are_escaped_on_a_page_and_plain_in_a_sentence() -> None:
    item = Inner("<b>{{ 7*7 }}</b> {bank.x|energy}", 1.0)
    text = "{{ it.name }}: {{ it.speed }}"
    on_page = environment(True).from_string(text).render(it=view_of(item))
    in_words = environment(False).from_string(text).render(it=view_of(item))
    assert "&lt;b&gt;{{ 7*7 }}&lt;/b&gt; {bank.x|energy}" in on_page
    assert '<data data-key="here.speed_kn" data-form="speed"' in on_page
    assert in_words == "<b>{{ 7*7 }}</b> {bank.x|energy}: 1.9\u00a0kn"
