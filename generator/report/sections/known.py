"""Part of the results: how is the power curve known?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, words


def part(page: Page) -> Part | None:
    """A box of what the curve rests on, with its grade."""
    if not page.value("second_opinions"):
        return None
    found = (
        ("Evidence grade", _grade(page)),
        ("Hull form", _form(page)),
        ("Other forms", _others(page)),
        ("Sea trial", _trial(page)),
        ("Law and fuel", _readings(page)),
        ("Tachometer", _turns(page)),
        ("Band", _band(page)),
    )
    rows = tuple(Row(Markup.escape(name), (text,)) for name, text in found if text)
    caption = page.text("What the power curve of {boat.name|given} rests on")
    table = Table("known-table", caption, (words("Part", 20), words("What is known", 80)), rows)
    return Part("known", "How we know this curve", (), (), (table,))


def _has_fit(page: Page) -> bool:
    return page.value("trial.reference_kn") is not None


def _grade(page: Page) -> Markup:
    grade = Markup("<b>") + page.words("evidence.grade") + Markup("</b>")
    rows = page.value("evidence.given_rows")
    kept = "; {evidence.used_rows|count} of {evidence.given_rows|count} rows kept"
    return grade + (page.text(kept) if rows else Markup(""))


def _form(page: Page) -> Markup:
    text = page.text(
        "regression on measured hulls; length over cube root of volume "
        "{boat.length_displacement_ratio|ratio}, beam over draught {boat.beam_draught_ratio|ratio}"
    )
    names = [page.words(f"{key}.quantity") for key in page.keys("range_warnings")]
    if not names:
        return text + page.text(", inside all its ranges")
    said = page.text("; some draws or all lie outside the measured hulls in ")
    return text + said + Markup(", ").join(names)


def _others(page: Page) -> Markup:
    if page.value("evidence.others_low_share") is None:
        return Markup("")
    return page.text(
        "at cruise they ask for {evidence.others_low_share|share:signed} to "
        "{evidence.others_high_share|share:signed} of its resistance (appendix)"
    )


def _trial(page: Page) -> Markup:
    if not _has_fit(page):
        return page.sentence("trial.note") or page.text("none: {boat.name|given} was not timed")
    return page.text(
        "resistance {trial.resistance_scale|ratio} times that of the regression at "
        "{trial.reference_kn|speed}; the factor is high where a draw’s regression is low (one in "
        "ten {trial.resistance_scale_low|ratio}, nine in ten {trial.resistance_scale_high|ratio}), "
        "so their product is known better than either"
    )


def _readings(page: Page) -> Markup:
    if page.value("trial.law_over_fuel_share") is None:
        return Markup("")
    text = page.text(
        "propeller law against fuel: {trial.law_over_fuel_share|share:signed}, combined by their "
        "variances"
    )
    if not page.value("trial.apart"):
        return text
    more = (page.value("trial.law_over_fuel_share") or 0.0) > 0.0
    causes = (
        "a tired engine that no longer gives its rated power, a tachometer that reads high at "
        "part throttle, or fuel not metered on supply and return"
        if more
        else "a screw of too much pitch, a tachometer that reads low at part throttle, or fuel "
        "drawn by something else"
    )
    return text + page.text(f"; more than a quarter apart, so the band is wider. Likely: {causes}")


def _turns(page: Page) -> Markup:
    if page.value("trial.turns_over_model_share") is None:
        return Markup("")
    way = "below" if (page.value("trial.turns_over_model_share") or 0.0) < 0.0 else "above"
    text = page.text(
        f"reads {{trial.turns_over_model_share|share:size}} {way} what pitch, slip and gear ratio "
        "imply"
    )
    if not page.value("trial.turns_wrong"):
        return text + page.text(", within what pitch and wake leave open")
    return text + page.text(", too much for pitch and wake: check tachometer, gear ratio and pitch")


def _band(page: Page) -> Markup:
    text = page.text("one sigma of shaft power {evidence.prior_share|share} without a trial")
    if page.value("evidence.posterior_share") is None:
        return text
    return text + page.text(", {evidence.posterior_share|share} with it")
