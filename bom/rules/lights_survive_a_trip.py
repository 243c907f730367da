"""The lamps should outlive a trip of the battery management.

Asks:     a buffer battery stands beside the converter.
Why:      when the battery management opens, a bike without one rolls on in the dark.
Harm:     dark.
Says:     tight.
Cure:     a buffer battery of a few amp-hours.
Ignores:  how long it lasts.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for the buffer battery; without it name what goes dark."""
    dark = [entry.load.name for entry in view.facts.budget.loads.values() if {"night", "brake"} & set(entry.load.on)]
    offers = said("yes" if view.facts.job.wishes.buffer_battery else "none", "wishes.buffer_battery")
    if view.facts.job.wishes.buffer_battery:
        return [
            LoomAnswer("12 V supply", Verdict.PASS, "buffer battery", "yes", "yes", "it feeds the lamps", offers=offers)
        ]
    if not dark:
        return []
    return [
        LoomAnswer(
            "12 V supply",
            Verdict.TIGHT,
            "buffer battery",
            "none",
            "one, to ride on",
            f"dark after a trip: {', '.join(dark)}",
            offers=offers,
        )
    ]


RULE = LoomRule(judge)
