"""What does results.json say of single faults, spares, documents, papers and handover tests?"""

from __future__ import annotations

from typing import Any

from generator.analyses.verdict.failures import SAIL, SPARES, Failure
from generator.analyses.verdict.papers import HandoverTest, Papers
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]
CURVE = "speed_power."
NEAR = 0.02  # kn; the curve's speeds stand on a grid


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


def papers_part(papers: Papers, speeds: list[float]) -> Row:
    """The lists that go with the packs; ``speeds`` [kn]: of the curve that tests are read from."""
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
        "handover": [row for item in papers.tests if (row := _test(item, speeds))],
    }


def _test(item: HandoverTest, speeds: list[float]) -> Row | None:
    """A test with the key of its number; none where the curve does not reach its speed."""
    key = item.key
    if item.speed is not None:
        wanted = item.speed * PER_SI["kn"]
        near = [place for place, speed in enumerate(speeds) if abs(speed - wanted) < NEAR]
        if not near:
            return None
        key = key.replace(CURVE, f"{CURVE}{near[0]}.")
    return {"test": item.test, "key": key or None, "form": item.form or None,
            "accept": item.accept}  # fmt: skip
