"""Packs joined in parallel each need a fuse of their own.

Asks:     there is one string, or each has a fuse of its own.
Why:      joined at unequal volts one dumps hundreds of amps into the other.
Cure:     a fuse at each string's plus, laid by leaving out pack.string_fuses; bring them to the same volts before
          joining.
Harm:     fire.
Says:     fail.
Ignores:  cells welded side by side inside one pack; strings that share unevenly: a fuse is laid for an even share,
          and once one is open the others follow.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.strings import STRING_FUSE
from bom.span import Span


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the strings and their fuses."""
    strings = view.facts.job.pack.strings
    fused = next((int(place.quantity) for place in view.loom.places if place.name == STRING_FUSE), 1)
    verdict = Verdict.PASS if strings <= fused else Verdict.FAIL
    because = f"this loom has {fused} at the pluses of the strings"
    offers = Span.given(float(fused), "", "fuses, one for all or one a string", "pack.string_fuses")
    needs = Span.given(float(strings), "", "strings", "pack.strings")
    return [LoomAnswer("pack", verdict, "fuses", str(fused), f"at least {strings}", because, "", offers, needs)]


RULE = LoomRule(judge)
