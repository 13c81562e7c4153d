"""Which monthly climate stands on the cells of a world grid?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np

from generator.arrays import Array
from generator.errors import TableError
from generator.tables.load import FOLDER

# File, then for each of its fields: what one step of the packed numbers is worth, and the number
# that stands for no data.
PACKED: dict[str, dict[str, tuple[float, float | None]]] = {
    "ghi_sse_1deg": {"ghi": (0.01, None)},
    "ghi_daily_spread_3deg": dict.fromkeys(
        ("cv", "p05", "p10", "p25", "p50", "p75", "p90", "p95"), (0.01, 0.0)
    ),
    "sea_climate_coads_2deg": {
        **dict.fromkeys(("sst", "air", "wspd"), (0.1, -999.0)),
        "weibull_k": (0.05, 0.0),
    },
    "air_ncep_2p5deg": {"air": (0.1, None)},
}


@dataclass(frozen=True)
class Grid:
    """Fields of (12, latitudes, longitudes), nan where there are no data, on even cells."""

    name: str
    about: str  # source, licence, units and derivation, as the file tells them
    latitude: Array  # degrees, rising
    longitude: Array  # degrees, -180 upwards
    fields: Mapping[str, Array]


@cache
def read_grid(name: str) -> Grid:
    """A grid of ``generator/tables/climate``, unpacked."""
    try:
        with np.load(FOLDER / "climate" / f"{name}.npz", allow_pickle=False) as packed:
            return Grid(
                name=name,
                about=str(packed["meta"]),
                latitude=packed["lat"].astype(np.float64),
                longitude=packed["lon"].astype(np.float64),
                fields=MappingProxyType(
                    {
                        field: _unpacked(packed[field], *worth)
                        for field, worth in PACKED[name].items()
                    }
                ),
            )
    except (OSError, KeyError, ValueError) as error:
        raise TableError(f"climate/{name}: cannot be read: {error}") from None


def _unpacked(packed: Array, step: float, missing: float | None) -> Array:
    values = packed.astype(np.float64)
    if missing is not None:
        values[values == missing] = np.nan
    values *= step
    values.setflags(write=False)  # the cache hands the same array to everyone
    return values
