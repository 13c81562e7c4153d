"""Which record stands where in the results?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial
from typing import Any

from generator.analyses.key_numbers import KeyNumbers
from generator.analyses.money.terms import MoneyTerms
from generator.analyses.option import OptionAnswers
from generator.analyses.study_answers import StudyAnswers
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.verdict.criteria.after_one_fault import AfterOneFault
from generator.analyses.verdict.criteria.against_wind import AgainstWind
from generator.analyses.verdict.criteria.apart import Apart
from generator.analyses.verdict.criteria.battery_currents import BatteryCurrents
from generator.analyses.verdict.criteria.boat_value import BoatValue
from generator.analyses.verdict.criteria.calm_speed import CalmSpeed
from generator.analyses.verdict.criteria.charge_ceiling import ChargeCeiling
from generator.analyses.verdict.criteria.cold import Cold
from generator.analyses.verdict.criteria.compartment import Space
from generator.analyses.verdict.criteria.continuous_power import HeldCruise
from generator.analyses.verdict.criteria.conversion import Conversion
from generator.analyses.verdict.criteria.design_area import DesignArea
from generator.analyses.verdict.criteria.evidence import Evidence
from generator.analyses.verdict.criteria.foul_gate import FoulGate
from generator.analyses.verdict.criteria.healthy_engine import PresentEngine
from generator.analyses.verdict.criteria.house_supply import HouseSupply
from generator.analyses.verdict.criteria.insurer import Insurer
from generator.analyses.verdict.criteria.legs_covered import LegsCovered
from generator.analyses.verdict.criteria.mass_change import MassChange
from generator.analyses.verdict.criteria.mooring import Mooring
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.analyses.verdict.criteria.payback import Payback
from generator.analyses.verdict.criteria.power_per_tonne import PowerPerTonne
from generator.analyses.verdict.criteria.propeller_match import PropellerMatch
from generator.analyses.verdict.criteria.recharge import Recharge
from generator.analyses.verdict.criteria.reserve_kept import ReserveKept
from generator.analyses.verdict.criteria.stopping import Stopping
from generator.analyses.verdict.criteria.trim_and_list import TrimAndList
from generator.analyses.verdict.goals import Goals
from generator.analyses.year.climate import Climate
from generator.analyses.year.house import HouseLoads
from generator.answer.advice import Advice
from generator.answer.compare import Comparison
from generator.answer.sets import RemedySet
from generator.answer.staircase import Staircase
from generator.answer.subjects import Subject
from generator.answer.until import Until
from generator.records import facts_of, key_of, kind_of, numbers_of, records_of
from generator.search import Smallest
from generator.sensitivity import MoneyTornado, Tornado

Node = dict[str, Any]
FACTS: Mapping[int, Any] = {  # by the number of the criterion
    1: MustMakeLeg, 2: LegsCovered, 3: ReserveKept, 4: AgainstWind, 5: HeldCruise, 6: AgainstWind,
    7: CalmSpeed, 8: PowerPerTonne, 9: FoulGate, 10: AfterOneFault, 11: Recharge, 12: Mooring,
    13: HouseSupply, 14: BatteryCurrents, 15: Cold, 16: MassChange, 17: TrimAndList,
    18: DesignArea, 19: Space, 20: Insurer, 21: Conversion, 22: ChargeCeiling, 23: PropellerMatch,
    24: Stopping, 25: Payback, 26: BoatValue, 27: PresentEngine, 28: Evidence,
}  # fmt: skip
# With a star for each place of a list, and the classes of which one stands there; what stands
# inside these is told by their own fields.
PLACES: tuple[tuple[str, tuple[Any, ...]], ...] = (
    ("", (StudyAnswers,)),
    ("options.*", (OptionAnswers,)),
    ("options.*", (KeyNumbers,)),
    ("options.*.use.smallest", (Smallest,)),
    ("limits", (Goals,)),
    ("weather", (Climate,)),
    ("house_loads", (HouseLoads,)),
    *(
        (f"options.*.verdict.criteria.{number - 1}.facts", (kind, Apart))
        for number, kind in FACTS.items()
    ),
    ("options.*.cost", (MoneyTornado,)),  # beside the account of the option
    ("options.*.tornado", (Tornado,)),
    ("options.*.use.failing.*", (LegHelp,)),
    ("options.*.remedies.*", (RemedySet,)),
    ("options.*.until", (Until,)),
    ("options.*.map", (Staircase,)),
    ("answer.advice", (Advice,)),
    ("answer.subjects.*", (Subject,)),
    ("answer.comparison", (Comparison,)),
    ("money", (MoneyTerms,)),
)


def records_in(results: Node) -> Iterator[tuple[str, Node, Any]]:
    """Every record of the results: its key, what stands there, and its class."""
    for place, kinds in PLACES:
        for key, node in _at(results, place.split(".") if place else [], ""):
            yield from _one_of(key, node, kinds)


def _at(found: Any, steps: list[str], key: str) -> Iterator[tuple[str, Node]]:
    """What stands at a place, for each entry of its lists."""
    if not steps:
        if isinstance(found, dict):
            yield key, found
        return
    step, *rest = steps
    if isinstance(found, list):
        for place in range(len(found)) if step == "*" else (int(step),):
            if place < len(found):
                yield from _at(found[place], rest, f"{key}.{place}".strip("."))
    elif isinstance(found, dict):
        yield from _at(found.get(step), rest, f"{key}.{step}".strip("."))


def _one_of(key: str, node: Node, kinds: tuple[Any, ...]) -> Iterator[tuple[str, Node, Any]]:
    """A record, if it is one of these classes, and the records in it."""
    kind = next(filter(partial(_fits, node), kinds), None)
    if kind is None:
        return
    yield key, node, kind
    for name, inner in records_of(kind).items():
        value = node[name]
        for place, each in enumerate(value if isinstance(value, list) else [value]):
            if isinstance(each, dict):
                own = f"{key}.{name}.{place}" if isinstance(value, list) else f"{key}.{name}"
                yield from _one_of(own.lstrip("."), each, inner)


def _fits(node: Node, kind: Any) -> bool:
    """Is all there that a record of this class has? Of several classes that may stand here."""
    kept_in = node.get("kept_in", "bank")
    keys = [key_of(name, kind_of(said, kept_in)) for name, said in numbers_of(kind).items()]
    return all(key in node for key in (*facts_of(kind), *keys))
