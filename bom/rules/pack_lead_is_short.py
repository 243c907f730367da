"""The wire between the pack and its fuse must be short.

Asks:     the run from pack plus to the main fuse is at most the length set, 200 mm.
Why:      no fuse guards this wire; chafed, it burns with everything the pack can give.
Harm:     fire.
Says:     fail.
Cure:     move the fuse to the pack's terminal.
Ignores:  sleeving and a cover, which it needs too.
Source:   common practice 200 mm; ABYC E-11 says 7 in (178 mm) from the battery, from memory.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.lengths import length_figure


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the length of the unfused wire."""
    wire, limit_m = view.loom.wire("pack lead"), view.facts.margins.unfused_m
    verdict = Verdict.PASS if wire.length_m <= limit_m else Verdict.FAIL
    return [
        LoomAnswer(
            "pack lead",
            verdict,
            "unfused length",
            units.show(wire.length_m, "length"),
            f"at most {units.show(limit_m, 'length')}",
            "no fuse guards it; ABYC E-11 says 7 in, 178 mm",
            offers=length_figure(wire.length_m, "pack plus to the main fuse", wire.name),
            needs=view.facts.margins.of("unfused_m", "length"),
        )
    ]


RULE = LoomRule(judge)
