"""Turning the key must wake every coil: none may wait for its own contact.

Asks:     walked from parked, with the key on, each relay and the contactor gets its pull-in volts.
Why:      a coil fed through its own contact, or a converter woken by its own output, never starts.
Cure:     feed the coil named from ahead of the contact it waits for.
Ignores:  a controller that refuses to drive for reasons of its own.
Source:   circuit theory; pull-in volts as on each coil's sheet, else 75 % of its volts (IEC 61810-1, from memory).
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


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
            _reason(stuck.coil, stuck.waits_for),
            offers=solved(
                stuck.volts, "voltage", f"volts at the coil of the {stuck.coil}", "key on, walked from parked"
            ),
            needs=solved(stuck.needs_v, "voltage", "pull-in volts", stuck.coil),
        )
        for stuck in waking.stuck
    ]


def _reason(coil: str, waits_for: str) -> str:
    if waits_for == coil:
        return f"deadlock: the {coil} is fed through its own contact"
    return f"it waits for the {waits_for}" if waits_for else "nothing feeds it"


RULE = LoomRule(judge)
