"""Plugs and caps of control leads must keep water out.

Asks:     the plug or cap is sealed.
Why:      water between a throttle's supply and its signal is read as an open throttle; a wet spare end is a leak to
          the frame.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     a sealed plug with a seal on every lead; a glue-lined cap.
Ignores:  how well; ways left empty want a cavity plug each.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look for the seal."""
    return [is_word("sealed", parts.words_of("sealed"), ("yes",), "it hangs where rain comes")]


RULE = PartRule(("signal_connector", "end_cap"), judge, only_with=("lead_least_mm2",))
