"""Appendix: what does an insurer ask, what answers it here, and which papers must be got?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part, Row, Table, words
from generator.report.sections.change import each
from generator.report.sections.yard import standing

SPACE = 19  # id of the criterion of the battery's space


def parts(page: Page) -> tuple[Part, ...]:
    """Questions with their answers, papers to be obtained, and documents, for the pack alone."""
    if not page.motors:
        return ()
    return (_questions(page), _certificates(page), _documents(page))


def _questions(page: Page) -> Part:
    rows = tuple(Row(Markup(head), (page.text(given), Markup(adds)))
                 for head, given, adds in _rows(page))  # fmt: skip
    columns = (words("Question", 17), words("This study", 45), words("Owner or installer adds", 38))
    caption = page.text("What underwriters ask of a battery drive in {boat.name|given}")
    return Part("questions", "", (), (),
                (Table("questions-table", caption, columns, rows, (), "long"),))  # fmt: skip


def _rows(page: Page) -> tuple[tuple[str, str, str], ...]:
    post = "no shore post is used"
    if page.value("berth.shore_power"):
        post = "from the post at {berth.name|given}"
        if page.value("berth.breaker_a"):
            post += ", {berth.breaker_a|current} at {berth.voltage_v|voltage}"
    own = "a battery of its own" if page.value("house.separate_bank") else "the drive's battery"
    return (
        ("What changes", "{engine.rated_power_kw|power} of diesel becomes "
         f"{each(page, 'particulars.motor.continuous_power_kw', 'power')} of motor; area "
         "{waters.name|given}", "Value before and after; the owner's signature"),
        ("Battery", f"{each(page, 'bank.nominal_kwh', 'energy')} of "
         f"{{{page.motors[0]}.bank.chemistry|given}}, "
         f"{each(page, 'installation.strings', 'count')} strings",
         "Make and type; the papers below"),
        ("Place and fire", _place(page),
         "Vent, detector, boundary, extinguisher and its limits; way out not past the battery; "
         "gas and petrol apart"),
        ("Alarm and cut-off",
         f"Alarms at {each(page, 'installation.alarms.first_share', 'share')} and "
         f"{each(page, 'installation.alarms.second_share', 'share')} of charge, before cut-off; a "
         "remote disconnect outside the space opens every string; house on " + own,
         "Shown at handover"),
        ("Fuses, isolators", f"Short circuit up to "
         f"{each(page, 'installation.fault.bank_most_ka', 'short_circuit')} "
         "against the breaking capacity of each fuse; isolators outside the space",
         "Makers' data sheets"),
        ("Charging", f"{post[0].upper()}{post[1:]}, every {{berth.days_between_use_d|days}}",
         "First hour attended; residual current device; galvanic isolation"),
        ("Installer", "Not named by this study", "Qualification, cover, survey on completion"),
        ("After one fault", "Each single fault with what is left, and spares", "Sail and tow plan"),
        ("Limits", "A prediction, not a survey of finished work", "Commissioning record, "
         "photographs, training at handover"),
    )  # fmt: skip


def _place(page: Page) -> str:
    """Where the bank stands, and what was seen of that space."""
    motor = page.motors[0]
    row = page.find(f"{motor}.verdict.criteria", id=SPACE)
    seen = f"{{{row}.facts.words|given}}" if row else "nothing is known of its space"
    said = standing(page)
    return f"{said[0].upper()}{said[1:]}. {seen}"


def _certificates(page: Page) -> Part:
    rows = tuple(
        Row(page.words(f"{key}.paper"), (page.words(f"{key}.shows"), page.words(f"{key}.by")))
        for key in page.keys("certificates")
    )
    columns = (words("Paper", 40), words("Shows", 38), words("From", 22))
    caption = page.text("Certificates to obtain for {boat.name|given} before an order")
    table = Table("certificates-table", caption, columns, rows, (), "long")
    return Part("certificates", "Certificates to obtain", (), (), (table,))


def _in_short(page: Page) -> Part:
    """Papers by name and giver, documents by name: what the pack alone has as tables."""
    rows = tuple(
        Row(page.words(f"{key}.paper"), (page.words(f"{key}.by"),))
        for key in page.keys("certificates")
    )
    caption = page.text("Certificates to obtain for {boat.name|given} before an order")
    named = joined((page.words(f"{key}.designation") for key in page.keys("documents")), "; ")
    note = Markup("To be designed to and verified against, as far as each applies, by installer "
                  "and surveyor: ") + named  # fmt: skip
    note += Markup(". Verify the current edition of each; none is quoted, and compliance with "
                   "none is claimed.")  # fmt: skip
    columns = (words("Paper", 62), words("From", 38))
    table = Table("certificates-table", caption, columns, rows, (note,))
    return Part("certificates", "Certificates to obtain", (), (), (table,))


def _documents(page: Page) -> Part:
    """The documents as a table."""
    rows = tuple(
        Row(
            page.words(f"{key}.designation"),
            (
                page.words(f"{key}.edition") if page.value(f"{key}.edition") else Markup(""),
                page.words(f"{key}.title"),
                page.words(f"{key}.concerns"),
                page.words(f"{key}.note"),
            ),
        )
        for key in page.keys("documents")
    )
    columns = (words("Document", 18), words("Heard of", 11), words("Title", 33),
               words("For", 24), words("Before use", 14))  # fmt: skip
    text = page.text(
        "Named so that installer and surveyor of {boat.name|given} can verify against them; none "
        "is quoted, and compliance with none is claimed."
    )
    caption = page.text("Documents, with the edition last heard of")
    table = Table("documents-table", caption, columns, rows, (), "long")
    return Part("documents", "Documents", (text,), (), (table,))
