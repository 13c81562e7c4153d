"""Is what an offer does to the drawn case what typing it into the case file does?"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator.answer.desk import Look
from generator.answer.offers import BUILDERS
from generator.answer.remedy import Offer, Typed
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import run, stand
from tests.trade.shortages.reader import shortages, write_boat
from tests.trade.typed import typed_into, write_typed
from tests.unit.answer.alike import differences

CASES = Path(__file__).parents[3] / "cases"
DRAWS, ON = 20, 40  # draws on which an offer is made, and on which it is tried
CIRCUITS = ".installation.circuits"  # panels get one of their own, which no row reads
SHORT = (
    "motor power", "bank energy", "heat of the motor", "charger", "panels", "no panels",
    "space", "house on the drive bank", "tide at the gate",
)  # fmt: skip


def _offers(path: Path) -> list[tuple[int, Offer]]:
    case = read_case(path)
    study = run(case, make_draws(case, DRAWS), year=not case.berth.shore_power)
    looks = [Look(each.findings, each.verdict.judgements) for each in study.options]
    return [
        (place, offer)
        for place, look in enumerate(looks)
        if look.findings.bank is not None
        for build in BUILDERS
        for offer in build(look, place)
        if offer.levels
    ]


def _try(path: Path) -> set[str]:
    """Every offer of a case file, weakest and strongest; tells their kinds."""
    case = read_case(path)
    ground = stand(case, make_draws(case, ON))
    tried = set()
    for place, offer in _offers(path):
        for level in {0, len(offer.levels) - 1}:
            change = offer.levels[level]
            typed = read_case(write_typed(path, change.typed, "typed"))
            found = change.applied(ground.case, ON)
            wanted = stand(typed, make_draws(typed, ON)).case
            pairs = [(found.options[place], wanted.options[place])]
            pairs += [
                (getattr(found, name), getattr(wanted, name))
                for name in ("legs", "planning", "papers", "house", "berth", "waters")
            ]
            wrong = [
                each
                for pair in pairs
                for each in differences(*pair)
                if offer.kind != "panels" or CIRCUITS not in each
            ]
            assert not wrong, (offer.kind, level, wrong)
        tried.add(offer.kind)
    return tried


@pytest.mark.parametrize("name", ["ketch_34_two_motors", "sloop_30_weekend"])
def test_offers_to_a_demo_are_what_its_owner_types(name: str, tmp_path: Path) -> None:
    path = Path(shutil.copy(CASES / f"{name}.yaml", tmp_path))
    assert {"motor", "slower", "outboard", "cooling"} <= _try(path)


@pytest.mark.parametrize("name", SHORT)
def test_offers_to_a_boat_with_a_shortage_are_what_her_owner_types(
    name: str, tmp_path: Path
) -> None:
    short = shortages()[name]
    tried = _try(write_boat(tmp_path, name, short.changes))
    assert {"new panels": "panels"}.get(short.remedy, short.remedy) in tried


def test_bank_told_by_its_energy_grows_by_its_charge(tmp_path: Path) -> None:
    changes = (
        "-options.a.bank.blocks.charge; options.a.bank.energy=12 kWh; options.a.bank.mass=110 kg;"
        " options.a.bank.blocks.parallel=1; options.a.added.2.mass=110 kg"
    )
    assert "bank" in _try(write_boat(tmp_path, "energy", changes))


def test_key_that_is_inherited_is_typed_into_the_option_itself() -> None:
    tree = {
        "options": [
            {"id": "a", "bank": {"charge": "1 Ah"}, "added": [{"mass": "1 kg"}, {"mass": "2 kg"}]},
            {"id": "b", "from": "a"},
        ]
    }
    changes = (
        Typed(("options", 1, "added", 1, "mass"), "3 kg"),
        Typed(("options", 1, "bank", "charge"), "2 Ah"),
        Typed(("options", 0, "bank", "charge"), None),
    )
    first, second = typed_into(tree, changes)["options"]
    assert second["added"] == [{"mass": "1 kg"}, {"mass": "3 kg"}]
    assert second["bank"] == {"charge": "2 Ah"}
    assert first["added"][1]["mass"] == "2 kg"
    assert first["bank"] == {}
