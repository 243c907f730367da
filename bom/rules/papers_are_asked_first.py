"""The papers are asked about before a cent is spent.

Asks:     title, frame, inspector, and the power of motor and donor are said; the title is clear and the frame as it
          was. An inspector not yet asked is tight.
Why:      a bike that is built and may not be registered is worth its parts.
Cure:     ask the authority that will register it, in writing, before anything is bought; its answer stands over this.
Harm:     order.
Says:     fail, can't tell, tight.
Ignores:  what any authority allows: that differs from place to place, and nothing is claimed here.
Source:   common practice, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.read.registration import QUESTIONS, Registration

STOPS = {"title_clear": "title not clear", "frame_kept": "frame changed"}
NEEDED = "asked and answered before anything is bought"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Give one answer for all the papers."""
    asked = view.facts.job.registration
    stops = {key: words for key, words in STOPS.items() if getattr(asked, key) is False}
    lacking = {key: datum for key, (_, datum) in QUESTIONS.items() if getattr(asked, key) is None}
    decides, datum = next(iter({**stops, **lacking}), "inspector_asked"), ""
    if stops:
        verdict, shown = Verdict.FAIL, ", ".join(stops.values())
    elif lacking:
        verdict, shown, datum = (
            Verdict.CANT_TELL,
            f"{len(lacking)} of {len(QUESTIONS)} not said",
            "; ".join(lacking.values()),
        )
    elif not asked.inspector_asked:
        verdict, shown = Verdict.TIGHT, "inspector not asked yet"
    else:
        verdict, shown = Verdict.PASS, "answered"
    offers = said(shown, f"registration.{decides}")
    return [LoomAnswer("papers", verdict, "papers", shown, NEEDED, _power(asked), datum, offers)]


def _power(asked: Registration) -> str:
    """Set the motor's power beside the donor's, for the authority to judge."""
    motor, donor = (units.show(watts, "power") if watts else "not said" for watts in (asked.power, asked.donor_power))
    return f"motor {motor}, donor {donor}; local authority decides"


RULE = LoomRule(judge)
