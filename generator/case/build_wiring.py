"""How do the keys of an installation become its circuits, with every default filled in?"""

from __future__ import annotations

from generator.case.fill import Desk
from generator.case.said import Keys, line_of
from generator.case.schema import OptionKeys
from generator.case.wiring import CIRCUITS, CircuitPlan, Compartment, Wiring
from generator.case.wiring_keys import CircuitKeys, CompartmentKeys

ON_REQUEST = ("inverter", "sun")  # only where the case names them, or has panels


def build_wiring(option: OptionKeys, root: Keys, desk: Desk, number: int) -> Wiring | None:
    """The installation of a battery option; circuits that are not named take their defaults."""
    if option.kind != "battery":
        return None
    path, key = f"options[{number}].installation", "options.installation"
    said = {item.name or "": item for item in option.installation.circuits}
    asked = {*said, "sun"} if option.supply.panels else set(said)
    names = [name for name in CIRCUITS if name in asked or name not in ON_REQUEST]
    desk.names.update({f"{path}.circuits[{n}]": name for n, name in enumerate(names)})
    circuits = tuple(
        desk.fill(
            CircuitPlan,
            said.get(name, CircuitKeys()),
            f"{path}.circuits[{place}]",
            f"{key}.circuits",
            (name,),
            name=name,
        )
        for place, name in enumerate(names)
    )
    line = line_of(root, ("options", number, "installation"))
    return desk.fill(
        Wiring,
        option.installation,
        path,
        key,
        circuits=circuits,
        said=bool(option.installation.model_fields_set),
        line=line,
    )


def build_compartment(keys: CompartmentKeys) -> Compartment:
    """What was seen of the place where the bank stands."""
    return Compartment(
        dry=keys.dry,
        above_bilge=keys.above_bilge,
        ventable=keys.ventable,
        not_a_berth=keys.not_a_berth,
        escape_clear=keys.escape_clear,
        works=keys.works or "",
    )
