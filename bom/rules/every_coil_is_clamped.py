"""Every coil must have its kick taken: by suppression of its own or by a clamp across it.

Asks:     each relay and contactor across whose coil no clamp stands says that it is suppressed; a seller's word for it
          is tight.
Why:      a bare coil throws a thousand volts back at the key, the closer and the controller.
Harm:     damage.
Says:     fail, can't tell, tight.
Cure:     a two-way clamp across it.
Ignores:  whether the clamp suits, which is asked of the clamp.
Source:   relay makers' notes, read second-hand on a public page.
"""

from bom.judge.compare import HEARSAY
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

ANSWERS = {"yes": Verdict.PASS, "no": Verdict.FAIL, "": Verdict.CANT_TELL}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at each coil across which no clamp stands."""
    clamps = {link.second: link.first for link in view.loom.links if link.kind == "clamps"}
    found = []
    for name, part in view.parts.items():
        if part.family in ("relay", "contactor") and clamps.get(name) not in view.parts:
            word = part.first_word("suppressed")
            datum = "" if word.value else f"whether the coil of the {name} is suppressed"
            because = "no clamp stands across its coil"
            verdict, known = ANSWERS[str(word.value)], part.evidence_of("suppressed")[0]
            if verdict == Verdict.PASS and known in HEARSAY:
                verdict, because = Verdict.TIGHT, f"{because}; its own is known only as: {known}"
            open_place = (clamps[name],) if name in clamps else ()
            found.append(
                LoomAnswer(
                    name, verdict, "suppressed", word.text, "yes", because, datum, offers=word, at_fault=open_place
                )
            )
    return found


RULE = LoomRule(judge)
