"""Without a plug no electricity is bought: the page says so, or why there is no figure."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from markupsafe import Markup

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.page import Page, bare_text
from generator.report.results_file import build
from generator.report.sections import money
from generator.study import run
from tests.report.conftest import CASES

MOTOR = 2
SOURCES = {
    "nothing": "",
    "own": "    supply:\n      panels:\n        - {name: On the arch, power: 300 W}\n",
    "genset": "    supply:\n      genset: {power: 4 kW}\n",
}


@lru_cache(maxsize=3)
def unplugged(source: str) -> dict[str, Any]:
    """The sloop on a mooring, with one source or none."""
    text = (CASES / "sloop_30_weekend.yaml").read_text(encoding="utf-8")
    for old, new in (
        ("  shore_power: true\n  breaker: 16 A\n  voltage: 230 V\n", "  shore_power: false\n"),
        ("    bank:\n", f"{SOURCES[source]}    bank:\n"),
    ):  # fmt: skip
        assert text.count(old) == 1
        text = text.replace(old, new)
    with TemporaryDirectory() as folder:
        path = Path(folder) / "sloop_30_weekend.yaml"
        path.write_text(text, encoding="utf-8")
        case = read_case(path)
    return build(case, run(case, make_draws(case, 20)))


def texts(part: Any) -> str:
    said = " ".join(bare_text(text) for text in (part.body, part.closing))
    return " ".join(said.replace("\u00a0", " ").split())


def test_where_nothing_charges_her_energy_has_no_figure_and_no_carbon() -> None:
    page = Page(unplugged("nothing"))
    own = page.value("options.2.cost")
    why = "nothing charges her bank: no plug, no panels, no genset, no wind generator"
    assert (own["energy_yearly_money"], own["energy_yearly_why"]) == (None, why)
    assert own["yearly_money"] == own["service_yearly_money"] + own["other_yearly_money"]
    made = page.value("options.2.carbon")
    for key in ("yearly_kg", "saved_yearly_kg", "payback_years"):
        assert (made[key], made[f"{key.rpartition('_')[0]}_why"]) == (None, why)
    section = money.parts(page)[0]
    assert "Its energy has no figure and is not counted" in texts(section)
    _, _, energy = str(section.body).partition("Energy each year</th>")
    cells = energy.partition("</tr>")[0].split("</td>")
    assert bare_text(Markup(cells[MOTOR])) == "–"
    assert f"– {why}" in texts(section)
    found = money.carbon(page)
    assert found is not None
    assert f"For the motor nothing can be said of carbon in use: {why}" in texts(found)
    assert "Electricity is counted at" not in texts(found)


def test_with_sun_alone_energy_is_nought_and_has_no_carbon() -> None:
    page = Page(unplugged("own"))
    own, made = page.value("options.2.cost"), page.value("options.2.carbon")
    assert own["energy_yearly_money"] == 0.0
    assert made["yearly_kg"] == 0.0
    assert made["saved_yearly_kg"] == pytest.approx(made["diesel_yearly_kg"])
    assert "No energy is bought" in texts(money.parts(page)[0])
    found = money.carbon(page)
    assert found is not None
    assert "sun and wind make all the electricity" in texts(found)


def test_a_genset_burns_what_it_gives() -> None:
    """0.327 litres for each kilowatt-hour at the terminals of the genset, and their carbon."""
    page = Page(unplugged("genset"))
    own, made = page.value("options.2.cost"), page.value("options.2.carbon")
    year = page.value("options.2.year.energy_kwh") / 0.87
    assert own["energy_yearly_money"] == pytest.approx(year * 0.32745 * 1.40, rel=0.1)
    assert made["yearly_kg"] == pytest.approx(year * 0.32745 * 3.27, rel=0.1)
    assert "counted as diesel for the generator" in texts(money.parts(page)[0])


def test_the_word_on_money_stands_though_nothing_charges_her() -> None:
    assert unplugged("nothing")["options"][MOTOR]["worth"]["outcome"] == "costs_more"
