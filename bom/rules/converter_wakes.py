"""A converter must be able to start with what the loom gives it.

Asks:     it needs no enable; or one at pack volts where the key carries them; or one at 12 V where a buffer battery
          holds 12 V before it starts.
Why:      a converter that waits for 12 V on its enable, and is the only 12 V source, never starts.
Cure:     a converter without enable, or a buffer battery.
Ignores:  the amps of the enable lead.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the enable."""
    accepted = ["none"]
    if duty.word("key at") == "pack volts":
        accepted.append("pack volts")
    if duty.word("buffer") == "yes":
        accepted.append("12 V")
    return [
        is_word(
            "enable", parts.words_of("enable"), accepted, "what the loom can give it", asked=duty.source_of("key at")
        )
    ]


RULE = PartRule(("converter",), judge)
