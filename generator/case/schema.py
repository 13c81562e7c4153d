"""Which keys may a case file hold, and of what kind is each?

The keys mirror the fields of the frozen case. Nothing is required of pydantic itself: `NEEDED`
marks what must be there, so that one fault never hides another.
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field, model_validator

from generator.case.boat_keys import BoatKeys, FactorsKeys, MassesKeys, WatersKeys
from generator.case.key_kinds import (
    NEEDED,
    NEEDED_LIST,
    CalendarYear,
    Group,
    Mass,
    Money,
    Name,
    Position,
    Words,
    YearOfCost,
    needed,
    with_neighbours,
)
from generator.case.leaf import ORIGINS, Beside, Word
from generator.case.option import OLD_PARTS, PARTS_ABOARD
from generator.case.plant_keys import BankKeys, EngineKeys, MotorKeys, PropellerKeys, TrialKeys
from generator.case.prices import PARTS
from generator.case.supply import SupplyKeys
from generator.case.usage import (
    BerthKeys,
    CarbonKeys,
    HouseKeys,
    LegKeys,
    PlanningKeys,
    PricesKeys,
    StudyKeys,
)
from generator.case.wiring import CompartmentKeys, PapersKeys, WiringKeys

_OVERRIDES: Any = {"overrides": True}  # fields of the boat's own engine or propeller


class LedgerItemKeys(Group):
    """One mass that goes out or comes in."""

    name: Words = NEEDED
    mass: Mass = NEEDED
    x: Position = None
    y: Position = None
    z: Position = None
    part: Annotated[str | None, Word(PARTS_ABOARD)] = None
    space: Words = None
    source: Annotated[str | None, Word(ORIGINS)] = Field(default=None, alias="from")
    plus_minus: Annotated[str | None, Beside()] = None

    @model_validator(mode="before")
    @classmethod
    def _neighbours(cls, data: object) -> object:
        return with_neighbours(data, "mass")


class CostItemKeys(Group):
    """One payment."""

    name: Words = NEEDED
    amount: Money = NEEDED
    when: Annotated[str | None, Word(("first", "yearly", "once"))] = NEEDED
    year: YearOfCost = None
    source: Annotated[str | None, Word(("quote", "estimate"))] = Field(default=None, alias="from")
    part: Annotated[str | None, Word(tuple(PARTS))] = None
    price_year: CalendarYear = None
    vat: Annotated[str | None, Word(("included", "to add"))] = None
    plus_minus: Annotated[str | None, Beside()] = None

    @model_validator(mode="before")
    @classmethod
    def _neighbours(cls, data: object) -> object:
        return with_neighbours(data, "amount")


class OptionKeys(Group):
    """One answer to what should drive her."""

    id: Name = NEEDED
    from_: Name = Field(default=None, alias="from")
    name: Words = NEEDED
    kind: Annotated[str | None, Word(("keep", "new diesel", "battery"))] = NEEDED
    note: Words = None
    motor: MotorKeys = MotorKeys()
    bank: BankKeys = BankKeys()
    installation: WiringKeys = WiringKeys()
    compartment: CompartmentKeys = CompartmentKeys()
    engine: EngineKeys = Field(default=EngineKeys(), json_schema_extra=_OVERRIDES)
    propeller: PropellerKeys = Field(default=PropellerKeys(), json_schema_extra=_OVERRIDES)
    kept: tuple[Annotated[str | None, Word(OLD_PARTS)], ...] = ()
    supply: SupplyKeys = SupplyKeys()
    removed: tuple[LedgerItemKeys, ...] = ()
    added: tuple[LedgerItemKeys, ...] = ()
    costs: tuple[CostItemKeys, ...] = ()


class CaseKeys(Group):
    """The whole file."""

    version: Annotated[str | None, Word(("1",))] = NEEDED
    study: StudyKeys = needed(StudyKeys())
    boat: BoatKeys = needed(BoatKeys())
    waters: WatersKeys = needed(WatersKeys())
    factors: FactorsKeys = FactorsKeys()
    masses: MassesKeys = MassesKeys()
    engine: EngineKeys = needed(EngineKeys())
    propeller: PropellerKeys = needed(PropellerKeys())
    trial: TrialKeys = TrialKeys()
    planning: PlanningKeys = needed(PlanningKeys())
    berth: BerthKeys = needed(BerthKeys())
    legs: tuple[LegKeys, ...] = ()
    legs_file: Words = None
    house: HouseKeys = needed(HouseKeys())
    papers: PapersKeys = PapersKeys()
    prices: PricesKeys = PricesKeys()
    carbon: CarbonKeys = CarbonKeys()
    options: tuple[OptionKeys, ...] = NEEDED_LIST
