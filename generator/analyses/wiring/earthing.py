"""What of isolation, bonding and earthing must be confirmed, and with whom?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.installation import RULE_HIGH, Circuit, ToConfirm, Voltages
from generator.analyses.wiring.supply import TOUCH_LIMIT
from generator.case.case import Case
from generator.case.option import Option
from generator.case.wiring import Wiring
from generator.tables.method import method

INSULATION = method("wiring.insulation")
POTENTIAL_SHIFT = method("wiring.potential_shift")
RESIDUAL = method("wiring.residual_current")
CURRENT = "(verify current edition)"


def to_confirm(
    case: Case, option: Option, key: str, wiring: Wiring, volts: Voltages,
    circuits: tuple[Circuit, ...],
) -> tuple[ToConfirm, ...]:  # fmt: skip
    """The list in the order in which a surveyor walks: shore, battery, shaft, mast, papers."""
    found = [
        _shore(case),
        _isolation(key, wiring, volts),
        _bonding(case, option, key, circuits),
        _anodes(case, option),
        _lightning(case, key),
        *_sources(option),
        *_documents(key, volts),
    ]
    return tuple(found)


def _shore(case: Case) -> ToConfirm:
    berth, who = case.berth, "installer; marina"
    numbers = {"residual_ma": RESIDUAL * 1e3}
    if not berth.shore_power:
        text = (
            "{berth.name|given} has no shore power: an inlet fitted later wants earth, galvanic "
            "isolator and a residual-current device of {here.residual_ma|milliamperes}"
        )
        return ToConfirm("shore", "Shore earth", text, who, numbers)
    text = (
        "Shore earth joins her metal to every boat at {berth.name|given}: a galvanic isolator for "
        "at least the {berth.breaker_a|current} of its breaker or an isolating transformer for "
        f"{{berth.charge_power_kw|power}}, ABYC A-28 {CURRENT}; a residual-current device of "
        "{here.residual_ma|milliamperes}, tripped before the first charge and each spring"
    )
    return ToConfirm("shore", "Shore earth", text, who, numbers)


def _isolation(key: str, wiring: Wiring, volts: Voltages) -> ToConfirm:
    numbers = {
        "insulation_megohm": INSULATION / 1e6,
        "leak_ma": volts.ceiling / INSULATION * 1e3,
        "shift_mv": POTENTIAL_SHIFT * 1e3,
    }
    watch = "an insulation monitor is named" if wiring.insulation_monitor else "no monitor is named"
    text = (
        f"Both poles of the {{{key}.voltages.ceiling_v|voltage}} bank free of hull and water: at "
        "least {here.insulation_megohm|count} megohm ({here.leak_ma|milliamperes} of leak), and "
        "the hull moves by no more than {here.shift_mv|count} mV when the charger runs; "
        f"{watch}. As neither pole is earthed, isolators open both, and whether the negative leg "
        "wants a fuse too is to be asked"
    )
    return ToConfirm("isolation", "Isolation of the bank", text, "installer", numbers)


def _bonding(case: Case, option: Option, key: str, circuits: tuple[Circuit, ...]) -> ToConfirm:
    place = next(n for n, item in enumerate(circuits) if item.kind == "motor")
    text = (
        "The engine block was the meeting point of negative, bonding and shaft. One new bonding "
        f"point, its conductor measured against {{{key}.circuits.{place}.area_mm2|section}} of the "
        "motor's; no propulsion current in it"
    )
    if option.propeller.installation == "shaft":
        text += (
            "; the shaft of the {propeller.diameter_mm|length_small} propeller loses its path "
            "through gearbox and block and wants a brush, or isolation by its coupling"
        )
    else:
        text += "; the saildrive leg stays isolated from the motor's case, as its maker asks"
    return ToConfirm("bonding", "Bonding without the block", text, "installer; surveyor", {})


def _anodes(case: Case, option: Option) -> ToConfirm:
    metal = "zinc or aluminium" if case.waters.kind == "salt" else "magnesium"
    text = (
        f"Anodes of {metal} for the {case.waters.kind} water of {{waters.name|given}}, on "
        f"{option.propeller.installation} and propeller: weigh or photograph them at launch and "
        "after {here.weeks|count} weeks with the charger in use; ABYC E-2 " + CURRENT
    )
    return ToConfirm("anodes", "Anodes", text, "yard; surveyor", {"weeks": 6.0})


def _lightning(case: Case, key: str) -> ToConfirm:
    text = (
        "A strike down the mast of {boat.mast_height_m|height} may take controller and battery "
        f"management, and with them all {{{key.rsplit('.', 1)[0]}.bank.nominal_kwh|energy}}: what "
        f"is bonded to the rig, how far cables keep from it; ISO 10134 {CURRENT}"
    )
    return ToConfirm("lightning", "Lightning", text, "surveyor; insurer", {})


def _sources(option: Option) -> Iterator[ToConfirm]:
    """Sources of the case that these lists do not size: told, so that none is left live."""
    supply, numbers, named = option.supply, {}, []
    if supply is not None and supply.genset is not None:
        numbers["genset_kw"] = scalar(supply.genset.power) / 1e3
        named.append("a charging machine of {here.genset_kw|power}")
    if supply is not None and supply.wind is not None:
        numbers["wind_w"] = scalar(supply.wind.rated_power)
        named.append("a wind generator of {here.wind_w|watts}")
    if named:
        text = (
            f"The case lists {' and '.join(named)}, not in diagram and schedules: each is a live "
            "source and wants its own fuse and isolator at the busbar, an end of charge below the "
            "cut-off of the cells, and the charge inhibit of the management systems"
        )
        yield ToConfirm("sources", "Other sources", text, "installer", numbers)


def _documents(key: str, volts: Voltages) -> Iterator[ToConfirm]:
    """Documents that end at 50 V, told by the ceiling and not by the label."""
    if volts.band != RULE_HIGH:
        return
    text = (
        f"Sold as {{{key}.voltages.nominal_v|voltage}}, the bank reaches "
        f"{{{key}.voltages.ceiling_v|voltage}} with {{{key}.voltages.cells|count}} cells: "
        f"documents scoped to 50 V, such as ABYC E-11 and ISO 13297 {CURRENT}, may not cover it; "
        "ask which one surveyor and insurer will hold it against"
    )
    yield ToConfirm("scope", "Scope of documents", text, "surveyor; insurer", {})
    if volts.ceiling > TOUCH_LIMIT:
        text = (
            f"{{{key}.voltages.ceiling_v|voltage}} is above the "
            f"{{{key}.voltages.touch_limit_v|voltage}} in common use as touch limit: specialist "
            "design, insulation monitor, interlocked covers, and work by trained persons only"
        )
        yield ToConfirm("touch", "Above the touch limit", text, "specialist; insurer", {})
