"""A charger must end at the pack's full charge, for its chemistry.

Asks:     end volts are at most 0.5 % over full charge (over fails) and at least 2 % under (to 5 % is tight).
Why:      two "72 V" chargers end at 84.0 and 87.6 V; the wrong one leaves all to the last line of defence.
Harm:     fire.
Says:     fail, can't tell, tight.
Cure:     the charger for cells x volts.
Ignores:  the shape of the charge.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word, softened
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

FAMILIES = {"LFP": "iron phosphate", "lead-acid": "lead-acid", "LTO": "any"}


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare end volts with full charge, and the chemistry."""
    full = duty.charge_end_v
    more, less, least = (margins.of(f"charger_{name}_fraction") for name in ("over", "under", "lowest"))
    over = full.scaled(1 + more.low, f"{full} + {more.low:.1%}", "X * (1 + k)", k=more)
    under = full.scaled(1 - less.low, f"{full} - {less.low:.0%}", "X * (1 - k)", k=less)
    low = at_least("end volts", parts.rating("end_v"), under)
    lowest_v = full.scaled(1 - least.low, f"{full} - {least.low:.0%}", "X * (1 - k)", k=least)
    lowest = at_least("end volts", parts.rating("end_v"), lowest_v)
    kind = FAMILIES.get(duty.word("chemistry"), "lithium-ion")
    return [
        at_most("end volts", parts.rating("end_v"), over),
        softened(low),
        lowest,
        is_word(
            "chemistry",
            parts.words_of("chemistry"),
            ("any", kind),
            duty.word("chemistry"),
            asked=duty.source_of("chemistry"),
        ),
    ]


RULE = PartRule(("charger",), judge)
