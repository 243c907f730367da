"""A controller's supply lead must feed everything that hangs on it.

Asks:     its amps are at least the sum of what all leads joined to it draw.
Why:      a 5 V lead good for 40 mA that feeds a meter or lamps too sags or dies, and the throttle dies with it.
Harm:     dark.
Says:     fail, can't tell.
Cure:     feed meters and lamps from the 12 V side; leave the 5 V lead to the throttle.
Ignores:  what a switch passes on to an input: a milliamp or two.
Source:   common practice, no source.
"""

from bom.judge.lead_figures import amps_of
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End, Pairing
from bom.span import Span
from bom.trace import Step

WHAT = "amps of the supply lead"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Sum what hangs on every supply lead of a device."""
    leads = view.loom.leads
    ends = dict.fromkeys(end for join in leads.joins for end in join.ends)
    supplies = [end for end in ends if end.signal.endswith("supply") and not end.outside]
    return [_answer(end, fed) for end in supplies if (fed := _fed(end, leads))]


def _fed(supply: End, leads: Pairing) -> list[End]:
    return [end for join in leads.joins_of(supply) for end in join.ends if end != supply and end.role == "takes"]


def _answer(supply: End, fed: list[End]) -> LoomAnswer:
    known = [amps_of(end.draws_a, end, "draws") for end in fed if end.draws_a is not None]
    total = _together(known)
    unknown = next((end for end in fed if end.draws_a is None), None)
    limit = amps_of(supply.supply_a, supply, "supply") if supply.supply_a is not None else None
    offered, needed = str(limit or "not known"), f"at least {total}" if known else "not known"
    because = ", ".join(end.name for end in fed)
    verdict, datum = Verdict.PASS, ""
    if limit is None:
        verdict, datum = Verdict.CANT_TELL, f"amps the {supply.name} can give (its diagram)"
    elif limit.low < total.high:
        verdict = Verdict.FAIL
    elif unknown is not None:
        verdict, datum = Verdict.CANT_TELL, f"amps the {unknown.name} draws (its sheet, or measured)"
    return LoomAnswer(supply.name, verdict, WHAT, offered, needed, because, datum, limit, total if known else None)


def _together(known: list[Span]) -> Span:
    inputs = {f"I_{number}": span for number, span in enumerate(known, start=1)}
    return Span.of(
        sum(span.high for span in known), "current", "what it feeds", lambda: Step(" + ".join(inputs), inputs)
    )


RULE = LoomRule(judge)
