"""The lamps should outlive a trip of the battery management.

Asks:     the builder says whether they must; a buffer battery stands beside the converter. Its size is worked out
          either way: amps lit by night for ten minutes, times 1.5.
Why:      when the battery management opens, a bike without one rolls on in the dark.
Harm:     dark.
Says:     can't tell, tight.
Cure:     say wishes.buffer_battery = true, and a buffer battery of that size is bought; or false, and roll on dark.
Ignores:  coils and electronics that stay on with the key; the factor of 1.5 is to hold them, with age and cold.
Source:   common practice, no source.
"""

from bom.duties.after_trip import after_trip_ah, lit_by_night
from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

SUBJECT, WHAT, KEY = "12 V supply", "buffer battery", "wishes.buffer_battery"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for the buffer battery; without it name what goes dark, and the size that would light it."""
    wish, dark = view.facts.job.wishes.buffer_battery, lit_by_night(view.facts)
    if wish:
        offers = said("yes", KEY)
        return [LoomAnswer(SUBJECT, Verdict.PASS, WHAT, "yes", "yes", "it feeds the lamps", offers=offers)]
    if not dark:
        return []
    needs = after_trip_ah(view.facts)
    because = f"{needs.because}; dark after a trip: {', '.join(dark)}"
    needed = f"one of {needs}, to ride on"
    if wish is None:
        offers, datum = said("not said", KEY), f"whether the lamps must outlive a trip: {KEY}"
        return [
            LoomAnswer(SUBJECT, Verdict.CANT_TELL, WHAT, "not said", needed, because, datum, offers=offers, needs=needs)
        ]
    offers, cure = said("none", KEY), f"a buffer battery of {needs}: {KEY} = true"
    return [LoomAnswer(SUBJECT, Verdict.TIGHT, WHAT, "none", needed, because, offers=offers, needs=needs, cure=cure)]


RULE = LoomRule(judge)
