"""A brake switch must close when braking.

Asks:     its contact closes when braking; where the loom is laid with a relay that it holds in, it opens.
Why:      some old bikes lit the stop lamp through the ignition's return: their switch opens to light, and in a lamp
          circuit that lamp burns until you brake.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a switch that closes when braking, or a changeover relay that inverts it.
Ignores:  what the controller's brake input wants; it has leads of its own.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the contact of a brake switch, not of other switches."""
    if duty.word("switch") != "brake switch":
        return []
    if duty.word("brakes by") == "opening":
        reason = "it holds in a relay whose rest contact lights the stop lamp"
        return [is_word("contact", parts.words_of("contact"), ("opens when braking",), reason)]
    reason = "it lights the stop lamp; one that opens stays only through a changeover relay"
    return [is_word("contact", parts.words_of("contact"), ("closes when braking",), reason)]


RULE = PartRule(("bar_switch",), judge)
