"""Criterion 15: how cold does the battery get in use, and may it be charged then?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)

LOCK_OUT = "Charge lock-out in the cold, by the maker's sheet"


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Lowest temperature in use; lithium below the limit passes half with a lock-out only."""
    bank, own = found.bank, found.option.bank
    if bank is None or own is None:
        why = "no propulsion battery"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    told = spread(np.asarray(bank.ageing.aged.temperature))
    low = scalar(told.low)
    numbers = {"coldest_c": low}
    key = f"options.{found.place}.bank"
    if bank.lead:
        why = (
            f"lead of {{{key}.charge_ah|charge}} may be charged at {{here.coldest_c|temperature}}"
            f"; it gives {{{key}.cold_share|share}} of its label there"
        )
        return Judgement(criterion, scalar(told.middle), low, "-", GO, why, "", numbers=numbers)
    result = criterion.judge(low)
    if result != GO:
        result = CONDITIONAL if own.charge_lock_out else NO
    if own.charge_lock_out is None and result == NO and low >= criterion.conditional:
        result = CONDITIONAL  # not said: to be confirmed, not presumed absent
    why = (
        f"{{here.coldest_c|temperature}} in one draw of ten; {{{key}.charge_ah|charge}} may then "
        f"take {{{key}.cold_charge_low_a|current}} of charge"
    )
    more = "" if own.charge_lock_out else ", and a lock-out of charging"
    flip = "" if result == GO else f"a heated battery locker{more}"
    condition = LOCK_OUT if own.charge_lock_out is None else ""
    return Judgement(
        criterion, scalar(told.middle), low, "-", result, why, flip,
        condition=condition if result != GO else "", numbers=numbers,
    )  # fmt: skip
