"""With the key off the controller must not stay at pack volts.

Asks:     a relay opens the precharge path; where its resistor lies across the contactor for good, a hand isolator
          or a pack plug opens the pack: that is tight, and above 60 V DC without either it fails.
Why:      past the open contactor the bus stays full: a shock and a flash for whoever serves it, and a slow drain.
Cure:     a relay in the precharge path; else isolate by hand before every work, and label it.
Harm:     shock.
Says:     fail, tight.
Ignores:  how long the capacitors hold after isolating: see the wait time.
Source:   UN R136 high voltage bus, above 60 V DC, read second-hand on a public page; the rest common practice.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.physics.isolation import is_above_low_voltage


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for what opens the pack where the contactor alone does not."""
    wishes, bus = view.facts.job.wishes, view.facts.pack.highest_bus_v
    if not (wishes.contactor and wishes.precharge):
        return []
    subject, what, needed = "controller", "controller with the key off", "dead"
    if wishes.precharge_switched:
        offers = said("dead", "wishes.precharge_switched")
        return [LoomAnswer(subject, Verdict.PASS, what, "dead", needed, "a relay opens the precharge path", "", offers)]
    by_hand = wishes.isolator if wishes.isolator != "none" else "pack plug" if wishes.pack_plug else ""
    above = bool(is_above_low_voltage(voltage_v=bus.high))
    verdict = Verdict.FAIL if above and not by_hand else Verdict.TIGHT
    shown = f"up to {units.show(bus.high, 'voltage')}"
    opened = f"the {by_hand} alone makes it dead" if by_hand else "nothing opens the pack by hand"
    because = f"the precharge resistor lies across the contactor; {opened}"
    return [LoomAnswer(subject, verdict, what, shown, needed, because, "", bus)]


RULE = LoomRule(judge)
