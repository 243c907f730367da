"""A flasher must work with the lamp watts of one side, on this rail and earth.

Asks:     lamp watts of a side lie in its window; its supply window covers the rail; its polarity suits the earth; it
          has two pins.
Why:      a third pin wants a minus that the loom does not lead there; below its least load a thermal flasher hangs or
          races; a polarity-bound one dies on a positive earth.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a load-independent electronic flasher.
Ignores:  the rate; measure 60 to 120 a minute (UN R53 style text).
Source:   SAE J590 and UN R53 style text, read second-hand on a public page; windows as printed on the unit.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.span import Span

PINS = 2


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare load window, supply window, pins and polarity."""
    pins = Span.fixed(PINS, "", "the loom leads plus in and plus out to it", "this loom")
    wanted = ("either", "positive earth" if duty.word("earth") == "positive" else "negative earth")
    return [
        at_most("least lamp watts", parts.rating("load_min_w"), duty.flasher_w),
        at_least("most lamp watts", parts.rating("load_max_w"), duty.flasher_w),
        at_most("lowest supply volts", parts.rating("supply_min_v"), duty.rail_low_v),
        at_least("highest supply volts", parts.rating("supply_max_v"), duty.rail_high_v),
        at_least("pins", parts.rating("pins"), pins),
        at_most("pins", parts.rating("pins"), pins),
        is_word(
            "polarity",
            parts.words_of("polarity"),
            wanted,
            f"earth is {duty.word('earth')}",
            asked=duty.source_of("earth"),
        ),
    ]


RULE = PartRule(("flasher",), judge)
