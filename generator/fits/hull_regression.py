"""Run by hand (python -m generator.fits.hull_regression): writes the tables of the hull fit."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Sequence

import numpy as np

from generator.arrays import Array
from generator.fits.leaving_out import LeftOut, form_errors, log_error, one_family, one_hull
from generator.fits.likelihood import Fitted, fit
from generator.fits.measured_series import NODES, SCORED, MeasuredSeries, measured_series
from generator.tables.load import FOLDER

NAMES = {
    "prismatic_coefficient": ("prismatic coefficient", "no"),
    "buoyancy_centre": ("centre of buoyancy over waterline length", "no"),
    "flotation_from_buoyancy": ("centre of flotation from that of buoyancy, over length", "no"),
    "beam_draught": ("waterline beam over canoe draught", "yes"),
    "length_displacement": ("length-displacement ratio", "yes"),
    "midship_coefficient": ("midship-section coefficient", "no"),
    "waterplane_loading": ("waterplane area over volume^(2/3)", "yes"),
    "length_beam": ("waterline length over waterline beam", "yes"),
}
REACH = "bare hulls, Froude number 0.20 to 0.55, ratios inside the low and high of each"
OWN_FIT = "own fit on the measured bare hulls; by leaving out scored in regression_scores"
HULLS = "dsyhs_hydrostatics, ratios of the models"
FITTED = f"dsyhs_measurements, own regression; {HULLS}"
FORMS = "gko1993, regression; keuning1998, bare hull; keuning2008, bare hull"
HEADERS = {
    "regression_ratios": {
        "title": "Hull regression: its ratios, their scaling and the reach of the measured hulls",
        "source": FITTED,
        "valid": REACH,
        "confidence": OWN_FIT,
    },
    "regression_hulls": {
        "title": "Hull regression: the measured hulls and their weights by Froude number",
        "source": FITTED,
        "valid": REACH,
        "confidence": OWN_FIT,
    },
    "regression_nodes": {
        "title": "Hull regression: level and spread of ln(1000 Rr/weight) by Froude number",
        "source": FITTED,
        "valid": REACH,
        "confidence": OWN_FIT,
    },
    "regression_scores": {
        "title": "Error of total resistance of a bare hull by form and Froude number",
        "source": f"{FITTED}; {FORMS}",
        "valid": "cruiser-like models: length-displacement ratio 4.3 to 6.1, beam/draught below 7",
        "confidence": "hull_out and family_out have not seen the hulls; the forms of 1998 and "
        "2008 were made on them; that of 1993 contains keel and rudder, so lies high",
    },
}
DIGITS = 9


def write_tables() -> None:
    """Fit on all bare hulls, score by leaving out, write the four tables."""
    series = measured_series()
    made = fit(series.ratios, series.log_residuary, SCORED)
    alone, family = one_hull(series), one_family(series)
    tables = {
        "regression_ratios": _ratios(made),
        "regression_hulls": _hulls(series, made),
        "regression_nodes": _nodes(series, made, alone, family),
        "regression_scores": _scores(series, alone, family),
    }
    for name, rows in tables.items():
        _write(name, rows)


Rows = tuple[Sequence[str], Sequence[str], Iterable[Sequence[object]]]


def _ratios(made: Fitted) -> Rows:
    """A row a ratio; logarithmic ones are scaled and bounded as logarithms."""
    model = made.covariance
    numbers = np.column_stack(
        [
            *(model.centre, model.scale, model.lengths, model.slopes),
            made.ratios.min(axis=0),
            made.ratios.max(axis=0),
            np.full(len(NAMES), model.amplitude),
        ]
    )
    names = ("centre", "scale", "length", "slope", "low", "high", "amplitude")
    rows = [(name, *NAMES[name], *_text(row)) for name, row in zip(NAMES, numbers, strict=True)]
    return ("ratio", "words", "logarithm", *names), ("-",) * 10, rows


def _hulls(series: MeasuredSeries, made: Fitted) -> Rows:
    """A row a hull: its ratios and its weight at each node."""
    weights = [f"weight_{round(1000 * node):04d}" for node in NODES]
    numbers = np.column_stack([made.ratios, made.weights])
    rows = [(int(m), *_text(row)) for m, row in zip(series.models, numbers, strict=True)]
    names = ("model", *NAMES, *weights)
    return names, ("-",) * len(names), rows


def _nodes(series: MeasuredSeries, made: Fitted, alone: LeftOut, family: LeftOut) -> Rows:
    """A row a Froude number: the fit's own numbers and what a family left out adds to them."""
    columns = {
        "froude_number": NODES,
        "mean": made.mean,
        "spread": made.spread,
        "unseen_family": log_error(series, family),
        "unseen_hull": log_error(series, alone),
    }
    return _columns(columns)


def _scores(series: MeasuredSeries, alone: LeftOut, family: LeftOut) -> Rows:
    """A row a Froude number: rms and mean error of total resistance by form."""
    columns = {"froude_number": NODES[SCORED]}
    for form, error in form_errors(series, alone, family).items():
        scored = error[series.cruiser_like][:, SCORED]
        columns[f"{form}_rms"] = np.sqrt((scored**2).mean(axis=0))
        columns[f"{form}_bias"] = scored.mean(axis=0)
    return _columns(columns)


def _columns(columns: dict[str, Array]) -> Rows:
    """Columns of ratios as the rows of a table."""
    rows = [_text(row) for row in np.column_stack(list(columns.values()))]
    return tuple(columns), ("-",) * len(columns), rows


def _text(row: Array) -> list[str]:
    return [f"{value:.{DIGITS}g}" for value in row]


def _write(name: str, rows: Rows) -> None:
    """One table below ``generator/tables/hull``."""
    header = HEADERS[name]
    names, units, cells = rows
    with (FOLDER / "hull" / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
        file.writelines(f"# {key}: {words}\n" for key, words in header.items())
        writer = csv.writer(file, lineterminator="\n")
        writer.writerows([names, units, *cells])


if __name__ == "__main__":
    write_tables()
