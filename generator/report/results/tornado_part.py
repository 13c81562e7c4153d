"""What does results.json say of the inputs that move the verdict most?"""

from __future__ import annotations

from typing import Any

from generator.report.results.suffix import excused
from generator.sensitivity import Swing, Tornado
from generator.study import Study

Row = dict[str, Any]
MOST = 8
NO_END = "at this end of the input there is no value"


def tornado_part(study: Study, tornado: Tornado | None) -> Row:
    """The tightest criterion of one option and the inputs that move it most, widest first."""
    if tornado is None:
        return {"tornado": None, "tornado_why": "no criterion with a number decides here"}
    rows = study.options[tornado.option].verdict.judgements
    criterion = next(row.criterion for row in rows if row.criterion.id == tornado.criterion)
    return {
        "tornado": {
            "criterion": criterion.id,
            "criterion_name": criterion.name,
            "limit_go": criterion.go,
            "limit_conditional": criterion.conditional,
            "sense": criterion.sense,
            "best": tornado.best,
            "rows": [swing_row(swing) for swing in tornado.swings[:MOST]],
        }
    }


def swing_row(swing: Swing, suffix: str = "") -> Row:
    """One input at both ends; ``suffix`` names the unit of what is looked at."""
    return {
        "path": swing.path,
        "what": swing.what,
        "how": swing.how,
        "low": swing.low,
        "high": swing.high,
        "unit": swing.unit,
        **excused(
            {
                f"at_low{suffix}": swing.at_low,
                f"at_high{suffix}": swing.at_high,
                f"swing{suffix}": swing.width,
            },
            NO_END,
        ),
    }
