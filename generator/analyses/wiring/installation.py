"""What is the direct-current installation of an option made of, and does it hold its rules?

Everything here is of the best estimate: a cable is bought once. Every number is for the installer
to confirm. Sentences on any of it stand in templates/words/wiring.html.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.wiring.label import Label
from generator.analyses.wiring.set_values import Settings
from generator.analyses.wiring.to_confirm import ToConfirm
from generator.records import number, record, working

RULE_LOW, RULE_HIGH = "below 50 V", "50 V and above"
FOR_THE_INSTALLER = "for the installer to confirm"


@record
class Voltages:
    """What the bank is called, and what it reaches: the rules go by the second."""

    band: str  # RULE_LOW or RULE_HIGH, by the ceiling
    band_by_label: str  # what the label alone would have said
    nominal: float = number("voltage", "voltage on the label")
    cells: int = number("count", "cells in series")
    ceiling: float = number("voltage", "voltage at the end of charge")
    lowest: float = number("voltage", "voltage of the cut-off")
    touch_limit: float = number("voltage", "limit of voltage that may be touched")
    charger: float = number("voltage", "voltage at which chargers end")
    regeneration: float = number("voltage", "voltage above which nothing is regenerated")
    cell_highest: float = number("cell_voltage", "highest voltage of a cell")
    cell_lowest: float = number("cell_voltage", "lowest voltage of a cell")
    cell_warning: float = number("cell_voltage", "voltage of a low cell's alarm")
    house: float = number("voltage", "voltage of the house circuits")
    house_ceiling: float = number("voltage", "highest voltage of the house circuits")


@record
class Problem:
    """What does not hold of a circuit or a fuse; ``what`` is one of the words of its macro."""

    SAID_BY: ClassVar[str] = "problem"
    SAID_IN: ClassVar[str] = "wiring"
    about: str  # id of the circuit or the fuse
    what: str


@record
class Conductor:
    """Copper of one pole, and what it may carry where it lies."""

    gauge: str  # whose allowable current is taken
    stated: bool  # the case says it; else it is chosen here
    area: float = number("section", "section of one conductor")
    side_by_side: int = number("count", "conductors of each pole")  # in pairs laid apart
    table_ampacity: float = number("current", "allowable current, alone in 30 °C")
    ampacity: float = number("current", "allowable current in space and bundle")

    @property
    def copper(self) -> float:
        """Area of all conductors of the pole [m2]."""
        return self.area * self.side_by_side


@record
class Drop:
    """Voltage lost out and back at the continuous current, and what two code forms ask for."""

    lost: float = number("voltage", "voltage lost")
    share: float = number("percent", "voltage lost, of the circuit's")
    peak_share: float = number("percent", "voltage lost at the peak")
    limit: float = number("percent", "voltage that may be lost")
    physical_area: float = number("section", "section for the limit, warm copper")
    boat_form_area: float = number("section", "section for the limit, American form")
    metric_form_area: float = number("section", "section for the limit, metric form")


@record
class Warmth:
    """How warm the conductor gets."""

    space: float = number("temperature", "temperature of the space")
    settled: float = number("temperature", "temperature at the continuous current")
    after_peak: float = number("temperature", "temperature at the peak's end")
    limit: float = number("temperature", "temperature that the insulation bears")
    time_constant: float = number("seconds", "time in which it warms")
    fault_area: float = number("section", "least section for a short circuit")


@record
class Circuit:
    """One pair of conductors with the fuse in its positive leg."""

    id: str  # C1, C2 ...
    kind: str  # string, motor, charger, converter, inverter, panel, house feed, sun
    name: str
    source: str  # the place it starts from
    target: str
    from_power: bool  # its current follows from a power at the nominal voltage
    conductor: Conductor
    drop: Drop
    warmth: Warmth
    device: str  # id of its fuse
    problems: tuple[Problem, ...]
    voltage: float = number("voltage", "nominal voltage of the circuit")
    ceiling: float = number("voltage", "highest voltage of the circuit")
    continuous: float = number("current", "continuous current")
    peak: float = number("current", "peak current")
    peak_time: float = number("seconds", "time of the peak")
    run: float = number("height", "run, one way")
    status: str = FOR_THE_INSTALLER


@record
class Device:
    """A fuse in the positive leg of one circuit."""

    id: str  # F1, F2 ...
    circuit: str
    place: str
    fuse_class: str | None  # none where no class bears voltage and fault
    upstream: str | None  # id of the fuse before it
    selective: bool | None  # whether it opens alone; none of a first one
    stated: bool
    problems: tuple[Problem, ...]
    rating: float = number("current", "rating")
    voltage: float | None = number("voltage", "voltage of its class")
    breaking: float | None = number("short_circuit", "short circuit that it breaks")
    fault: float = number("short_circuit", "prospective short circuit")
    ceiling: float = number("voltage", "highest voltage across it")
    least: float = number("current", "rating that the load asks for")
    most: float = number("current", "rating that the conductor allows")
    distance: float = number("length_small", "distance from its source")
    distance_limit: float = number("length_small", "distance that is allowed")
    spares: int = number("count", "spares of its rating and class")
    status: str = FOR_THE_INSTALLER
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("voltage", "breaking"), "no_usual_class")
    )


@record
class Switch:
    """Something that opens or locks a circuit: isolator, contactor, stop, interlock.

    ``at``: battery (outside its space), case (of a string), behind_fuse, below, helm, wires.
    """

    SAID_BY: ClassVar[str] = "switch"
    SAID_IN: ClassVar[str] = "wiring"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("place",)
    id: str  # Q1, K1, S1 ...
    kind: str  # isolator, contactor, pre-charge relay, remote disconnect, emergency stop,
    #   neutral start, charge inhibit
    of_circuit: str  # kind of the circuit it opens, or whose controller it holds
    circuit: str  # id of that circuit
    part: str  # the place or the machine that it belongs to
    by: str  # id of what acts on it or is acted on with it; empty: none
    at: str
    current: float | None = number("current", "least rating in current", default=None)
    voltage: float | None = number("voltage", "least rating in voltage", default=None)
    status: str = FOR_THE_INSTALLER
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("current", "voltage"), "wire_of_control")
    )


@record
class Precharge:
    """Filling the controller's capacitors before the contactor closes."""

    relay: str  # id of the relay that closes the path
    capacitance: float = number("capacitance", "capacitance of the controller")
    resistance: float = number("ohms", "resistor of the pre-charge")
    first_current: float = number("current", "current in the first instant")
    first_power: float = number("watts", "heat in the first instant")
    time: float = number("seconds", "time until a hundredth is left")
    difference: float = number("cell_voltage", "difference at which it closes")
    limit: float = number("seconds", "time after which it is given up")
    fuse: float = number("current", "fuse of its relay's wire")
    energy: float = number("joules", "heat each time")


