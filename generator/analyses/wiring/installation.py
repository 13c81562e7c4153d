"""What is the direct-current installation of an option made of, and does it hold its rules?

Everything here is of the best estimate: a cable is bought once. Units: A, V, W, m, m2, ohm, s,
degC. Every number is for the installer to confirm.
"""

from __future__ import annotations

from dataclasses import dataclass

PEAK_LEFT = "Peak power at the shaft that this leaves, bank old and cold"  # a setting, kW
RULE_LOW, RULE_HIGH = "below 50 V", "50 V and above"


@dataclass(frozen=True)
class Voltages:
    """What the bank is called, and what it reaches: the rules go by the second."""

    nominal: float
    cells: int
    ceiling: float  # at the end of charge
    lowest: float  # at which management system or controller cuts off
    band: str  # RULE_LOW or RULE_HIGH, by the ceiling
    band_by_label: str  # what the label alone would have said
    touch_limit: float
    charger: float  # at which chargers end
    regeneration: float  # above which the motor gives nothing back
    cell_highest: float  # of one cell
    cell_lowest: float
    cell_warning: float  # of one cell, ahead of the cut-off
    house: float  # of the house circuits behind the converter
    house_ceiling: float


@dataclass(frozen=True)
class Conductor:
    """Copper of one pole, and what it may carry where it lies."""

    area: float  # m2, of one conductor
    number: int  # side by side, in pairs laid apart
    gauge: str  # the gauge whose allowable current is taken
    table_ampacity: float  # of all of them, at 30 degC, alone
    ampacity: float  # of all of them, in the space and bundle
    stated: bool  # the case says it; else it is chosen here

    @property
    def copper(self) -> float:
        """Area of all conductors of the pole [m2]."""
        return self.area * self.number


@dataclass(frozen=True)
class Drop:
    """Voltage lost out and back at the continuous current, and what two code forms ask for."""

    volts: float
    share: float  # of the circuit's voltage
    peak_share: float  # at the peak current
    limit: float  # share
    physical_area: float  # m2 for the limit, at the highest temperature of the insulation
    boat_form_area: float  # m2 that the American form asks for at the limit
    metric_form_area: float  # m2 that the metric form asks for at the limit


@dataclass(frozen=True)
class Warmth:
    """How warm the conductor gets; degC and s."""

    space: float
    settled: float  # at the continuous current
    after_peak: float  # at the end of the peak
    limit: float  # temperature class of the insulation
    time_constant: float
    fault_area: float  # m2, least that a short circuit does not spoil


@dataclass(frozen=True)
class Circuit:
    """One pair of conductors with the fuse in its positive leg."""

    id: str  # C1, C2 ...
    kind: str  # string, motor, charger, converter, inverter, panel
    name: str
    source: str  # id of the place it starts from
    target: str
    voltage: float  # nominal
    ceiling: float
    continuous: float
    peak: float
    peak_time: float
    from_power: bool  # its current follows from a power at the nominal voltage
    run: float  # one way
    conductor: Conductor
    drop: Drop
    warmth: Warmth
    device: str  # id of its fuse
    problems: tuple[str, ...]


@dataclass(frozen=True)
class Device:
    """A fuse in the positive leg of one circuit."""

    id: str  # F1, F2 ...
    circuit: str
    place: str
    fuse_class: str | None  # none where no class bears voltage and fault
    rating: float
    voltage: float | None
    breaking: float | None
    fault: float  # prospective current at its place
    ceiling: float  # highest voltage across it
    least: float  # rating that the load asks for
    most: float  # rating that the conductor allows under the rule
    distance: float  # from its source
    distance_limit: float
    upstream: str | None  # id of the fuse before it
    selective: bool | None
    spares: int
    stated: bool
    problems: tuple[str, ...]


@dataclass(frozen=True)
class Switch:
    """Something that opens or locks a circuit: isolator, contactor, stop, interlock."""

    id: str  # Q1, K1, S1 ...
    kind: str  # isolator, contactor, pre-charge relay, remote disconnect, emergency stop,
    #   neutral start, charge inhibit
    name: str
    place: str
    circuit: str  # id of the circuit it opens or whose controller it holds
    current: float | None  # least rating
    voltage: float | None  # least rating


@dataclass(frozen=True)
class Precharge:
    """Filling the controller's capacitors before the contactor closes."""

    capacitance: float  # F
    resistance: float  # ohm
    first_current: float
    time: float  # until no more than a hundredth is left
    difference: float  # V measured across the contactor at which it may close
    limit: float  # s after which pre-charge is given up
    fuse: float  # A, of the wire to its relay
    relay: str  # id of the relay that closes the path
    energy: float  # J each time
    first_power: float  # W in the first instant


@dataclass(frozen=True)
class Setting:
    """One value to be set in a device, and where it comes from."""

    device: str
    name: str
    value: float  # nan where there is none
    unit: str  # suffix of the results: a, v, s, min, degc, share
    reason: str  # of the value, or of there being none


@dataclass(frozen=True)
class Label:
    """One label: where it hangs and what it says, with {results key|form} places."""

    place: str
    text: str
    numbers: dict[str, float]


@dataclass(frozen=True)
class ToConfirm:
    """What must be confirmed of isolation, bonding and earthing, with whom."""

    id: str
    title: str
    text: str  # with {results key|form} places; `here` reaches the numbers
    confirm: str
    numbers: dict[str, float]


@dataclass(frozen=True)
class Fault:
    """Prospective short-circuit currents."""

    string: float  # behind one string alone
    bank: float  # at the main busbar, all strings
    string_resistance: float
    trunk_resistance: float
    open_voltage: float
    by_maker: bool
    string_most: float  # with the least resistances of their ranges: what fuses must break
    bank_most: float


@dataclass(frozen=True)
class StringCurrent:
    """What one string may carry: the least of all that its current goes through. A."""

    own: float  # its management system as bought, or its cells
    wired: float  # of fuse (four fifths), isolator and cable, for good
    wired_peak: float  # the same for the minutes of a peak: the whole rating of the fuse
    bound_by: str  # what sets the limit for good

    @property
    def for_good(self) -> float:
        """Alarm of its management system [A]."""
        return min(self.own, self.wired)

    @property
    def for_peak(self) -> float:
        """Cut-off of its management system [A]: before the fuse opens."""
        return min(self.own, self.wired_peak)


@dataclass(frozen=True)
class Installation:
    """The whole of it; ``problems`` are those of circuits and devices in order."""

    voltages: Voltages
    strings: int
    fault: Fault
    string: StringCurrent
    circuits: tuple[Circuit, ...]
    devices: tuple[Device, ...]
    switches: tuple[Switch, ...]
    precharge: Precharge
    settings: tuple[Setting, ...]
    labels: tuple[Label, ...]
    confirm: tuple[ToConfirm, ...]
    temperature_class: float
    space_temperature: float
    path_drop: float  # from a battery to the controller, of the nominal voltage, for good
    house_power: float  # W through the converter at most
    sun_power: float  # W of panels
    bundled: int
    sheathed: bool
    assumed: bool  # the case says nothing of the installation
    problems: tuple[str, ...]

    def circuit(self, kind: str) -> Circuit | None:
        """The first circuit of a kind."""
        return next((item for item in self.circuits if item.kind == kind), None)

    def setting(self, name: str) -> float | None:
        """The value of the first setting of a name, in its own unit."""
        return next((item.value for item in self.settings if item.name == name), None)

    def device_of(self, circuit: str) -> Device:
        """The fuse of a circuit."""
        return next(item for item in self.devices if item.circuit == circuit)
