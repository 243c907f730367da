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

from collections.abc import Iterator

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.read.registration import PAPERS, QUESTIONS, Registration

WHAT = {
    "title_clear": "title",
    "frame_kept": "frame",
    "inspector_asked": "inspector",
    "power": "motor's power",
    "donor_power": "donor's power",
}
STOPS = {"title_clear": "title not clear", "frame_kept": "frame changed"}
NEEDED = "asked and answered before anything is bought"
DECIDES = "local authority decides"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Give one answer a question: each is found out by itself."""
    return list(_answers(view.facts.job.registration))


def _answers(asked: Registration) -> Iterator[LoomAnswer]:
    for key, (_, datum) in QUESTIONS.items():
        value = getattr(asked, key)
        verdict, shown = Verdict.PASS, "answered"
        if value is None:
            verdict, shown = Verdict.CANT_TELL, "not said"
        elif value is False:
            verdict = Verdict.FAIL if key in STOPS else Verdict.TIGHT
            shown = STOPS.get(key, "not asked yet")
        because = _power(asked) if key.endswith("power") else DECIDES
        lacks = datum if value is None else ""
        offers = said(shown, f"registration.{key}")
        yield LoomAnswer(PAPERS, verdict, WHAT[key], shown, NEEDED, because, lacks, offers)


def _power(asked: Registration) -> str:
    """Set the motor's power beside the donor's, for the authority to judge."""
    motor, donor = (units.show(watts, "power") if watts else "not said" for watts in (asked.power, asked.donor_power))
    return f"motor {motor}, donor {donor}; {DECIDES}"


RULE = LoomRule(judge)
