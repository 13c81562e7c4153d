"""Of what kind and within what limits is the value of a key, and what do all sections share?"""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated, Any, get_origin

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.case.leaf import Amount, Flag, Given, Pattern, Text, Whole
from generator.case.read import Hole, Scalar
from generator.case.said import Keys, Said

ID_FORM = r"[a-z0-9][a-z0-9_-]{0,31}"

Length = Annotated[Given | None, Amount("length")]
LengthOrNone = Annotated[Given | None, Amount("length", above=False)]
Position = Annotated[Given | None, Amount("length", low=None)]
Distance = Annotated[Given | None, Amount("distance")]
DistanceOrNone = Annotated[Given | None, Amount("distance", above=False)]
Area = Annotated[Given | None, Amount("area")]
AreaOrNone = Annotated[Given | None, Amount("area", above=False)]
Volume = Annotated[Given | None, Amount("volume")]
VolumeRate = Annotated[Given | None, Amount("volume rate")]
Mass = Annotated[Given | None, Amount("mass")]
MassOrNone = Annotated[Given | None, Amount("mass", above=False)]
MassPerPower = Annotated[Given | None, Amount("mass per power")]
Speed = Annotated[Given | None, Amount("speed")]
SpeedOrNone = Annotated[Given | None, Amount("speed", above=False)]
Stream = Annotated[Given | None, Amount("speed", low=None)]
Time = Annotated[Given | None, Amount("time")]
TimeOrNone = Annotated[Given | None, Amount("time", above=False)]
Power = Annotated[Given | None, Amount("power")]
PowerOrNone = Annotated[Given | None, Amount("power", above=False)]
Energy = Annotated[Given | None, Amount("energy")]
EnergyOrNone = Annotated[Given | None, Amount("energy", above=False)]
SpecificEnergy = Annotated[Given | None, Amount("specific energy")]
Charge = Annotated[Given | None, Amount("charge")]
Voltage = Annotated[Given | None, Amount("voltage")]
Current = Annotated[Given | None, Amount("current")]
Resistance = Annotated[Given | None, Amount("resistance")]
ResistanceCharge = Annotated[Given | None, Amount("resistance times charge")]
Warming = Annotated[Given | None, Amount("warming", above=False)]
Conductance = Annotated[Given | None, Amount("conductance")]
AirFlow = Annotated[Given | None, Amount("air flow", above=False)]
Life = Annotated[Given | None, Amount("years", high=50.0)]
Coldness = Annotated[Given | None, Amount("temperature", low=-30.0, high=40.0, above=False)]
Capacitance = Annotated[Given | None, Amount("capacitance")]
TemperatureClass = Annotated[Given | None, Amount("temperature", low=60.0, high=200.0, above=False)]
SpaceTemperature = Annotated[Given | None, Amount("temperature", low=20.0, high=80.0, above=False)]
Rotation = Annotated[Given | None, Amount("rotation")]
CRate = Annotated[Given | None, Amount("c_rate")]
Temperature = Annotated[Given | None, Amount("temperature", low=-2.0, high=40.0, above=False)]
Share = Annotated[Given | None, Amount("fraction", high=1.0)]
ShareOrNone = Annotated[Given | None, Amount("fraction", high=1.0, above=False)]
ShareOfLength = Annotated[Given | None, Amount("fraction", high=3.0)]
Centre = Annotated[Given | None, Amount("fraction", low=-0.2, high=0.2)]
Rate = Annotated[Given | None, Amount("fraction", low=-0.05, high=0.5)]
Latitude = Annotated[Given | None, Amount("number", low=-75.0, high=75.0, above=False)]
Longitude = Annotated[Given | None, Amount("number", low=-180.0, high=180.0, above=False)]
Bearing = Annotated[Given | None, Amount("number", high=360.0, above=False)]
Tilt = Annotated[Given | None, Amount("number", high=90.0, above=False)]
DailySun = Annotated[Given | None, Amount("irradiation", above=False)]
Ratio = Annotated[Given | None, Amount("ratio")]
Number = Annotated[Given | None, Amount("number")]
NumberOrNone = Annotated[Given | None, Amount("number", above=False)]
Deviate = Annotated[Given | None, Amount("number", low=-4.0, high=4.0)]
Horizon = Annotated[Given | None, Amount("years", high=50.0, whole=True)]
Years = Annotated[Given | None, Amount("years", high=60.0)]
YearOfCost = Annotated[Given | None, Amount("years", high=50.0, above=False, whole=True)]
Money = Annotated[Given | None, Amount("money", low=None)]
MoneyOrNone = Annotated[Given | None, Amount("money", above=False)]
PricePerVolume = Annotated[Given | None, Amount("money per volume", above=False)]
CarbonPerVolume = Annotated[Given | None, Amount("carbon per volume", above=False)]
CarbonPerEnergy = Annotated[Given | None, Amount("carbon per energy", above=False)]
PricePerEnergy = Annotated[Given | None, Amount("money per energy", above=False)]
Words = Annotated[str | None, Text()]
YesNo = Annotated[bool | None, Flag()]
CalendarYear = Annotated[int | None, Whole(1850, 2100)]
Name = Annotated[str | None, Pattern(ID_FORM, "a short id of small letters, digits, - or _")]


def needed(empty: Any = None) -> Any:
    """The mark of a key without which there is no study; ``empty`` stands in for it."""
    return Field(default=empty, json_schema_extra={"needed": True})


NEEDED = needed()
NEEDED_LIST = needed(())


class Group(BaseModel):
    """A section of the file; a refused one counts as empty."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    @model_validator(mode="before")
    @classmethod
    def _nothing_in_a_hole(cls, data: object) -> object:
        if isinstance(data, Hole):
            return {}
        if not isinstance(data, Keys):
            return data
        lists = {key for key, value in data.items() if isinstance(value, Hole)} & _lists(cls)
        if not lists:
            return data
        return Keys({**data, **{key: [] for key in lists}}, data.lines, data.line)


def _lists(model: type[BaseModel]) -> set[str]:
    """The keys of a section that hold lists."""
    fields = model.model_fields.items()
    return {name for name, field in fields if get_origin(field.annotation) is tuple}


def with_neighbours(data: object, amount: str) -> object:
    """A list item whose ``from`` and ``plus_minus`` belong to its amount."""
    main = data.get(amount) if isinstance(data, Keys) else None
    if not isinstance(data, Keys) or not isinstance(main, Said):
        return data
    origin, doubt = data.get("from"), data.get("plus_minus")
    moved = replace(
        main,
        origin=main.origin or _scalar(origin),
        doubt=main.doubt or _scalar(doubt),
        beside=main.origin is None and main.doubt is None,
    )
    return Keys({**data, amount: moved}, data.lines, data.line)


def _scalar(said: object) -> Scalar | None:
    return Scalar(said.text, said.line, said.column) if isinstance(said, Said) else None


class PlainGroup(Group):
    """A section that may be written as its first key's text alone."""

    @model_validator(mode="before")
    @classmethod
    def _plain(cls, data: object) -> object:
        if isinstance(data, Said):
            first = next(iter(cls.model_fields))
            return Keys({first: data}, {first: data.line}, data.line)
        return data
