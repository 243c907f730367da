"""A charger's amps must be those wanted, and no more than the pack allows.

Asks:     amps are at most those wanted and at most the charge limit, and at least 80 % of those wanted.
Why:      port, fuse and wire are sized for the amps wanted; the battery management opens above its limit.
Harm:     damage.
Says:     fail, can't tell.
Cure:     another charger, or another wish.
Ignores:  the house's mains circuit: a licensed electrician's matter.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps."""
    wish, share = duty.charge_wish_a, margins.charger_amps_fraction
    least = wish.scaled(share, f"{share:.0%} of those wanted", "X * k", k=margins.of("charger_amps_fraction"))
    return [
        at_most("charging amps", parts.rating("output_a"), duty.charge_limit_a),
        at_most("charging amps", parts.rating("output_a"), wish),
        at_least("charging amps", parts.rating("output_a"), least),
    ]


RULE = PartRule(("charger",), judge)
