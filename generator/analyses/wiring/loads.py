"""Which circuits are there, from where to where, and what do they carry?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.installation import Voltages
from generator.case.wiring import CircuitPlan, Wiring

BUSBAR, HOUSE_BATTERY, CONVERTER = "main busbar", "house battery", "DC-DC converter"
SUN = "sun charger"
ENDS = {
    "motor": (BUSBAR, "motor controller"),
    "charger": (BUSBAR, "charger"),
    "converter": (BUSBAR, CONVERTER),
    "panel": (HOUSE_BATTERY, "house panel"),
    "house feed": (HOUSE_BATTERY, CONVERTER),
    "inverter": (BUSBAR, "inverter"),
    "sun": (BUSBAR, SUN),
}
SOURCES = ("charger", "sun")  # circuits that bring current to the busbar
OF_HOUSE = ("panel", "house feed")  # circuits at the voltage of the house


@dataclass(frozen=True)
class Flow:
    """What a kind of circuit carries for good and at its peak [A], and how long that lasts [s]."""

    continuous: float
    peak: float
    time: float


@dataclass(frozen=True)
class Load:
    """What one circuit carries, before its conductor is known. A, V, s, m."""

    id: str
    kind: str
    name: str
    source: str
    target: str
    voltage: float
    ceiling: float
    continuous: float
    peak: float
    peak_time: float
    run: float
    plan: CircuitPlan


def loads(
    wiring: Wiring, volts: Voltages, flows: dict[str, Flow], strings: int, sharing: float
) -> list[Load]:
    """Every circuit of the installation, the strings first."""
    found: list[Load] = []
    for plan in wiring.circuits:
        several = strings if plan.name == "string" else 1
        for number in range(1, several + 1):
            flow = _string_flow(flows, strings, sharing) if plan.name == "string" else None
            own = flow or flows[plan.name]
            ends = ENDS.get(plan.name, (f"string {number}", BUSBAR))
            found.append(_load(f"C{len(found) + 1}", plan, ends, volts, own))
    return found


def _string_flow(flows: dict[str, Flow], strings: int, sharing: float) -> Flow:
    """One string's part of all that the busbar gives; unequal strings give unequal parts."""
    drawn = [flow for kind, flow in flows.items() if kind not in (*SOURCES, *OF_HOUSE)]
    part = 1.0 if strings == 1 else 1.0 / (strings * sharing)
    return Flow(
        continuous=sum(flow.continuous for flow in drawn) * part,
        peak=sum(flow.peak for flow in drawn) * part,
        time=flows["motor"].time,
    )


def _load(
    number: str, plan: CircuitPlan, ends: tuple[str, str], volts: Voltages, flow: Flow
) -> Load:
    house = plan.name in OF_HOUSE
    given = None if plan.current is None else scalar(plan.current)
    continuous = flow.continuous if given is None else given
    return Load(
        id=number,
        kind=plan.name,
        name=f"{ends[0]} to {ends[1]}",
        source=ends[0],
        target=ends[1],
        voltage=volts.house if house else volts.nominal,
        ceiling=volts.house_ceiling if house else volts.ceiling,
        continuous=continuous,
        peak=max(flow.peak, continuous),
        peak_time=flow.time,
        run=scalar(plan.run),
        plan=plan,
    )
