"""Every operating state can be sustained.

Asks:     with the chosen parts, solved as a circuit, no converter or controller stands below its lowest supply, no
          draw of watts is past its crest, no coil falls below its drop-out volts, and no load that is to be on is
          left dark, in any state.
Why:      on an empty or cold pack the lamps, or the contactor under load, would let go while riding.
Harm:     dark.
Says:     fail, can't tell.
Cure:     what lets go is named: a converter or contactor of lower volts, thicker wire, or a lower controller limit.
          A load that is to burn with the key off needs a feed of its own from ahead of the key.
Ignores:  bursts shorter than the pack's own settling.
Source:   nodal analysis with the quadratic of a constant-power load, circuit theory; states by common practice.
"""

from typing import TYPE_CHECKING

from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step

if TYPE_CHECKING:
    from bom.circuit.standing import Standing


NEEDED = "nothing that lets go"
STARVED = ("the converter lets go", "should be on and has")  # what a converter too small leaves


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each state that collapses, and what goes first; else the lowest bus volts of all."""
    states = view.walks.states
    what = "pack volts"
    answers = [
        LoomAnswer(
            state.state.name,
            Verdict.FAIL if state.settles else Verdict.CANT_TELL,
            what,
            str(_pack_volts(view, state)),
            NEEDED,
            state.collapsed if state.settles else f"with the weakest pack it may be: {state.collapsed}",
            "" if state.settles else view.facts.pack.resistance_ohm.datum,
            _pack_volts(view, state),
            at_fault=("converter",) if any(words in state.collapsed for words in STARVED) else (),
        )
        for state in states
        if state.collapsed
    ]
    if answers or not states:
        return answers
    lowest = min(states, key=lambda state: state.volts("pack plus", "pack minus"))
    volts = _pack_volts(view, lowest)
    because = f"{len(states)} states solved, lowest in: {lowest.state.name}"
    return [LoomAnswer("all states", Verdict.PASS, what, str(volts), NEEDED, because, offers=volts)]


def _pack_volts(view: LoomView, state: "Standing") -> Span:
    """Give the pack's volts in a state: its own less its amps through its ohms."""
    own_v, ohm = view.walks.weakest_pack(state)
    name = state.state.name
    return Span.of(
        state.volts("pack plus", "pack minus"),
        "voltage",
        f"pack volts, {name}",
        lambda: step(
            "U - I * R",
            U=solved(own_v, "voltage", f"the pack's own volts, {state.state.cells}", name),
            I=solved(state.solution.amps["pack"], "current", "pack amps", name),
            R=solved(ohm, "resistance", "pack resistance, weakest", name),
        ),
    )


RULE = LoomRule(judge)
