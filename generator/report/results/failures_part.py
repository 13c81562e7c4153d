"""What does results.json say of single faults, spares, documents, papers and handover tests?"""

from __future__ import annotations

from typing import Any

from generator.analyses.verdict.failures import SAIL, Failure
from generator.analyses.verdict.papers import HandoverTest, Papers
from generator.analyses.verdict.spares import SPARES
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]


def failures_part(failures: tuple[Failure, ...], place: int) -> Row:
    """Every fault of one option, and how many take the drive away."""
    rows = [_row(item, f"{{options.{place}.failures.{at}.") for at, item in enumerate(failures)]
    sail = sum(item.kind == SAIL for item in failures)
    return {"failures": rows, "failure_count": {"all": len(rows), "sail": sail}}


def _row(item: Failure, here: str) -> Row:
    texts = {"fault": item.fault, "effect": item.effect, "left": item.left, "action": item.action}
    return {
        "id": item.id,
        **{name: text.replace("{here.", here) for name, text in texts.items()},
        "kind": item.kind,
        "diesel": item.diesel,
        **item.numbers,
    }


def papers_part(papers: Papers, fastest: float) -> Row:
    """The lists that go with the packs; ``fastest`` [kn]: as far as the curves reach."""
    return {
        "documents": [
            {
                "designation": item.designation,
                "edition": item.edition or None,
                "title": item.title,
                "concerns": item.concerns,
                "note": "verify current edition",
            }
            for item in papers.documents
        ],
        "certificates": [
            {"paper": item.paper, "shows": item.shows, "by": item.by}
            for item in papers.certificates
        ],
        "spares": [{"item": item.item, "mends": item.mends} for item in SPARES]
        if papers.certificates
        else [],
        "handover": [row for item in papers.tests if (row := _test(item, fastest))],
    }


def _test(item: HandoverTest, fastest: float) -> Row | None:
    """A test with the key of its number, in the row of its speed; none beyond the curves."""
    speed = None if item.speed is None else item.speed * PER_SI["kn"]
    if speed is not None and speed > fastest:
        return None
    return {"test": item.test, "key": item.key or None, "form": item.form or None,
            "speed_kn": speed, "accept": item.accept}  # fmt: skip
