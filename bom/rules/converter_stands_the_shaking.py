"""A converter on a bike must stand the shaking.

Asks:     it is potted: its inside cast in resin; one that is not is tight.
Why:      coils and capacitors on long legs break off; one un-potted unit failed over a speed bump, and with it the
          lamps.
Cure:     a potted one; else hang it in rubber, in the box, and carry a spare.
Ignores:  how it is mounted, and how its own leads are held.
Source:   common practice, no source.
Harm:     dark.
Says:     can't tell, tight.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look for the resin."""
    return [is_word("potted", parts.words_of("potted"), ("yes",), "it rides on a bike", other=Verdict.TIGHT)]


RULE = PartRule(("converter",), judge)
