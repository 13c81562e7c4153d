"""Where does the sun stand, and how much of its light falls on a panel?"""

from __future__ import annotations

import warnings
from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table
from generator.tables.method import method

HOURS, DAYS = 8760, 365
ANY_YEAR = 2023  # a year of 365 days: the sun of other years differs by a quarter of a degree
SOLAR_CONSTANT = 1361.0  # W/m2, as in pvlib
FAO_CONSTANT = 0.0820e6 / 60.0  # W/m2, Gsc: the paper rounds 0.0820 MJ/m2 a minute
TURBIDITY = method("weather.turbidity")
SEA_ALBEDO = method("weather.sea_albedo")
STANDARD_LIGHT, STANDARD_WARMTH = 1000.0, 25.0  # W/m2 and degC of a panel's rating
HEADINGS = np.arange(0.0, 360.0, 30.0)  # of a boat that swings


@dataclass(frozen=True)
class SunPath:
    """The sun at the middle of every hour of a year. Degrees, W/m2; (8760,) each."""

    height: Array  # above the horizon, without refraction
    bearing: Array  # from north through east
    top: Array  # on the level above the air
    clear: Array  # on the level under a clear sky


def sun_path(latitude: float, longitude: float, zone: float) -> SunPath:
    """The sun over a place, and its light under a clear sky.

    position by the almanac's short series; Ineichen's clear sky with the turbidity of the month;
    top = 1361 (1 + 0.033 cos(2 π day / 365)) sin(height)

    Args:
        latitude: degrees north [degree]
        longitude: degrees east [degree]
        zone: hours that the clock is ahead of universal time [h]

    Returns:
        height and bearing [degree], light above and below a clear sky [W/m2]

    Valid: sea level; clear skies are too dull over the Aegean, the Red Sea and the Gulf, so that
        only the shape of the day may be taken from them
    Source: pvlib, ephemeris and ineichen; ineichen2002, clear sky; fao56, equation 23
    """
    import pandas as pd  # slow to import, so only when a year is asked for
    import pvlib

    start = pd.Timestamp(f"{ANY_YEAR}-01-01 00:30", tz="UTC") - pd.Timedelta(hours=zone)
    times = pd.date_range(start, periods=HOURS, freq="h")
    with warnings.catch_warnings():  # pvlib asks pandas in a way that pandas is giving up
        warnings.simplefilter("ignore", DeprecationWarning)
        position = pvlib.solarposition.ephemeris(times, latitude, longitude)
        turbidity = pvlib.clearsky.lookup_linke_turbidity(times, latitude, longitude)
    zenith = 90.0 - position["apparent_elevation"]
    airmass = pvlib.atmosphere.get_relative_airmass(zenith)
    clear = pvlib.clearsky.ineichen(
        zenith, airmass, turbidity.fillna(TURBIDITY), dni_extra=SOLAR_CONSTANT
    )["ghi"]
    height = position["elevation"].to_numpy(dtype=np.float64)
    return SunPath(
        height=height,
        bearing=position["azimuth"].to_numpy(dtype=np.float64),
        top=level_light_above_air(height, np.repeat(np.arange(1.0, DAYS + 1.0), 24)),
        clear=np.nan_to_num(clear.to_numpy(dtype=np.float64)),
    )


def level_light_above_air(height: Numbers, day: Numbers) -> Array:
    """Light on the level above the air.

    Ra = 1361 (1 + 0.033 cos(2 π J / 365)) sin(h), 0 by night

    Args:
        height: h of the sun [degree]
        day: J of the year, 1 to 365 [-]

    Returns:
        Ra [W/m2]

    Valid: any place and hour
    Source: fao56, equations 21 and 23, hour by hour
    """
    near = 1.0 + 0.033 * np.cos(2.0 * np.pi * np.asarray(day) / DAYS)
    return np.asarray(SOLAR_CONSTANT * near * np.maximum(np.sin(np.deg2rad(height)), 0.0))


def daily_light_above_air(latitude: Numbers, day: Numbers) -> Array:
    """Sunshine of a day on the level above the air.

    Ra = 24 h / π Gsc dr (ωs sin φ sin δ + cos φ cos δ sin ωs)

    Args:
        latitude: φ north [degree]
        day: J of the year, 1 to 365 [-]

    Returns:
        Ra [J/m2]

    Valid: between the polar circles; beyond them in the months with sunrise
    Source: fao56, equations 21 to 25
    """
    turn = 2.0 * np.pi * np.asarray(day) / DAYS
    near = 1.0 + 0.033 * np.cos(turn)
    south = 0.409 * np.sin(turn - 1.39)
    north, angle = np.deg2rad(latitude), _sunset(latitude, day)
    high = angle * np.sin(north) * np.sin(south) + np.cos(north) * np.cos(south) * np.sin(angle)
    return np.asarray(86400.0 / np.pi * FAO_CONSTANT * near * high)


