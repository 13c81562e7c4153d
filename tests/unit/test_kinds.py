"""One list of kinds serves what an owner writes, the keys of the results and the page."""

from __future__ import annotations

from collections import defaultdict

import pytest

from generator.records import number
from generator.units.families import KINDS as FAMILIES
from generator.units.grammar import from_si
from generator.units.kinds import KINDS, STORES

# Unit of the look, as the grammar spells it, where the two differ by a sign of print.
SPELLED = {"m²": "m2", "mm²": "mm2", "ft²": "ft2", "m³/h": "m3/h", "kWh/m²": "kWh/m2",
           "Ω": "ohm", "mΩ": "mohm", "L": "l", "L/h": "l/h", "US gal/h": "US gal/h"}  # fmt: skip


def test_a_suffix_has_one_unit_and_one_factor() -> None:
    units: dict[str, set[tuple[str, float]]] = defaultdict(set)
    for kind in KINDS.values():
        if kind.suffix not in ("", "share"):
            units[kind.suffix].add((kind.metric.unit, kind.per_si))
    assert {suffix: found for suffix, found in units.items() if len(found) > 1} == {}


@pytest.mark.parametrize("name", [n for n, kind in KINDS.items() if kind.family])
def test_a_kind_turns_si_into_its_unit_as_the_grammar_does(name: str) -> None:
    """The factor is typed once more here than need be: pint's own definitions must agree."""
    kind = KINDS[name]
    assert kind.family in FAMILIES
    for look in (kind.metric, kind.imperial):
        unit = SPELLED.get(look.unit, look.unit)
        if unit not in FAMILIES[kind.family].units:
            continue
        for si in (0.0, 1.0, 300.0):
            shown = si * kind.per_si * look.scale + look.offset
            assert shown == pytest.approx(float(from_si(si, unit)), rel=1e-9, abs=1e-9), unit


def test_what_is_stored_is_of_a_kind_of_the_list() -> None:
    assert {kind for pair in STORES.values() for kind in pair.values()} <= set(KINDS)
    assert all(list(pair) == ["bank", "tank"] for pair in STORES.values())


def test_a_field_of_a_kind_that_is_not_there_is_told_when_it_is_declared() -> None:
    with pytest.raises(AssertionError, match="no kind"):
        number("sped", "speed")
    with pytest.raises(AssertionError, match="no end"):
        number("speed", "speed", cautious="lo")
