"""Which models of the series were towed as bare hulls, and what did they resist?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator

from generator.arrays import Array, Flags
from generator.physics.hull.form import HullForm, beam_draught, length_displacement
from generator.physics.hull.friction import friction
from generator.physics.hull.regression_fit import ratios
from generator.tables.load import Table, read_table

HULLS = "hull/measured_hulls"
RUNS = "hull/measured_resistance"
DENSITY = 998.72  # kg/m3, fresh water of 17.3 degC as stated for model 1
VISCOSITY = 1.0749e-6  # m2/s, the same
GRAVITY = 9.81
FRICTION_LENGTH = 0.7  # of the waterline: the series' own convention

NODES = np.round(np.arange(0.20, 0.5501, 0.025), 3)
SCORED = NODES <= 0.45
APPENDED_ABOVE = 1.4  # total over friction at the first node; bare hulls lie at 0.99 to 1.28
SHARE_READABLE = 0.02  # of friction: less residuary than this is inside the reading error
FAMILIES = ((1, 22), (23, 28), (29, 40), (41, 99))


@dataclass(frozen=True)
class MeasuredSeries:
    """Bare hulls side by side: a row a model; resistances per displacement weight at the nodes."""

    models: Array
    form: HullForm  # fields of shape (models, 1)
    ratios: Array  # (models, ratios)
    total: Array  # (models, nodes) [-]
    friction: Array  # (models, nodes) [-]
    refused: tuple[int, ...]  # models that were not bare hulls

    @property
    def log_residuary(self) -> Array:
        """ln(1000 Rr / (ρ g V)); what cannot be read is raised to the least readable share."""
        residuary = np.maximum(self.total - self.friction, SHARE_READABLE * self.friction)
        return np.log(1000.0 * residuary)

    @property
    def family(self) -> Array:
        """The number of each model's family: models of one family share a parent hull."""
        first = np.array([low for low, _ in FAMILIES])
        return np.searchsorted(first, self.models, side="right").astype(np.float64)

    @property
    def cruiser_like(self) -> Flags:
        """Models of the weight and section of cruising yachts: LV 4.3 to 6.1, B/Tc below 7."""
        slender = np.ravel(length_displacement(self.form))
        flat = np.ravel(beam_draught(self.form))
        return np.asarray((slender > 4.3) & (slender < 6.1) & (flat < 7.0))


def measured_series() -> MeasuredSeries:
    """The bare hulls of the package's tables; those towed with more than the hull left out."""
    hulls, runs = read_table(HULLS), read_table(RUNS)
    form = _form(hulls)
    numbers = hulls.column("model")
    total = np.array([_total(form, row, runs, model) for row, model in enumerate(numbers)])
    rubbing = _friction(form) / _weight(form)
    bare = total[:, 0] / rubbing[:, 0] < APPENDED_ABOVE
    return MeasuredSeries(
        models=numbers[bare],
        form=_rows(form, bare),
        ratios=ratios(_rows(form, bare)).reshape(int(bare.sum()), -1),
        total=total[bare],
        friction=rubbing[bare],
        refused=tuple(int(model) for model in numbers[~bare]),
    )


def _form(hulls: Table) -> HullForm:
    """The table's hulls, one a row."""
    cell = {name: hulls.column(name)[:, None] for name in hulls.columns}
    length = cell["waterline_length"]
    return HullForm(
        waterline_length=length,
        waterline_beam=cell["waterline_beam"],
        canoe_draught=cell["canoe_draught"],
        canoe_volume=cell["canoe_volume"],
        prismatic_coefficient=cell["block_coefficient"] / cell["midship_coefficient"],
        midship_coefficient=cell["midship_coefficient"],
        lcb=cell["buoyancy_centre"] / length,
        lcf=cell["flotation_centre"] / length,
        waterplane_area=cell["waterplane_area"],
        canoe_wetted_area=cell["canoe_wetted_area"],
    )


def _rows(form: HullForm, wanted: Flags) -> HullForm:
    """Some of the hulls."""
    return HullForm(**{name: np.asarray(field)[wanted] for name, field in vars(form).items()})


def _weight(form: HullForm) -> Array:
    """Displacement weight of each model [N]."""
    return np.asarray(DENSITY * GRAVITY * form.canoe_volume)


def _friction(form: HullForm) -> Array:
    """Friction of each model at the nodes [N]."""
    length = form.waterline_length
    speed = NODES * np.sqrt(GRAVITY * length)
    rubbing = friction(speed, FRICTION_LENGTH * length, form.canoe_wetted_area, DENSITY, VISCOSITY)
    return np.asarray(rubbing)


def _total(form: HullForm, row: int, runs: Table, model: float) -> Array:
    """One model's total resistance per weight at the nodes, read between its runs.

    In log-log, where a hull's resistance is smoothest: runs left out of the densely run models
    come back within 2.1 per cent rms.
    """
    mine = runs.column("model") == model
    order = np.argsort(runs.column("speed")[mine])
    speed, resistance = (runs.column(key)[mine][order] for key in ("speed", "resistance"))
    length = np.asarray(form.waterline_length)[row, 0]
    curve = PchipInterpolator(np.log(speed / np.sqrt(GRAVITY * length)), np.log(resistance))
    return np.asarray(np.exp(curve(np.log(NODES))) / _weight(form)[row, 0])
