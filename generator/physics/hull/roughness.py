"""How much does paint and growth add to the friction?"""

from __future__ import annotations

from generator.tables.load import read_table

TABLE = "hull/fouling"


def friction_increase(state: str) -> float:
    """Share by which the state of the bottom raises friction, the whole computed value.

    dRF/RF by state: the friction column of the table

    Args:
        state: a row of the table, such as light slime

    Returns:
        dRF/RF [-]

    Valid: yachts of 6 to 12 m waterline at 4 to 7 kn; overshoots the ship figures of the
        source up to 1.4 times, so a central estimate takes a share of it
    Source: schultz2007, conditions; granville1958, similarity
    """
    table = read_table(TABLE)
    percent = table.column("friction_increase")[table.row_of("state", state)]
    return float(percent) / 100.0


def states() -> tuple[str, ...]:
    """The states of the bottom that have a row, from clean to worst.

    Returns:
        words, rows of the table [-]

    Valid: as the table
    Source: schultz2007, conditions
    """
    return read_table(TABLE).text("state")
