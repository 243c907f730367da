"""A lamp seen on the road must bear its road mark.

Asks:     head, tail and stop, and indicator lamps are marked for the road; without the mark tight.
Why:      an inspector looks for the mark on the glass; many LED bulbs in old bases have none.
Harm:     order.
Says:     can't tell, tight.
Cure:     a marked lamp for that base; or ask the inspector before you buy.
Ignores:  which mark a country wants; position, instrument and telltale lamps.
Source:   UN R37 and R128 (marking of light sources), UN R53 (lamps of motorcycles), read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag; a lamp without the mark works all the same."""
    if duty.word("purpose") not in SEEN:
        return []
    because = f"{duty.word('purpose')} lamps are seen on the road; ask the inspector about one without"
    return [is_word("road mark", parts.words_of("road_mark"), ("yes",), because, other=Verdict.TIGHT)]


SEEN = ("head", "tail and stop", "indicator")
RULE = PartRule(("lamp",), judge)
