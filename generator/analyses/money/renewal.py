"""In which year is a bank renewed?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.store.ageing import Ageing
from generator.arrays import Numbers
from generator.case.option import Option


def with_renewal(option: Option, aged: Ageing | None, word_ends: Numbers | None = None) -> Option:
    """The option with the life of its bank, unless the owner says when it is renewed.

    Years until a fifth of it is lost, or ``word_ends``, the last year in which the option's word
    holds, whichever is first.
    """
    if aged is None or option.bank is None or option.bank.life is not None:
        return option
    life = aged.life if word_ends is None else np.minimum(aged.life, word_ends)
    return replace(option, bank=replace(option.bank, life=life))
