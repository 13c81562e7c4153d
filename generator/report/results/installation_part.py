"""What does results.json say of the direct-current installation of one option?"""

from __future__ import annotations

import math
from typing import Any

from generator.analyses.findings import Findings
from generator.analyses.wiring.installation import (
    PEAK_LEFT,
    Circuit,
    Device,
    Installation,
    Setting,
    Switch,
)
from generator.analyses.wiring.settings import FIRST, HOT, MANAGEMENT, SECOND
from generator.report.results.suffix import excused, put

Row = dict[str, Any]
NO_BANK = "no propulsion battery"
FOR_THE_INSTALLER = "for the installer to confirm"


def installation_part(found: Findings) -> Row:
    """Voltages, fault currents and every list; absent without a bank."""
    made = found.installation
    if made is None:
        return {"installation": None, "installation_why": NO_BANK}
    key = f"options.{found.place}.installation"
    return {
        "installation": {
            "status": FOR_THE_INSTALLER,
            "assumed": made.assumed,
            "strings": made.strings,
            "temperature_class_degc": made.temperature_class,
            "space_temperature_degc": made.space_temperature,
            "bundled": made.bundled,
            "sun_w": made.sun_power,
            "house_w": made.house_power,
            "battery_space": _space(found),
            "battery_space_why": "the case names no space for the battery",
            "sheathed": made.sheathed,
            "voltages": _voltages(made),
            "string": {
                "own_a": made.string.own,
                "for_good_a": made.string.for_good,
                "for_peak_a": made.string.for_peak,
                "bound_by": made.string.bound_by,
            },
            "fault": _fault(made),
            "alarms": _alarms(made),
            "peak_left_kw": made.setting(PEAK_LEFT),
            "path_drop_pct": made.path_drop * 100.0,
            "precharge": _precharge(made),
            "circuits": [_circuit(item) for item in made.circuits],
            "devices": [_device(item) for item in made.devices],
            "switches": [_switch(item) for item in made.switches],
            "settings": [_setting(item) for item in made.settings],
            "labels": [
                {"place": item.place, "text": _own(item.text, f"{key}.labels.{n}"), **item.numbers}
                for n, item in enumerate(made.labels)
            ],
            "confirm": [
                {
                    "id": item.id,
                    "title": item.title,
                    "text": _own(item.text, f"{key}.confirm.{n}"),
                    "confirm": item.confirm,
                    **item.numbers,
                }
                for n, item in enumerate(made.confirm)
            ],
            "problems": list(made.problems),
        }
    }


def _space(found: Findings) -> str | None:
    """Names of the spaces in which the battery stands: as placed here, else as the case says."""
    if found.placement is not None:
        names = [berth.space.name for berth in found.placement.berths if berth.blocks]
        if names:
            return ", ".join(names)
    named = [item.space for item in found.weight.added if item.part == "battery" and item.space]
    return ", ".join(dict.fromkeys(named)) or None


def _own(text: str, key: str) -> str:
    return text.replace("{here.", f"{{{key}.")


def _voltages(made: Installation) -> Row:
    volts = made.voltages
    return {
        "nominal_v": volts.nominal,
        "cells": volts.cells,
        "ceiling_v": volts.ceiling,
        "lowest_v": volts.lowest,
        "band": volts.band,
        "band_by_label": volts.band_by_label,
        "touch_limit_v": volts.touch_limit,
        "charger_v": volts.charger,
        "regeneration_v": volts.regeneration,
        "cell_highest_v": volts.cell_highest,
        "cell_lowest_v": volts.cell_lowest,
        "cell_warning_v": volts.cell_warning,
        "house_v": volts.house,
        "house_ceiling_v": volts.house_ceiling,
    }


def _fault(made: Installation) -> Row:
    fault = made.fault
    return {
        "string_a": fault.string,
        "bank_a": fault.bank,
        "string_ka": fault.string / 1e3,
        "bank_ka": fault.bank / 1e3,
        "string_most_ka": fault.string_most / 1e3,
        "bank_most_ka": fault.bank_most / 1e3,
        "label_ka": math.ceil(max(fault.string_most, fault.bank_most) / 1e3),
        "string_mohm": put(fault.string_resistance, "mohm"),
        "trunk_mohm": put(fault.trunk_resistance, "mohm"),
        "open_voltage_v": fault.open_voltage,
        "by_maker": fault.by_maker,
    }


