"""A switch of several fused circuits must have a contact for each.

Asks:     a switch that feeds loads of more than one circuit has at least as many separate contacts.
Why:      one contact that joins two fuses feeds each circuit through both: a short blows neither in time, and
          pulling one fuse leaves its wires live.
Harm:     fire.
Says:     fail, can't tell.
Cure:     put what one contact feeds into one circuit; or a relay for the second.
Ignores:  a switch that is replaced: choose one with the contacts counted here.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.low_volt import circuit_of
from bom.read.job import Item
from bom.span import Span
from bom.trace import Origin


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the circuits behind each switch."""
    circuits = {load.name: circuit_of(load) for load in view.facts.job.loads}
    answers = []
    for item in view.facts.job.donor.items:
        behind = list(dict.fromkeys(circuits[name] for name in item.feeds))
        if len(behind) > 1:
            answers.append(_answer(item, behind))
    return answers


def _answer(item: Item, behind: list[str]) -> LoomAnswer:
    verdict, offered, datum = Verdict.PASS, f"{item.contacts}", ""
    if item.contacts is None:
        verdict, offered = Verdict.CANT_TELL, "not known"
        datum = f"how many separate contacts the {item.name} has"
    elif item.contacts < len(behind):
        verdict = Verdict.FAIL
    needed, because = f"at least {len(behind)}", f"it feeds the {', the '.join(behind)}"
    what = f"contacts of the {item.name}"
    offers = Span.given(float(item.contacts), "", what, "donor.items.contacts", item.name) if item.contacts else None
    needs = Span.of(float(len(behind)), "", "circuits behind it", Origin("job", "donor.items.feeds", item.name))
    return LoomAnswer(f"switch {item.name}", verdict, what, offered, needed, because, datum, offers, needs)


RULE = LoomRule(judge)
