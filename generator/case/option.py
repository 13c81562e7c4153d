"""Option: what could drive her; kind, motor, bank, propeller, masses, costs."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.arrays import Numbers
from generator.case.diesel import Diesel, Propeller
from generator.case.prices import CostItem
from generator.case.supply import Supply
from generator.case.wiring import Compartment, Wiring


@dataclass(frozen=True)
class Motor:
    """Electric motor and controller. W, rad/s, s."""

    continuous_power: Numbers  # S1 at the motor shaft
    peak_power: Numbers
    peak_time: Numbers
    rated_speed: Numbers
    gear_ratio: Numbers  # motor turns per shaft turn
    gear_efficiency: Numbers
    electronics_standby: Numbers  # W: controller, contactor, display
    seal_and_bearings: Numbers  # W: shaft seal, bearings, turning
    cable_efficiency: Numbers  # battery to controller
    reversal_time: Numbers  # s from full ahead to full thrust astern
    lowest_voltage: Numbers | None  # V, controller cut-off; else by cut_off_share
    cut_off_share: Numbers  # of nominal voltage
    time_constant: Numbers  # s, motor
    controller_time_constant: Numbers | None  # s; else by peak_time
    rated_ambient: Numbers  # degC, for which the plate holds
    derating: Numbers  # share of continuous power lost per K above it
    intake_temperature: Numbers  # degC, of the air that enters the engine space
    airflow: Numbers  # m3/s through the engine space
    space_conductance: Numbers  # W/K through bulkheads and hull
    cooling: str | None  # air, water; none: not told, taken as air
    heat_share: Numbers  # of the losses that go into the space: small with water cooling
    mass: Numbers | None  # kg, with controller and bed; else by the register


@dataclass(frozen=True)
class Blocks:
    """Batteries in series make a string, strings lie side by side; one block, one string else."""

    series: int
    parallel: int
    discharge_limit: Numbers | None  # A, BMS continuous of one block

    @property
    def count(self) -> int:
        """How many blocks the bank comes in."""
        return self.series * self.parallel


@dataclass(frozen=True)
class Bank:
    """The propulsion battery. V, C (coulomb = A s), kg."""

    chemistry: str  # LFP, NMC, AGM, flooded
    nominal_voltage: Numbers
    charge: Numbers  # C, nominal capacity at nominal voltage
    cells: int | None  # in series, by the maker; else by the two voltages
    end_of_charge: Numbers | None  # V, by the maker; else the most that its cells bear
    blocks: Blocks
    split: bool  # two halves, each of which can drive her alone
    usable_share: Numbers  # planned depth of discharge
    aged_share: Numbers | None  # of nominal capacity at the end of the horizon; else by ageing
    discharge_limit: Numbers | None  # A, BMS continuous
    specific_energy: Numbers  # J/kg of the pack
    cruise_rate_limit: Numbers  # 1/s, continuous current over charge (C rate)
    continuous_rate: Numbers  # 1/s, used when discharge_limit is absent
    sharing: Numbers  # of the summed limits that unequal strings give
    resistance: Numbers | None  # ohm, whole bank, 25 degC, half full, new; else by the next two
    resistance_charge: Numbers  # ohm A s, of one cell
    link_resistance: Numbers  # ohm, busbars, main fuse, contactor
    resistance_growth: Numbers  # share added when a fifth of the capacity is lost
    gauge_error: Numbers  # of capacity
    calendar_life: Numbers  # year, until a fifth is lost
    cycle_life: Numbers  # full cycles, until a fifth is lost
    resting_state: Numbers  # state of charge between passages
    above_water: Numbers  # K, yearly mean of the bank above the season's water
    charge_lock_out: bool | None  # does the management system refuse charge when cold?
    mass: Numbers | None  # kg, with boxes; else by specific energy
    life: Numbers | None  # years until the owner replaces it; absent: as it ages
    manufacture: Numbers  # kg of carbon dioxide per J of nominal capacity
    block_volume: Numbers | None  # m3 of one block, with what it needs around it

    @property
    def lasts(self) -> Numbers:
        """Years until it is replaced; by the calendar alone where nobody has aged it yet."""
        return self.calendar_life if self.life is None else self.life

    def resized(self, factor: Numbers) -> Bank:
        """A bank of the same kind, ``factor`` times as large: as many blocks, each larger."""
        limit = _times(self.blocks.discharge_limit, factor)
        return replace(
            self,
            charge=self.charge * factor,
            blocks=replace(self.blocks, discharge_limit=limit),
            discharge_limit=_times(self.discharge_limit, factor),
            resistance=_times(self.resistance, 1.0 / factor),
            mass=_times(self.mass, factor),
        )


def _times(value: Numbers | None, factor: Numbers) -> Numbers | None:
    return None if value is None else value * factor


# Parts of the old plant that an option may keep aboard.
OLD_PARTS = ("exhaust", "fuel", "tank", "starter battery")
# What an item of a ledger can be; the first five are counted from the register where a ledger
# that names its parts leaves them out.
PARTS_ABOARD = (
    "engine", "exhaust", "fuel", "tank", "starter battery", "motor", "battery", "cables",
    "old cables", "fluids", "boxes", "panels and frames", "ballast", "other",
)  # fmt: skip


@dataclass(frozen=True)
class LedgerItem:
    """One mass that goes out or comes in. kg, m.

    x forward of the datum, y to starboard, z above the waterline. An item in a named space of
    the boat that says no place of its own stands at the centre of that space.
    """

    name: str
    mass: Numbers
    x: Numbers | None
    y: Numbers
    z: Numbers
    part: str  # a word of PARTS_ABOARD, or empty
    space: str  # a name of boat.spaces, or empty
    source: str  # weighed, measured, builder, estimate, register
    line: int


@dataclass(frozen=True)
class Option:
    """One answer to the question of what should drive her."""

    id: str
    name: str
    kind: str  # keep, new diesel, battery
    note: str
    motor: Motor | None
    bank: Bank | None
    installation: Wiring | None
    compartment: Compartment
    diesel: Diesel | None
    propeller: Propeller
    kept: tuple[str, ...]  # parts of the old plant that stay, words of OLD_PARTS
    supply: Supply | None  # of a battery option
    removed: tuple[LedgerItem, ...]
    added: tuple[LedgerItem, ...]
    costs: tuple[CostItem, ...]
    line: int

    @property
    def charger_power(self) -> Numbers | None:
        """What its charger can put into the bank [W]; none without a bank.

        As the case says of the charger, else of its circuit; else at the charge rate of the
        installation.
        """
        if self.bank is None or self.supply is None or self.installation is None:
            return None
        if self.supply.charger.power is not None:
            return self.supply.charger.power
        wiring = self.installation
        own = next((plan.current for plan in wiring.circuits if plan.name == "charger"), None)
        current = wiring.charge_rate * self.bank.charge if own is None else own
        return current * self.bank.nominal_voltage
