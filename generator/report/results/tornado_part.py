"""What does results.json say of the inputs that move the verdict most?"""

from __future__ import annotations

from typing import Any

from generator.sensitivity import Swing, Tornado
from generator.study import Study

Row = dict[str, Any]
MOST = 8


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
            "rows": [_row(swing) for swing in tornado.swings[:MOST]],
        }
    }


def _row(swing: Swing) -> Row:
    return {
        "path": swing.path,
        "what": swing.what,
        "how": swing.how,
        "low": swing.low,
        "high": swing.high,
        "unit": swing.unit,
        "at_low": swing.at_low,
        "at_high": swing.at_high,
        "swing": swing.width,
    }
