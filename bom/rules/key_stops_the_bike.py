"""With the key off, nothing may keep the contactor's coil fed.

Asks:     with the key at pack volts there is no buffer battery on the coils' supply.
Why:      the key opens the converter's feed, the buffer battery goes on holding the coils, and the bike stays live.
Harm:     runaway.
Says:     fail.
Cure:     the key at 12 V through relays, or no buffer battery.
Ignores:  the stop switch, which still opens the coils.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for a battery behind the key's back."""
    buffer = view.facts.job.wishes.buffer_battery
    bad = buffer and view.facts.key_at_pack
    offered = "a buffer battery" if bad else "only what the key feeds"
    verdict = Verdict.FAIL if bad else Verdict.PASS
    return [
        LoomAnswer(
            "key switch",
            verdict,
            "what feeds the coils",
            offered,
            "nothing with the key off",
            f"key at {view.facts.key_at}",
            offers=said(offered, "wishes.buffer_battery"),
        )
    ]


RULE = LoomRule(judge)