def _alarms(made: Installation) -> Row:
    """Settings that other pages name: both alarms of charge, and that of a hot cell."""
    rows = {(item.device, item.name): item.value for item in made.settings}
    names = {"first_share": FIRST, "second_share": SECOND, "hot_degc": HOT}
    return {key: rows[MANAGEMENT, name] for key, name in names.items()}


def _precharge(made: Installation) -> Row:
    filling = made.precharge
    return {
        "capacitance_mf": put(filling.capacitance, "mf"),
        "resistance_ohm": filling.resistance,
        "first_current_a": filling.first_current,
        "first_power_w": filling.first_power,
        "time_s": filling.time,
        "difference_v": filling.difference,
        "limit_s": filling.limit,
        "fuse_a": filling.fuse,
        "relay": filling.relay,
        "energy_j": filling.energy,
    }


def _circuit(item: Circuit) -> Row:
    wire, drop, warmth = item.conductor, item.drop, item.warmth
    return {
        "id": item.id,
        "status": FOR_THE_INSTALLER,
        "kind": item.kind,
        "name": item.name,
        "source": item.source,
        "target": item.target,
        "voltage_v": item.voltage,
        "ceiling_v": item.ceiling,
        "continuous_a": item.continuous,
        "peak_a": item.peak,
        "peak_time_s": item.peak_time,
        "run_m": item.run,
        "conductors": wire.number,
        "area_mm2": put(wire.area, "mm2"),
        "gauge": wire.gauge,
        "chosen": not wire.stated,
        "table_ampacity_a": wire.table_ampacity,
        "ampacity_a": wire.ampacity,
        "drop_v": drop.volts,
        "drop_pct": drop.share * 100.0,
        "drop_peak_pct": drop.peak_share * 100.0,
        "drop_limit_pct": drop.limit * 100.0,
        "boat_form_mm2": put(drop.boat_form_area, "mm2"),
        "metric_form_mm2": put(drop.metric_form_area, "mm2"),
        "physical_mm2": put(drop.physical_area, "mm2"),
        "settled_degc": warmth.settled,
        "after_peak_degc": warmth.after_peak,
        "insulation_degc": warmth.limit,
        "time_constant_s": warmth.time_constant,
        "fault_mm2": put(warmth.fault_area, "mm2"),
        "device": item.device,
        "problems": list(item.problems),
    }


def _device(item: Device) -> Row:
    return {
        "id": item.id,
        "status": FOR_THE_INSTALLER,
        "circuit": item.circuit,
        "place": item.place,
        "class": item.fuse_class,
        "class_why": None if item.fuse_class else "no usual class bears this voltage and fault",
        "rating_a": item.rating,
        "voltage_v": item.voltage,
        "breaking_ka": None if item.breaking is None else item.breaking / 1e3,
        "fault_ka": item.fault / 1e3,
        "ceiling_v": item.ceiling,
        "least_a": item.least,
        "most_a": item.most,
        "distance_mm": put(item.distance, "mm"),
        "distance_limit_mm": put(item.distance_limit, "mm"),
        "upstream": item.upstream,
        "selective": item.selective,
        "spares": item.spares,
        "chosen": not item.stated,
        "problems": list(item.problems),
    }


def _switch(item: Switch) -> Row:
    return {
        "id": item.id,
        "status": FOR_THE_INSTALLER,
        "kind": item.kind,
        "name": item.name,
        "place": item.place,
        "circuit": item.circuit,
        "current_a": item.current,
        "voltage_v": item.voltage,
    }


def _setting(item: Setting) -> Row:
    return {
        "device": item.device,
        "status": FOR_THE_INSTALLER,
        "name": item.name,
        "unit": item.unit,
        **excused({f"value_{item.unit}": item.value}, item.reason),
        "reason": item.reason,
    }