def _sunset(latitude: Numbers, day: Numbers) -> Array:
    south = 0.409 * np.sin(2.0 * np.pi * np.asarray(day) / DAYS - 1.39)
    cosine = -np.tan(np.deg2rad(latitude)) * np.tan(south)
    return np.asarray(np.arccos(np.clip(cosine, -1.0, 1.0)))


def daylight(latitude: Numbers, day: Numbers) -> Array:
    """Length of a day from sunrise to sunset.

    N = 24 h / π ωs, cos ωs = -tan φ tan δ

    Args:
        latitude: φ north [degree]
        day: J of the year, 1 to 365 [-]

    Returns:
        N [s]

    Valid: any place; 0 and 24 h beyond the polar circles
    Source: fao56, equations 24, 25 and 34
    """
    return np.asarray(86400.0 / np.pi * _sunset(latitude, day))


def sunshine_by_hours(above_air: Numbers, hours_share: Numbers) -> Numbers:
    """Sunshine on the level from the share of the day with sun.

    Rs = (0.25 + 0.50 n / N) Ra

    Args:
        above_air: Ra of the day [J/m2]
        hours_share: n / N, hours of bright sun over those of daylight [-]

    Returns:
        Rs [J/m2]

    Valid: monthly means where no local constants are known
    Source: fao56, equation 35
    """
    return (0.25 + 0.50 * np.asarray(hours_share)) * above_air


def light_on_panel(light: Array, path: SunPath, tilt: float, heading: float | None) -> Array:
    """Light on a panel from that on the level.

    flat: the same; tilted: beam cos i + diffuse (1 + cos t) / 2 + 0.06 light (1 - cos t) / 2,
    the diffuse share by Erbs; of a boat that swings the mean of twelve headings

    Args:
        light: on the level, (8760,) or (8760, years) [W/m2]
        path: of the sun
        tilt: t from level [degree]
        heading: that the panel faces, from north; none: all alike [degree]

    Returns:
        light on the panel, of the same shape [W/m2]

    Valid: hourly means; water around
    Source: pvlib, erbs and aoi_projection; erbs1982, diffuse share
    """
    if tilt == 0.0:
        return light
    import pvlib

    zenith = 90.0 - path.height
    faced = HEADINGS if heading is None else np.array([heading])
    shape = (HOURS,) + (1,) * (light.ndim - 1)
    meets = pvlib.irradiance.aoi_projection(
        tilt, faced, zenith[:, np.newaxis], path.bearing[:, np.newaxis]
    )
    beam_share = np.maximum(meets, 0.0).mean(axis=1).reshape(shape)
    day = np.repeat(np.arange(1.0, DAYS + 1.0), 24).reshape(shape)
    parts = pvlib.irradiance.erbs(light, zenith.reshape(shape), day)
    level = np.cos(np.deg2rad(tilt))
    diffuse = parts["dhi"] * (1.0 + level) / 2.0
    return np.asarray(
        parts["dni"] * beam_share + diffuse + SEA_ALBEDO * light * (1.0 - level) / 2.0
    )


def cell_temperature(light: Array, air: Numbers, wind: Numbers, mounting: str) -> Array:
    """Warmth of the cells of a panel in the sun.

    Tc = Ta + G / (u0 + u1 v)

    Args:
        light: G on the panel [W/m2]
        air: Ta [degC]
        wind: v at the panel [m/s]
        mounting: free, or glued on the deck [-]

    Returns:
        Tc [degC]

    Valid: steady sun
    Source: faiman2008, equation; practice, panels glued on deck
    """
    table = read_table("energy/panel_heat")
    row = table.row_of("mounting", mounting)
    still, blown = float(table.column("still")[row]), float(table.column("wind")[row])
    return np.asarray(air + light / (still + blown * np.asarray(wind)))


def panel_power(
    rated: Numbers, light: Array, cells: Numbers, heat_loss: Numbers, kept: Numbers
) -> Array:
    """Power of panels into the bank.

    P = W G / 1000 (1 - γ (Tc - 25)) f

    Args:
        rated: W at standard conditions [W]
        light: G on the panel [W/m2]
        cells: Tc [degC]
        heat_loss: γ [1/K]
        kept: f, all shares together: shade, salt, controller, wires [-]

    Returns:
        P [W]

    Valid: crystalline panels
    Source: practice, panel to battery
    """
    warm = 1.0 - np.asarray(heat_loss) * (np.asarray(cells) - STANDARD_WARMTH)
    return np.asarray(rated * light / STANDARD_LIGHT * warm * kept)
