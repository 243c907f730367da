"""A converter must be able to start with what the loom gives it, and to sleep where the key is to wake it.

Asks:     with its feed through the key it needs no enable, or one at pack volts; with the key at 12 V it needs none;
          where it is to sleep with the key off it has one at the key's own volts: at 12 V counted from the 12 V minus,
          at pack volts from its input's.
Why:      a converter that waits for 12 V on its enable, and is the only 12 V source, never starts; one without
          an enable never sleeps.
Harm:     stranded.
Says:     fail, can't tell.
Cure:     a converter with the enable that the key arrangement gives, or another arrangement.
Ignores:  the threshold volts of the enable; its few milliamps are a margin.
Source:   common practice, no source.
"""

from bom.arrangement import PACK, PACK_SLEEPING, SLEEPING
from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

ACCEPTED = {PACK: ("none", "pack volts"), SLEEPING: ("12 V",), PACK_SLEEPING: ("pack volts",)}


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the enable."""
    key_at = duty.word("key at")
    accepted, because = ACCEPTED.get(key_at, ("none",)), f"key at {key_at}"
    return [is_word("enable", parts.words_of("enable"), accepted, because, asked=duty.source_of("key at"))]


RULE = PartRule(("converter",), judge)
