"""Turning the key must wake every coil: none may wait for its own contact.

Asks:     walked from parked, with the key on, each relay and the contactor gets its pull-in volts.
Why:      a coil fed through its own contact, or a converter woken by its own output, never starts.
Harm:     stranded.
Says:     fail.
Cure:     feed the coil named from ahead of the contact it waits for.
Ignores:  a controller that refuses to drive for reasons of its own.
Source:   circuit theory; pull-in volts as on each coil's sheet, else 75 % of its volts (IEC 61810-1, from memory).
"""

from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

if TYPE_CHECKING:
    from bom.circuit.waking import Stuck

NO_FEED_V = 6.0  # half of a coil's 12 V: less is no feed worth the name, as for a lamp that is out


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each coil that stays out, and what it waits for; else the steps."""
    waking = view.walks.waking
    if waking is None or not ({"contactor", "load relay", "key input relay"} & set(view.parts)):
        return []
    if not waking.stuck:
        steps = ", then ".join(step.what for step in waking.steps)
        return [LoomAnswer("starting order", Verdict.PASS, "coils that wake", "all", "all", steps)]
    return [
        LoomAnswer(
            stuck.coil,
            Verdict.FAIL,
            "volts at the coil with the key on",
            units.show(stuck.volts, "voltage"),
            f"at least {units.show(stuck.needs_v, 'voltage')}",
            _reason(stuck),
            offers=solved(
                stuck.volts, "voltage", f"volts at the coil of the {stuck.coil}", "key on, walked from parked"
            ),
            needs=solved(stuck.needs_v, "voltage", "pull-in volts", stuck.coil),
        )
        for stuck in waking.stuck
    ]


def _reason(stuck: "Stuck") -> str:
    if stuck.waits_for == stuck.coil:
        return f"deadlock: the {stuck.coil} is fed through its own contact"
    if stuck.waits_for:
        return f"it waits for the {stuck.waits_for}"
    return "nothing feeds it" if stuck.volts < NO_FEED_V else "its volts are too low"


RULE = LoomRule(judge)
