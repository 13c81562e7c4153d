"""The sample's invented criteria and verdicts."""

from __future__ import annotations

from typing import Any

from tests.report.sample_curves import HULL_SPEED, Row, top

CRITERIA = (
    (1, "Must-make leg", "decide", "Go 1.25 and more, conditional 1.0 to 1.25, no below 1.0"),
    (2, "Coverage of legs", "decide", "95 % and more, 85 to 95 %, below"),
    (3, "Reserve", "decide", "never planned for"),
    (4, "Hold-off in 25 kn", "decide", "3 kn, 2 to 3 kn, below"),
    (5, "Continuous power", "decide", "Go 1.5 and more, conditional 1.2 to 1.5, no below 1.2"),
    (6, "Head wind at 3.5 kn", "decide", "yes, at 2.5 to 3.5 kn, no"),
    (7, "Speed at peak", "decide", "Go 0.90 and more, conditional 0.80 to 0.90, no below 0.80"),
    (8, "Power per tonne", "tell", "1.2 kW/t"),
    (9, "Foul stream", "decide", "stream + 1.5 kn"),
    (10, "One fault", "decide", "3 kn for 1 h remains"),
    (11, "Recharge", "decide", "10 h"),
    (12, "Sun on a mooring", "decide", "1.2"),
    (13, "House loads", "decide", "separate"),
    (14, "Battery currents", "decide", "Go up to 0.3 C, conditional to 0.4 C, no above"),
    (15, "Cold", "decide", "5 °C"),
    (16, "Mass change", "decide", "2 %"),
    (17, "Trim and heel", "decide", "0.5 %"),
    (18, "Design area", "condition", "coastal"),
    (19, "Compartment", "decide", "dry"),
    (20, "Insurer", "condition", "written acceptance"),
    (21, "Conversion status", "condition", "not in scope"),
    (22, "Voltage", "decide", "60 V DC"),
    (23, "Propeller match", "decide", "7 %"),
    (24, "Stopping", "decide", "1.0 LOA"),
    (25, "Payback", "tell", "10 years"),
    (26, "Cost over value", "tell", "30 %"),
    (27, "Present engine", "tell", "healthy"),
    (28, "Evidence", "condition", "sea trial"),
)


def criteria(values: dict[int, tuple[Any, ...]]) -> list[Row]:
    rows = []
    for number, name, role, limit in CRITERIA:
        if number not in values:
            continue
        value, pessimistic, result, why, flip = values[number]
        rows.append(
            {
                "id": number,
                "name": name,
                "value": value,
                "pessimistic": pessimistic,
                "unit": "-",
                "limit": limit,
                "limit_go": 1.2,
                "limit_conditional": 1.0,
                "sense": "above",
                "result": result,
                "role": role,
                "why": why,
                "flip": flip,
            }
        )
    return rows


def verdict(own: str, word: str, leg: Row, rated: float, peak: float) -> Row:
    fits = leg["ratio_p10"]
    values = {
        1: (
            leg["ratio"],
            fits,
            "conditional" if fits > 1 else "no",
            "the bank, aged, has {own.legs.1.available_kwh|energy} above reserve and the leg needs "
            "{own.legs.1.need_kwh|energy}",
            "a bank of {own.bank.charge_ah|charge} twice over",
        ),
        5: (
            rated / 3.1,
            rated / 3.6,
            "go",
            "the continuous rating over the calm need at {planning.cruise_speed_kn|speed}",
            "",
        ),
        7: (
            top(peak) / HULL_SPEED,
            0.86,
            "conditional" if peak < 13 else "go",
            "{own.top_speed.peak_kn|speed} at peak against a hull speed of "
            "{boat.hull_speed_kn|speed}",
            "a propeller of another pitch",
        ),
        14: (0.83, 0.97, "go", "{own.bank.cruise_current_a|current} at cruise", ""),
        28: (2.0, 2.0, "go", "sea trial: {evidence.used_rows|count} double runs", ""),
    }
    said: Row = {
        "word": word,
        "reasons": [
            "Home from Harwich on the ebb needs {own.legs.1.need_kwh|energy}; the aged bank has "
            "{own.legs.1.available_kwh|energy} above reserve.",
            "{own.particulars.motor.continuous_power_kw|power} continuous gives "
            "{own.top_speed.continuous_kn|speed}; the hull's own limit is "
            "{boat.hull_speed_kn|speed}.",
            "It costs {own.cost.against_keep_money|money:size} more than keeping the diesel over "
            "{planning.horizon_years|years}.",
        ],
        "conditions": [
            "Written acceptance by the insurer before any order.",
            "The leg home is started with the bank full: "
            "{own.bank.available_aged_kwh|energy} above reserve when aged.",
            "The compartment is shown to be dry.",
            "Mass list re-weighed: net {own.weight.net_kg|mass:signed} is an estimate.",
        ],
        "criteria": criteria(values),
    }
    placed: Row = with_own_keys(said, own)
    return placed


def with_own_keys(said: Any, own: str) -> Any:
    """The same with {own. in its sentences turned into the option's key."""
    if isinstance(said, dict):
        return {key: with_own_keys(value, own) for key, value in said.items()}
    if isinstance(said, list):
        return [with_own_keys(value, own) for value in said]
    return said.replace("{own.", f"{{{own}.") if isinstance(said, str) else said
