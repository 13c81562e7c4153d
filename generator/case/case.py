"""Case: everything the owner said, in SI, with every default filled in and listed."""

from __future__ import annotations

from dataclasses import dataclass

from generator.case.assumption import Assumption
from generator.case.boat import Boat, Waters
from generator.case.diesel import Diesel, Propeller
from generator.case.factors import Carbon, Factors, Masses
from generator.case.files.weather_file import WeatherFile
from generator.case.option import Option
from generator.case.prices import Prices
from generator.case.trial import SeaTrial
from generator.case.usage import Berth, House, Leg, Planning
from generator.case.wiring import Papers
from generator.errors import Fault


@dataclass(frozen=True)
class Instruction:
    """Who asked, who answers, when, and what for."""

    reference: str
    client: str
    prepared_by: str
    date: str  # ISO 8601
    currency: str
    units: str  # metric, imperial
    priorities: tuple[str, ...]
    reasons: tuple[str, ...]
    subjects: tuple[str, ...]  # of both, in the owner's order
    qualification: str = ""  # of the one who signs: licence, body, insurance
    independence: str = ""  # what he sells or earns by the answer, in his words
    issue: str = ""  # of the report; empty for the first
    changes: tuple[str, ...] = ()  # since the first issue
    wishes: tuple[tuple[str, str], ...] = ()  # what matters, then the reasons: words and subject


@dataclass(frozen=True)
class CaseFile:
    """The file itself."""

    name: str
    stem: str
    sha256: str


@dataclass(frozen=True)
class Case:
    """One study's input. Every numeric field may hold an array of draws."""

    file: CaseFile
    study: Instruction
    boat: Boat
    waters: Waters
    weather: WeatherFile | None  # beside the case
    factors: Factors
    masses: Masses
    engine: Diesel
    propeller: Propeller
    trial: SeaTrial | None
    planning: Planning
    berth: Berth
    legs: tuple[Leg, ...]
    house: House
    papers: Papers
    prices: Prices
    carbon: Carbon
    options: tuple[Option, ...]
    assumptions: tuple[Assumption, ...]
    warnings: tuple[Fault, ...]
