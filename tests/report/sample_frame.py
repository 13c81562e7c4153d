"""What stands beside the options in the sample: comparison, inputs, cautions, sources."""

from __future__ import annotations

from tests.report.sample_curves import Row


def comparison() -> list[Row]:
    def row(
        id_: str,
        label: str,
        form: str,
        tail: str,
        better: int | None = None,
        why: str | None = None,
    ) -> Row:
        keys = [f"options.{place}.{tail}" for place in range(4)]
        return {"id": id_, "label": label, "form": form, "keys": keys, "better": better, "why": why}

    same = "no real difference"
    return [
        row("word", "Verdict", "text", "verdict.word"),
        row("top", "Calm speed, continuous", "speed", "top_speed.continuous_kn", 3),
        row("peak", "Calm speed, peak", "speed", "top_speed.peak_kn", None, same),
        row(
            "calm",
            "Range to reserve at cruise, calm, new",
            "distance",
            "range_at_cruise.0.range_nm",
        ),
        row("leg", "Worst must-make leg: in hand, pessimistic", "ratio", "worst_leg_ratio"),
        row("usable", "Above the reserve, aged", "energy", "bank.available_aged_kwh", None, same),
        row("net", "Net change of mass", "mass", "weight.net_kg"),
        row("first", "First cost", "money", "cost.first_money", 2),
        row("keep", "  against keeping the diesel", "money", "cost.against_keep_money"),
    ]


def appendix() -> Row:
    inputs = [
        ("boat.hull.length_overall", 9.14, "m", "measured", "20 mm", "9.14 m"),
        ("boat.hull.waterline_length", 7.60, "m", "measured", "50 mm", "7.60 m"),
        ("boat.hull.beam", 3.02, "m", "measured", "20 mm", "3.02 m"),
        ("boat.hull.draught", 1.45, "m", "builder", None, "1.45 m"),
        ("boat.hull.displacement", 4300.0, "kg", "weighed", "4 %", "4.30 t"),
        ("engine.rated_power", 13400.0, "W", "builder", None, "13.4 kW"),
        ("engine.gear_ratio", 2.14, "", "measured", None, "2.14"),
        ("propeller.diameter", 0.381, "m", "measured", "5 mm", "15 in"),
        ("options[2].motor.continuous_power", 8000.0, "W", None, None, "8 kW"),
        ("options[2].bank.charge", 300.0, "Ah", None, None, "300 Ah"),
        ("prices.electricity", 0.45, "GBP/kWh", None, None, "0.45 GBP/kWh"),
    ]
    assumed = [
        (
            "boat.hull.prismatic_coefficient",
            0.55,
            0.52,
            0.60,
            "",
            "keuning1998",
            "published",
            "prismatic coefficient; range of the series",
        ),
        (
            "propeller.wake_fraction",
            0.05,
            0.02,
            0.10,
            "",
            "practice",
            "memory",
            "wake fraction behind a fin keel",
        ),
        (
            "propeller.thrust_deduction",
            0.08,
            0.05,
            0.12,
            "",
            "practice",
            "memory",
            "thrust deduction behind a fin keel",
        ),
        (
            "factors.fouling",
            0.75,
            0.5,
            1.0,
            "",
            "schultz2007",
            "memory",
            "share of the computed friction increase of the bottom's state that is taken",
        ),
        (
            "planning.reserve_share",
            20,
            20,
            20,
            "%",
            "practice",
            "common practice",
            "share of usable energy never planned for",
        ),
        (
            "options[2].bank.usable_share",
            90,
            85,
            95,
            "%",
            "practice",
            "common practice",
            "energy of a full bank that may be drawn",
        ),
    ]
    return {
        "input_count": {
            "measured": 20,
            "weighed": 1,
            "builder": 9,
            "estimate": 6,
            "given": 46,
            "defaults": 41,
            "total": 87,
            "sure": 21,
        },
        "inputs": [
            dict(zip(("path", "value", "unit", "from", "plus_minus", "shown"), row, strict=True))
            for row in inputs
        ],
        "assumptions": [
            {
                "path": path,
                "value": value,
                "low": low,
                "high": high,
                "unit": unit,
                "source": source,
                "mark": mark,
                "meaning": meaning,
                "shown": f"{value} {unit}".strip(),
                "shown_low": f"{low} {unit}".strip(),
                "shown_high": f"{high} {unit}".strip(),
            }
            for path, value, low, high, unit, source, mark, meaning in assumed
        ],
        "cautions": [
            {
                "id": "insurer",
                "title": "Insurer first",
                "text": "No order before written acceptance of "
                "{options.2.bank.nominal_kwh|energy} of lithium aboard.",
                "number_key": "options.2.bank.nominal_kwh",
                "confirm": "the insurer",
            },
            {
                "id": "installer",
                "title": "Fault current",
                "text": "Cables and fuses are made for {options.2.bank.peak_current_a|current}; "
                "the standard's edition is to be verified as current.",
                "number_key": "options.2.bank.peak_current_a",
                "confirm": "a qualified installer",
            },
            {
                "id": "weight",
                "title": "Float line",
                "text": "She is predicted to rise or sink by "
                "{options.2.weight.sinkage_mm|length_small:size}.",
                "number_key": "options.2.weight.sinkage_mm",
                "confirm": "the yard, afloat",
            },
        ],
        "range_warnings": [
            {
                "quantity": "beam over canoe draught",
                "low": 2.46,
                "high": 19.3,
                "message": "inside the series",
                "source": "keuning1998",
            }
        ],
        "warnings": ["mast height is from the builder"],
        "sources": [
            {
                "key": "keuning1998",
                "text": "Keuning and Sonnenberg: Approximation of the "
                "hydrodynamic forces on a sailing yacht, 1998.",
            },
            {
                "key": "schultz2007",
                "text": "Schultz: Effects of coating roughness and "
                "biofouling on ship resistance and powering, 2007.",
            },
        ],
    }
