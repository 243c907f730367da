"""A converter must hold a buffer battery at its own charging volts.

Asks:     the converter's output lies in the battery's window, its amps are at most what the battery takes, and it
          limits at constant current.
Why:      12.0 V never charges lead; 14.5 V overcharges some lithium; a hiccup type never starts into it.
Harm:     damage.
Says:     fail, can't tell.
Cure:     an adjustable constant-current converter, an iron-phosphate block that takes its amps, or none.
Ignores:  temperature compensation.
Source:   lead float 13.5 to 13.8 V, common practice, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare output volts with the window."""
    output = Demand.of(first.number("output_v")[:, None], "voltage", "converter's output", first.cell("output_v"))
    label = first.number("output_a")[:, None]
    limit = Demand.of(label, "current", "converter's amps into a flat battery", first.cell("output_a"))
    return [
        at_most("least charging volts", second.rating("charge_min_v").across(), output),
        at_least("greatest charging volts", second.rating("charge_max_v").across(), output),
        at_least("greatest charging amps", second.rating("charge_max_a").across(), limit),
        same_word("overload mode", first.words_of("overload"), "constant current", "it must start into a flat battery"),
    ]


RULE = PairRule("charges", judge)
