"""How do the keys of an option become what charges its bank?"""

from __future__ import annotations

from generator.case.fill import Desk
from generator.case.said import Keys, line_of
from generator.case.schema import OptionKeys
from generator.case.supply import Charger, Genset, PanelGroup, Supply, WindGenerator

KEY = "options.supply"


def build_supply(option: OptionKeys, root: Keys, desk: Desk, number: int) -> Supply | None:
    """The sources of a battery option; what the case does not name is not there."""
    if option.kind != "battery":
        return None
    keys, path = option.supply, f"options[{number}].supply"
    said = keys.model_fields_set
    return Supply(
        charger=desk.fill(Charger, keys.charger, f"{path}.charger", f"{KEY}.charger"),
        panels=tuple(
            _panels(option, root, desk, (number, place)) for place in range(len(keys.panels))
        ),
        genset=desk.fill(Genset, keys.genset, f"{path}.genset", f"{KEY}.genset")
        if "genset" in said
        else None,
        wind=desk.fill(WindGenerator, keys.wind, f"{path}.wind", f"{KEY}.wind")
        if "wind" in said
        else None,
        regeneration=bool(keys.regeneration),
    )


def _panels(option: OptionKeys, root: Keys, desk: Desk, spot: tuple[int, int]) -> PanelGroup:
    number, place = spot
    keys = option.supply.panels[place]
    return desk.fill(
        PanelGroup,
        keys,
        f"options[{number}].supply.panels[{place}]",
        f"{KEY}.panels",
        mounting=keys.mounting or "free",
        line=line_of(root, ("options", number, "supply", "panels", place)),
    )
