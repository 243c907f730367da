"""With the key off the controller must not stay at pack volts.

Asks:     a contactor opens with the key, and a relay opens the precharge path with it. Where nothing but a plug, a
          hand switch or a breaker closes the pack, or the precharge resistor lies across the contactor for good, the
          controller stays at pack volts: tight where a hand isolator or a pack plug makes it dead; above 60 V DC
          without either it fails.
Why:      the bus stays full: a shock and a flash for whoever serves it, and a slow drain.
Cure:     a contactor, and a relay in its precharge path; else isolate by hand before every work, and label it.
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
from bom.read.job import Wishes

SUBJECT, WHAT, NEEDED = "controller", "controller with the key off", "dead"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for what opens the pack with the key; where nothing does, for what opens it by hand."""
    wishes, bus = view.facts.job.wishes, view.facts.pack.highest_bus_v
    if wishes.contactor and not wishes.bus_stays_live:
        path = "a relay opens the precharge path" if wishes.precharge else "nothing lies across the open contactor"
        offers = said("dead", "wishes.precharge_switched" if wishes.precharge else "wishes.contactor")
        return [LoomAnswer(SUBJECT, Verdict.PASS, WHAT, "dead", NEEDED, path, "", offers)]
    by_hand = _by_hand(wishes)
    above = bool(is_above_low_voltage(voltage_v=bus.high))
    verdict = Verdict.FAIL if above and not by_hand else Verdict.TIGHT
    shown = f"up to {units.show(bus.high, 'voltage')}"
    live = "the precharge resistor lies across the contactor" if wishes.contactor else "no contactor opens with the key"
    opened = f"the {by_hand} alone makes it dead" if by_hand else "nothing opens the pack by hand"
    return [LoomAnswer(SUBJECT, verdict, WHAT, shown, NEEDED, f"{live}; {opened}", "", bus)]


def _by_hand(wishes: Wishes) -> str:
    """Name what opens the pack by hand; nothing is an empty word."""
    if wishes.isolator != "none":
        return wishes.isolator
    return "pack plug" if wishes.pack_plug else ""


RULE = LoomRule(judge)
