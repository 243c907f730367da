"""Packs joined in parallel each need a fuse of their own.

Asks:     there is one string, or the loom has a fuse for each.
Why:      joined at unequal volts one dumps hundreds of amps into the other.
Cure:     a main fuse at each string; bring them to the same volts before joining.
Ignores:  cells welded side by side inside one pack.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the strings; this loom fuses one."""
    strings = view.facts.job.pack.strings
    verdict = Verdict.PASS if strings == 1 else Verdict.FAIL
    return [LoomAnswer("pack", verdict, "strings", str(strings), "1, or a fuse each", "this loom has one main fuse")]


RULE = LoomRule(judge)
