"""A weather file of invented hours, in the form of EnergyPlus, whole or with a flaw."""

from __future__ import annotations

import math

DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def energyplus(latitude: float = 51.6, longitude: float = 3.9, south: bool = False) -> str:
    """8,760 hours whose sun is highest in June, or in December."""
    head = [f"LOCATION,Quay,-,NLD,invented,000000,{latitude},{longitude},1.0,0.0"]
    head += ["DESIGN CONDITIONS", "TYPICAL", "GROUND", "HOLIDAYS", "COMMENTS 1", "COMMENTS 2"]
    return "\n".join([*head, "DATA PERIODS", *_rows(south)]) + "\n"


def _rows(south: bool) -> list[str]:
    rows, day_of_year = [], 0
    for month, length in enumerate(DAYS, start=1):
        for day in range(1, length + 1):
            season = -math.cos(2.0 * math.pi * (day_of_year + 10) / 365.0) * (-1 if south else 1)
            for hour in range(1, 25):
                height = math.sin((hour - 6.5) / 12.0 * math.pi)
                sun = max(height, 0.0) * (350.0 + 300.0 * season)
                cells = [
                    "2001",
                    str(month),
                    str(day),
                    str(hour),
                    "60",
                    "x",
                    f"{10 + 8 * season:.1f}",
                ]
                cells += ["0"] * 6 + [f"{sun:.0f}"] + ["0"] * 7 + ["4.0"]
                rows.append(",".join(cells))
            day_of_year += 1
    return rows
