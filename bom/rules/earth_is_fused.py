"""Fuses must stand in the live wire.

Asks:     with a positive earth no lamp returns through the frame.
Why:      this loom fuses the plus; where plus is the frame, the live minus wires have no fuse, and a chafed one burns.
Harm:     fire.
Says:     fail.
Cure:     make the earth negative (every polarity-bound part changes), or give every lamp a return wire.
Ignores:  machines with both poles off the frame.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.returns import is_wired


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at earth and returns."""
    donor, wired = view.facts.job.donor, is_wired(view.facts.job)
    verdict = Verdict.FAIL if donor.earth == "positive" and not wired else Verdict.PASS
    back = "wire" if wired else "frame"
    return [
        LoomAnswer(
            "12 V side",
            verdict,
            "earth and lamp return",
            f"{donor.earth}, {back}",
            "negative, or returns by wire",
            "the fuses stand in the plus",
            offers=said(f"{donor.earth}, {back}", "donor.earth"),
        )
    ]


RULE = LoomRule(judge)
