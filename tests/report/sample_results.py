"""An invented results dictionary, so that pages are tested apart from the study.

Boat, people, prices and numbers are made up; only their shape is that of results.json.
"""

from __future__ import annotations

from tests.report.sample_boat import boat
from tests.report.sample_curves import Row
from tests.report.sample_frame import appendix, comparison
from tests.report.sample_options import keep, motors, new_diesel
from tests.report.sample_verdict import CRITERIA


def sample() -> Row:
    """A sloop of 9 m with a worn diesel, a new diesel, and two motors."""
    options = [keep(), new_diesel(), *motors()]
    return {
        "schema": 1,
        "tool_version": "0.1.0",
        "case": {
            "file": "sloop_sample.yaml",
            "sha256": "9f2c" * 16,
            "reference": "S-0417",
            "client": "A. Example",
            "prepared_by": "J. Example, marine electrician",
            "date": "2026-11-20",
            "valid_until": "2027-05-20",
            "currency": "GBP",
            "units": "metric",
            "draft": True,
            "draft_why": "the signatory is not given",
        },
        "study": {
            "priorities": [
                "Quiet on the river, no diesel smell in the cabin",
                "Home on Sunday evening against the ebb without worrying",
            ],
            "reasons": ["The engine needs a rebuild & its parts are hard to find"],
            "draws": 2000,
            "seed": 20,
        },
        **boat(),
        "options": options,
        "comparison": {"rows": comparison()},
        "criteria": [
            {
                "id": number,
                "name": name,
                "role": role,
                "limit_text": limit,
                "built": number in (1, 5, 7, 14, 28),
            }
            for number, name, role, limit in CRITERIA
        ],
        **appendix(),
    }
