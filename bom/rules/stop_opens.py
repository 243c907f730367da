"""A stop switch, cap switch or key switch in the coil chain must open to stop.

Asks:     its contact opens to stop.
Why:      a kill switch that closes to ground works backwards in a coil chain, or shorts 12 V; a broken wire then
          goes unnoticed.
Cure:     a switch that opens, or invert it with a relay.
Ignores:  nothing.
Source:   ISO 13850 (stop by opening contacts), from memory; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the contact."""
    return [is_word("contact", parts.words_of("contact"), ("opens to stop",), "a broken wire must stop the bike too")]


RULE = PartRule(("stop_switch", "cap_switch", "key_switch"), judge)
