"""Part of the appendix: what do other published forms say, and how well does each foretell?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

FORMS = ("hull_out", "family_out", "gko1993", "keuning1998", "keuning2008")
OWN = {"hull_out": "One hull left out", "family_out": "Its family left out"}


def part(page: Page) -> Part | None:
    """Resistance of this boat by form, and the error of each form on measured hulls."""
    if not page.value("second_opinions"):
        return None
    text = page.text(
        "The curve of {boat.name|given} rests on a regression of the project's own over measured "
        "bare hulls, with the keel's waves added; its band is what came out when whole families "
        "of hulls were left out: it then holds {form_band.family_inside_share|share} of the "
        "measured hulls, and {form_band.hull_inside_share|share} with only "
        "the hull itself left out, so for a hull of the series it is too wide. The published "
        "forms are second opinions."
    )
    said = (text, *_growth(page))
    return Part("forms", "Hull forms side by side", said, (), (_opinions(page), _scores(page)))


def _growth(page: Page) -> tuple[Markup, ...]:
    """How the factor that the sea trial sets goes with speed."""
    if page.value("trial.reference_kn") is None:
        return ()
    if page.value("trial.growth") is None:
        return (
            page.text("The sea trial’s factor is one for all speeds: {trial.growth_why|given}."),
        )
    return (
        page.text(
            "The factor of {trial.resistance_scale|ratio} by which the sea trial scales the "
            "regression goes with speed to the power {trial.growth|ratio:signed} (one in ten "
            "{trial.growth_low|ratio:signed}, nine in ten {trial.growth_high|ratio:signed}), held "
            "beyond the speeds of the trial. Over the speeds that it covers, a trial that passed "
            "its gates stands in the model’s place."
        ),
    )


def _opinions(page: Page) -> Table:
    rows = page.value("second_opinions")
    speeds = sorted({row["speed_kn"] for row in rows})
    firsts = [f"second_opinions.{place * len(speeds)}" for place in range(len(rows) // len(speeds))]
    table, keys = [], []
    for first in firsts:
        place = int(first.split(".")[1])
        own = [f"second_opinions.{place + step}" for step in range(len(speeds))]
        keys += [f"{key}.total_n" for key in own]
        table.append(Row(page.words(f"{first}.name"), (page.words(f"{first}.keel"),
                         *(_cell(page, key) for key in own))))  # fmt: skip
    width = 44 // len(speeds)
    columns = [words("Form", 31), words("Keel", 25)]
    for step in range(len(speeds)):
        head = page.show(f"second_opinions.{step}.speed_kn", "speed")
        columns.append(numbers(head, width, page.unit("force")))
    caption = page.text(
        "Total resistance of {boat.name|given}, clean, in calm water, by form; in brackets against "
        "the first"
    )
    return Table("forms-table", caption, tuple(columns), tuple(table), reasons(page, keys))


def _cell(page: Page, key: str) -> Markup:
    total = page.show(f"{key}.total_n", "force:bare")
    if page.value(f"{key}.form") == "family_out" or page.value(f"{key}.total_n") is None:
        return total
    return total + Markup(" (") + page.show(f"{key}.over_primary_share", "share:signed") + ")"


def _scores(page: Page) -> Table:
    rows = tuple(
        Row(
            page.show(f"{key}.froude_number", "plain"),
            tuple(
                page.show(f"{key}.{form}_rms_share", "share")
                + Markup(' <span class="spread">')
                + page.show(f"{key}.{form}_bias_share", "share:signed")
                + Markup("</span>")
                for form in FORMS
            ),
        )
        for key in page.keys("form_scores")
    )
    columns = (
        words("Froude number", 15), *(numbers(_head(page, form), 17) for form in FORMS),
    )  # fmt: skip
    caption = page.text(
        "Error of total resistance of a bare hull, rms and mean, on measured models of cruisers"
    )
    named = {form: page.find("second_opinions", form=form) for form in FORMS}
    notes = (
        page.text(
            "The first two columns are the regression on hulls it has not seen. "
            f"{{{named['keuning1998']}.name|given}} and {{{named['keuning2008']}.name|given}} were "
            f"made on these very hulls; {{{named['gko1993']}.name|given}} holds keel and rudder, "
            "so it lies high on bare hulls."
        ),
    )
    return Table("scores-table", caption, columns, rows, notes)


def _head(page: Page, form: str) -> Markup:
    """The name of a form, as the other table has it."""
    own = OWN.get(form)
    return page.words(f"{page.find('second_opinions', form=form)}.name") if own is None else (
        Markup.escape(own)
    )  # fmt: skip
