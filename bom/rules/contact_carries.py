"""A contact must carry its running amps without end.

Asks:     the carrying amps, less the derating of its family, are at least the running amps.
Why:      a contact that runs hot loses its spring and its surface; relay labels are optimistic.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a larger contact, or a relay that takes the load off it.
Ignores:  bursts shorter than the thermal time of the contact.
Source:   IEC 60947-1 conventional thermal current, from memory; relay derating is common practice.
"""

from functools import partial

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the carrying amps, relays counted at a part of their label."""
    share = margins.relay_carry_fraction if parts.family == "relay" else 1.0
    carry = parts.rating("carry_a")
    traced = partial(_counted, carry, margins) if share < 1 else carry.trace
    offered = carry.with_values(carry.values * share, traced)
    what = f"{share:.0%} of the carrying amps" if share < 1 else "carrying amps"
    return [at_least(what, offered, duty.carry_a)]


def _counted(carry: Rating, margins: Margins) -> Step:
    """Show the part of a relay's label that is counted on."""
    return step("k * I", k=margins.of("relay_carry_fraction"), I=carry.first("current"))


RULE = PartRule(
    ("contactor", "relay", "key_switch", "stop_switch", "cap_switch", "bar_switch", "isolator"),
    judge,
    only_with=("carry_a",),
)
