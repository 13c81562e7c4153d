"""What does a sentence call an option whose rating has been told?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.study import Study

ALONE = {
    "battery": "the electric motor",
    "keep": "the present diesel",
    "new diesel": "the new diesel",
}


def called(study: Study, found: Findings) -> str:
    """Its kind where it is the only one; else its name up to the comma, if no other has it."""
    kinds = [each.findings.option.kind for each in study.options]
    kind = found.option.kind
    if kinds.count(kind) == 1 and kind in ALONE:
        return ALONE[kind]
    names = [each.findings.option.name for each in study.options]
    own = found.option.name.partition(",")[0]
    alone = [name.partition(",")[0] for name in names].count(own) == 1
    return own if alone else found.option.name