@record
class Fault:
    """Prospective short-circuit currents of a full bank.

    The likely one is that of the best estimate; the greatest has the least resistances of their
    ranges, and is what fuses must break.
    """

    by_maker: bool
    string_likely: float = number("short_circuit", "likely short circuit behind one string")
    string_greatest: float = number("short_circuit", "greatest short circuit behind one string")
    bank_likely: float = number("short_circuit", "likely short circuit at the busbar")
    bank_greatest: float = number("short_circuit", "greatest short circuit at the busbar")
    string_resistance: float = number("resistance", "resistance of one string")
    trunk_resistance: float = number("resistance", "resistance of the trunk")
    open_voltage: float = number("voltage", "voltage at rest, full")


@record
class StringCurrent:
    """What one string may carry: the least of all that its current goes through."""

    bound_by: str  # what sets the limit for good
    own: float = number("current", "limit of a string as bought")  # or of its cells
    for_good: float = number("current", "current of a string, continuous")
    for_peak: float = number("current", "current of a string, at peak")  # before the fuse opens
    wired: float = working()  # A, of fuse (four fifths), isolator and cable, for good
    wired_peak: float = working()  # A, for the minutes of a peak: the whole rating of the fuse


@record
class Installation:
    """The whole of it; ``problems`` are those of circuits and devices in order."""

    voltages: Voltages
    fault: Fault
    string: StringCurrent
    circuits: tuple[Circuit, ...]
    devices: tuple[Device, ...]
    switches: tuple[Switch, ...]
    precharge: Precharge
    settings: Settings
    labels: tuple[Label, ...]
    confirm: tuple[ToConfirm, ...]
    problems: tuple[Problem, ...]
    battery_space: str | None  # names of the spaces; none where the case names none
    sheathed: bool
    assumed: bool  # the case says nothing of the installation
    strings: int = number("count", "strings side by side")
    temperature_class: float = number("temperature", "temperature class of the insulation")
    space_temperature: float = number("temperature", "temperature of the space")
    bundled: int = number("count", "conductors in a bundle")
    path_drop: float = number("percent", "voltage lost, battery to controller")
    house_power: float = number("watts", "house through the converter, most")
    sun_power: float = number("watts", "panels")
    status: str = FOR_THE_INSTALLER

    def circuit(self, kind: str) -> Circuit | None:
        """The first circuit of a kind."""
        return next((item for item in self.circuits if item.kind == kind), None)

    def device_of(self, circuit: str) -> Device:
        """The fuse of a circuit."""
        return next(item for item in self.devices if item.circuit == circuit)
