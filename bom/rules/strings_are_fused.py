"""Packs joined in parallel each need a fuse of their own.

Asks:     there is one string, or the loom has a fuse for each.
Why:      joined at unequal volts one dumps hundreds of amps into the other.
Harm:     fire.
Says:     fail.
Cure:     a main fuse at each string; bring them to the same volts before joining.
Ignores:  cells welded side by side inside one pack.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the strings; this loom fuses one."""
    strings = view.facts.job.pack.strings
    verdict = Verdict.PASS if strings == 1 else Verdict.FAIL
    because, offers = "this loom has one main fuse", Span.given(float(strings), "", "strings", "pack.strings")
    needs = Span.fixed(1.0, "", "main fuses in this loom", "this loom")
    return [LoomAnswer("pack", verdict, "strings", str(strings), "1, or a fuse each", because, "", offers, needs)]


RULE = LoomRule(judge)
