"""What does a sentence call an option whose rating has been told?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.study import Study


def called(study: Study, found: Findings) -> str:
    """Its name up to the comma, where no other option shares that; else its whole name."""
    names = [each.findings.option.name for each in study.options]
    own = found.option.name.partition(",")[0]
    alone = [name.partition(",")[0] for name in names].count(own) == 1
    return own if alone else found.option.name
