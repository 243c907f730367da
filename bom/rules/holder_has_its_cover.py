"""A fuse holder must come with its cover.

Asks:     it has a cover, or a closed body; without one it fails above 60 V DC and is tight below.
Why:      the pack end of a holder stays live with everything off; a spanner or a finger bridges open clips and studs.
Cure:     the covered holder of the same body; or its cover as a part of its own on the same order.
Ignores:  water, which its IP code tells; whether the cover is put back on.
Source:   UN R136 5.1.1 (live parts behind covers that come off by tools alone), read second-hand on a public page.
Harm:     shock.
Says:     fail, can't tell, tight.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.physics.isolation import is_above_low_voltage
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look for the cover."""
    other = Verdict.FAIL if is_above_low_voltage(voltage_v=duty.voltage_v.high) else Verdict.TIGHT
    return [is_word("cover", parts.words_of("cover"), ("yes",), f"live at up to {duty.voltage_v}", other=other)]


RULE = PartRule(("fuse_holder",), judge, only_with=("voltage_v",))
