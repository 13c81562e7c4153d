"""Part of the results: do motor and propeller belong together, and what does the yard need?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

ROWS = (
    ("Kind", "particulars.propeller.kind", "given"),
    ("Blades", "particulars.propeller.blades", "count"),
    ("Diameter", "particulars.propeller.diameter_mm", "length_small"),
    ("Pitch", "particulars.propeller.pitch_mm", "length_small"),
    ("Turns where its limit meets the propeller", "match.reached_rpm", "rpm"),
    ("Power at the shaft there", "match.reached_shaft_kw", "power"),
    ("Turns that full power would take", "match.full_power_rpm", "rpm"),
    ("Off rated turns", "match.off_share", "share:signed"),
    ("Reduction that matches in a calm", "match.ratio", "ratio"),
    ("Reduction advised, for pull against a wind", "match.advised_ratio", "ratio"),
    ("Pitch that matches, reduction kept", "match.pitch_mm", "length_small"),
    ("Aperture, height", "match.aperture_height_mm", "length_small"),
    ("Tip clearance over diameter", "match.clearance_share", "share"),
    ("Best diameter", "match.best.diameter_mm", "length_small"),
    ("Aperture that it needs", "match.best.aperture_needed_mm", "length_small"),
    ("Best pitch", "match.best.pitch_mm", "length_small"),
    ("Reduction for it", "match.best.ratio", "ratio"),
    ("Saved at cruise by it", "match.best.saving_share", "share"),
    ("Torque at the shaft, motor stalled", "match.stall_newtonmetre", "torque"),
    ("Shaft needed for that, stainless", "match.shaft_needed_mm", "length_small"),
    ("Shaft aboard", "match.shaft_diameter_mm", "length_small"),
    ("Thrust for the bearing, tied up at peak", "docking.ahead_peak_n", "force"),
    ("Blade area needed over disc (Keller)", "match.blade_area_needed", "ratio"),
    ("Blade area over disc", "particulars.propeller.area_ratio", "ratio"),
)


def part(page: Page) -> Part:
    """The match in words and the propeller table for the yard."""
    if not page.value(f"{page.options[0]}.match"):
        return Part("propeller", "")
    text = (*(_words(page, motor) for motor in page.motors), *_yard(page))
    return Part("propeller", "Propeller and its match", text, (), (_table(page),))


def _words(page: Page, motor: str) -> Markup:
    key, rated = f"{motor}.match", f"{motor}.particulars.motor.rated_speed_rpm"
    stopped = page.value(f"{key}.reached_limit")
    limit = "full continuous power" if stopped == "power" else f"the motor's limit of {stopped}"
    said = (
        f"On the propeller of {{{motor}.name|given}} {limit}, by the plate alone, is met in a calm "
        f"at {{{key}.reached_rpm|rpm}}, {{{key}.reached_newtonmetre|torque}} and "
        f"{{{key}.reached_kn|speed}}: {{{key}.reached_shaft_kw|power}} at the shaft (warm, the "
        f"bank old, she holds {{{motor}.top_speed.continuous_kn|speed}})"
    )
    full = f"{key}.full_power_rpm"
    if stopped != "power" and page.plain(full, "rpm") != page.plain(rated, "rpm"):
        said += f"; full power would take {{{full}|rpm}} of the rated {{{rated}|rpm}}"
    said += (
        f". A reduction of {{{key}.ratio|ratio}} would match in a calm; of those that match "
        f"and keep her calm speed {{{key}.advised_ratio|ratio}} pulls hardest against a wind"
    )
    if page.value(f"{key}.pitch_mm") is not None:
        said += f", or a pitch of {{{key}.pitch_mm|length_small}} with the reduction kept"
    best = f"{key}.best"
    if page.value(best):
        room = "in the aperture"
        if not page.value(f"{key}.aperture_height_mm"):
            room = f"for an aperture of {{{best}.aperture_needed_mm|length_small}}, to be measured,"
        said += (
            f". The best propeller {room} is {{{best}.diameter_mm|length_small}} by "
            f"{{{best}.pitch_mm|length_small}} with a reduction of {{{best}.ratio|ratio}}: it "
            f"saves {{{best}.saving_share|share}} at cruise"
        )
    if page.value(f"{key}.beyond_curve"):
        said += ". Full power lies above the last speed of the hull form; turns go on by cube law"
    return page.text(said + ".")


def _yard(page: Page) -> tuple[Markup, ...]:
    """Thrust bearing, stern gland and shaft: what the engine did unasked."""
    if not page.motors:
        return ()
    motor = max(page.motors, key=lambda key: page.value(f"{key}.docking.ahead_peak_n"))
    key, saildrive = f"{motor}.match", page.value("propeller.installation") == "saildrive"
    if saildrive:
        carried = "The saildrive leg goes on carrying the thrust if it is kept; without it a new "
        gland = "Its leg needs no fed gland."
    else:
        carried = "The gearbox that goes out carried the thrust of the shaft: a new "
        gland = (
            "If the stern gland is fed by the engine's cooling water, that feed ends with the "
            "engine: it needs a pump, a scoop or a vent of its own."
        )
    bearing = (
        carried + f"thrust bearing must take {{{motor}.docking.ahead_peak_n|force}}, the pull of "
        f"{{{motor}.name|given}} tied up at peak. " + gland
    )
    shaft = (
        f"Stalled, {{{motor}.name|given}} twists the shaft with "
        f"{{{key}.stall_newtonmetre|torque}}; a stainless "
        f"shaft needs {{{key}.shaft_needed_mm|length_small}} for that"
    )
    holds = page.value(f"{key}.shaft_holds")
    if holds is None:
        shaft += ", and hers is to be measured."
    else:
        word = "holds" if holds else "is too thin"
        shaft += f", and hers of {{{key}.shaft_diameter_mm|length_small}} {word}."
    if page.value(f"{key}.cavitates"):
        shaft += (
            f" That pull asks for {{{key}.blade_area_needed|ratio}} of blade area over disc by "
            f"Keller and she has {{{motor}.particulars.propeller.area_ratio|ratio}}: tied up "
            "or into a gale she cavitates, with less pull than is printed."
        )
    return page.text(bearing), page.text(shaft)


def _table(page: Page) -> Table:
    width = 64 // len(page.options)
    columns = (
        words("For the yard", 36),
        *(numbers(page.words(f"{option}.name"), width) for option in page.options),
    )
    rows = tuple(_row(page, *row) for row in ROWS)
    used = [f"{option}.{key}" for option in page.options for _, key, _ in ROWS]
    caption = page.text("Propeller, ratio and shaft by option; calm, in service, best estimate")
    return Table("propeller-table", caption, columns, rows, reasons(page, used))


def _row(page: Page, name: str, key: str, form: str) -> Row:
    cells = tuple(
        page.words(f"{option}.{key}") if form == "given" else page.show(f"{option}.{key}", form)
        for option in page.options
    )
    return Row(Markup.escape(name), cells)
