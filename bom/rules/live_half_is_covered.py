"""The live half of a plug must not be touchable.

Asks:     the connector or port is touch protected when apart.
Why:      a pack's plug stays live when pulled; a scrap of metal or a finger bridges open pins.
Harm:     shock.
Says:     fail, can't tell.
Cure:     a shrouded connector, the live half being the socket.
Ignores:  which half the builder puts on the pack: the build sheet says.
Source:   UN R136 5.1.1 (protection IPXXB or better when apart), read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag."""
    return [is_word("touch protected", parts.words_of("touch_protected"), ("yes",), "the pack's half stays live")]


RULE = PartRule(("power_connector", "charge_port"), judge)
