"""Which hazards does this boat's conversion bring, for which number, and who confirms it?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.findings import Findings
from generator.tables.method import method

MARKET_DATE = 1998  # boats first placed on the market after 16 June of that year are in scope
TOUCH_LIMIT = method("wiring.touch_voltage")


@dataclass(frozen=True)
class CautionItem:
    """One caution; the text carries ``{results key|form}`` places. ``numbers`` are its own."""

    id: str
    title: str
    text: str
    confirm: str
    numbers: dict[str, float]


def cautions(options: tuple[Findings, ...], as_she_is: Findings) -> tuple[CautionItem, ...]:
    """The cautions that belong to this case, hazards of the battery options first."""
    electric = [found for found in options if found.bank is not None]
    items = []
    if electric:
        largest = max(electric, key=lambda found: float(np.asarray(found.store.nominal).flat[0]))
        items += [_loss(largest), _fire(largest), _fault(largest), _cold(largest), _shock(largest)]
        items += [_securing(largest), _removal(largest), _conformity(largest)]
        items.append(_insurer(largest))
    items.append(_trial_at_sea(as_she_is))
    return tuple(item for item in items if item is not None)


def _loss(found: Findings) -> CautionItem:
    key = f"options.{found.place}"
    text = (
        f"A trip of every battery management system takes all {{{key}.bank.nominal_kwh|energy}} "
        f"and every knot at once. Alarms at {{{key}.installation.alarms.first_share|share}} and "
        f"{{{key}.installation.alarms.second_share|share}} of charge come before it; the anchor "
        "stays ready: "
        f"the reserve of {{{key}.bank.reserve_aged_kwh|energy}} is for that, not for planning."
    )
    return CautionItem("loss", "Loss of propulsion", text, "installer; skipper", {})


def _fire(found: Findings) -> CautionItem:
    key = f"options.{found.place}.bank"
    chemistry = "{" + key + ".chemistry|text}"
    text = (
        f"{{{key}.nominal_kwh|energy}} of {chemistry} can go into thermal runaway and give off "
        "flammable and toxic gas; no extinguisher is promised to stop it. It needs a vented "
        "space of its own, a detector, and a way out of the cabin that does not pass it."
    )
    if found.option.bank is not None and found.option.bank.chemistry in ("AGM", "flooded"):
        text = (
            f"{{{key}.nominal_kwh|energy}} of {chemistry} gives off hydrogen while charging and "
            "holds acid; it needs air changed in step with charge current, and a tray."
        )
    return CautionItem("fire", "Fire and gas", text, "installer; insurer", {})


def _fault(found: Findings) -> CautionItem:
    key, made = f"options.{found.place}.bank", f"options.{found.place}.installation.fault"
    told = found.installation is not None and found.installation.fault.by_maker
    low = "" if told else f"{{{made}.bank_ka|short_circuit:bare}} to "
    text = (
        f"{{{key}.charge_ah|charge}} at {{{key}.nominal_voltage_v|voltage}} feed a short circuit "
        f"with {low}{{{made}.bank_most_ka|short_circuit}}; "
        "peak power asks for "
        f"{{{key}.peak_current_a|current}}. One fuse per string at the battery that breaks the "
        "maker's short-circuit current; covered terminals; insulated tools. The management system "
        "is no interrupter."
    )
    return CautionItem(
        "fault", "Short circuit and arc", text, "installer, by the maker's figure", {}
    )


def _cold(found: Findings) -> CautionItem:
    key = f"options.{found.place}.bank"
    text = (
        f"{{{key}.charge_ah|charge}} of lithium must not be charged below 0 °C: the damage is "
        "lasting. A lock-out on cell temperature, and a plan for the winter berth."
    )
    if found.option.bank is not None and found.option.bank.chemistry in ("AGM", "flooded"):
        text = (
            f"{{{key}.charge_ah|charge}} of lead left part-full in winter sulphates and may "
            "freeze; it wants float charge at the berth."
        )
    return CautionItem("cold", "Cold", text, "maker's data sheet", {})


def _shock(found: Findings) -> CautionItem | None:
    bank = found.bank
    if bank is None:
        return None
    cells, ceiling = bank.cells, bank.ceiling
    side = "below" if ceiling <= TOUCH_LIMIT else "above"
    text = (
        "The bank is sold as {options.%d.bank.nominal_voltage_v|voltage} and reaches "
        "{here.ceiling_v|voltage} on charge with {here.cells|count} cells in series: "
        f"{side} the {{here.touch_limit_v|voltage}} in common use as touch limit, and in the "
        "50-volt-and-above class of fuse rules. Every device must be rated for it."
    ) % found.place
    numbers = {"ceiling_v": ceiling, "cells": float(cells), "touch_limit_v": TOUCH_LIMIT}
    return CautionItem("shock", "Voltage", text, "installer", numbers)


def _securing(found: Findings) -> CautionItem:
    key = f"options.{found.place}"
    text = (
        f"The net change of {{{key}.weight.net_kg|mass}} hides {{{key}.weight.removed_kg|mass}} "
        f"taken out and {{{key}.weight.added_kg|mass}} put in elsewhere. Fix the boxes for a "
        "knock-down, weigh what leaves, and have stability looked at where the sum says so."
    )
    return CautionItem("mass", "Mass and securing", text, "naval architect; yard", {})


def _removal(found: Findings) -> CautionItem:
    text = (
        "The {engine.tank_l|fuel} tank is drained and gas-freed, and exhaust and cooling inlets "
        "are blanked, before the first cable is cut."
    )
    services = found.case.house.services
    if services:
        text += f" With the engine go: {', '.join(services)}."
    return CautionItem("removal", "What the diesel leaves behind", text, "yard", {})


def _conformity(found: Findings) -> CautionItem | None:
    boat = found.case.boat
    if boat.market not in ("EEA", "GB", "NI"):
        return None
    if boat.year_on_market is None:
        text = (
            "The year in which she was first placed on the market is not given. A change of the "
            "means of propulsion is presumed to need a post-construction assessment until a "
            "notified or approved body says otherwise in writing."
        )
    elif boat.year_on_market < MARKET_DATE:
        text = (
            "First placed on the market in {boat.year_on_market|year}, before the first "
            "directive applied on 16 June 1998: held not to be drawn in by a later change. "
            "Confirm with a notified or approved body that she was not imported later."
        )
    else:
        text = (
            "First placed on the market in {boat.year_on_market|year}: a change of the means of "
            "propulsion is presumed a major craft conversion that needs a post-construction "
            "assessment, until a notified or approved body says otherwise in writing."
        )
    return CautionItem(
        "conformity", "Recreational craft rules", text, "notified or approved body", {}
    )


def _insurer(found: Findings) -> CautionItem:
    key = f"options.{found.place}"
    text = (
        f"Tell the insurer of {{{key}.bank.nominal_kwh|energy}} at "
        f"{{{key}.bank.nominal_voltage_v|voltage}} and "
        f"{{{key}.particulars.motor.peak_power_kw|power}} before any deposit, and ask who must "
        "install, inspect and sign."
    )
    return CautionItem("insurer", "Insurance", text, "insurer, in writing", {})


def _trial_at_sea(found: Findings) -> CautionItem:
    text = (
        "Holding {planning.hold_speed_kn|speed} against {planning.hold_wind_kn|speed} of wind asks "
        f"for {{options.{found.place}.reserve.hold_shaft_power_kw|power}} at the shaft by "
        "calculation; the sea of these waters may ask for half as much again. No auxiliary of "
        "this size is safe on a lee shore in a gale."
    )
    return CautionItem("sea", "Wind and sea", text, "skipper", {})
