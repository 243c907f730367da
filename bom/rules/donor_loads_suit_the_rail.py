"""Donor lamps and horns must be made for the 12 V side.

Asks:     a donor of 6 V keeps none of its loads; a horn that ran on AC is tested on DC first; an item of the load's
          name with held and reading settles that.
Why:      a 6 V bulb at 13.5 V bursts; an AC buzzer stays silent on DC.
Harm:     damage.
Says:     fail, can't tell.
Cure:     the same one made for 12 V direct current.
Ignores:  wire, switches and holders of a 6 V donor, which carry half the amps.
Source:   light and life by powers of the volts, lamp practice, from memory; common practice.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.trace import Fact, Origin

RAIL = Fact("12 V DC", "12 V DC", Origin("program", "the 12 V side", note="what this loom feeds"))


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at every load that stays the donor's own."""
    donor, answers = view.facts.job.donor, []
    held = {item.name: item.held for item in donor.items}
    for load in view.facts.job.loads:
        if load.fit != "donor" or load.kind == "electronics":
            continue
        verdict, datum = Verdict.PASS, ""
        tried, minds_dc = held.get(load.name), donor.fed_by_coils(load) and load.kind in ("motor", "LED")
        if donor.supply == "6 V" or (minds_dc and tried is False):
            verdict = Verdict.FAIL
        elif minds_dc and not tried:
            verdict, datum = Verdict.CANT_TELL, f"whether the {load.name} works on direct current (try it, one minute)"
        fed = f"{donor.supply} {'AC' if donor.fed_by_coils(load) else 'DC'}"
        offers = said(fed, "donor.supply")
        answers.append(LoomAnswer(load.name, verdict, "made for", fed, "12 V DC", "the new rail", datum, offers, RAIL))
    return answers


RULE = LoomRule(judge)
