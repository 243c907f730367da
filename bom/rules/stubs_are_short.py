"""The stubs between the post and the tap fuses must be short.

Asks:     their length is at most the length set, 200 mm.
Why:      only the main fuse guards them; a thin wire burns long before it opens.
Harm:     fire.
Says:     fail.
Cure:     mount the tap fuse holders beside the post.
Ignores:  sleeving, which they need too.
Source:   common practice 200 mm; ABYC E-11 says 7 in (178 mm), from memory.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the length of the stubs."""
    length_m, limit_m = view.facts.job.runs.tap_stub, view.facts.margins.unfused_m
    verdict = Verdict.PASS if length_m <= limit_m else Verdict.FAIL
    return [
        LoomAnswer(
            "tap stubs",
            verdict,
            "unfused length",
            units.show(length_m, "length"),
            f"at most {units.show(limit_m, 'length')}",
            "only the main fuse guards them",
            offers=Span.given(length_m, "length", "post of the taps to each tap fuse", "runs.tap_stub"),
            needs=view.facts.margins.of("unfused_m", "length"),
        )
    ]


RULE = LoomRule(judge)
