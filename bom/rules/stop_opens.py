"""A stop switch, cap switch or key switch in the coil chain must open to stop.

Asks:     its contact opens to stop; one that pulls in a relay closes to stop, which is tight at best, and stays in stop
          when let go.
Why:      a kill switch that closes to ground works backwards in a coil chain, or shorts 12 V; a broken wire then
          goes unnoticed. A push that springs back lets the relay go, and the contactor closes again.
Harm:     runaway.
Says:     fail, can't tell, tight.
Cure:     a switch that opens; or invert it with a relay, and try it before every ride.
Ignores:  nothing.
Source:   ISO 13850 (stop by opening contacts), from memory; common practice.
"""

from dataclasses import replace

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins

THROUGH_A_RELAY = "it pulls in a relay that opens the chain; a broken lead leaves it dead, so try it before every ride"


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the contact; through a relay a broken lead goes unnoticed, which is never a clean pass."""
    contact = parts.words_of("contact")
    if duty.word("stop by") == "relay":
        answer = is_word("contact", contact, ("closes to stop",), THROUGH_A_RELAY, asked=duty.source_of("stop by"))
        let_go = is_word("latches", parts.words_of("latches"), ("yes",), "let go, it must not wake the bike again")
        return [replace(answer, verdicts=np.maximum(answer.verdicts, np.int8(Verdict.TIGHT))), let_go]
    return [is_word("contact", contact, ("opens to stop",), "a broken wire must stop the bike too")]


RULE = PartRule(("stop_switch", "cap_switch", "key_switch"), judge)
