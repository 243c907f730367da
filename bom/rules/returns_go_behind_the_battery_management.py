"""Every return goes behind a battery management that opens the minus.

Asks:     where the battery management opens the minus, nothing returns to the cells' own minus.
Why:      what returns there goes on drawing, or charging, when the management has opened: the cut-off is bypassed,
          and what is joined to both minuses carries the bike's amps through thin wire.
Cure:     move that return to the protected minus; only the management itself sits on the cells' minus.
Harm:     fire.
Says:     fail, can't tell.
Ignores:  its balancing wires, and a management that opens both poles, which counts as minus.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

NODES = {
    "converter": "converter minus",
    "charger": "charge port minus",
    "controller": "controller minus",
    "meter": "meter minus",
}
NEEDED = "behind the battery management, on the protected minus"
VERDICTS = {"minus": Verdict.FAIL, "plus": Verdict.PASS, None: Verdict.CANT_TELL}
BECAUSE = {
    "minus": "the low side opens: there it bypasses the cut-off, or floats",
    "plus": "the plus opens: both minuses are one",
    None: "behind a management that opens the minus it would bypass the cut-off",
}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each that returns to the cells' own minus."""
    pack = view.facts.job.pack
    opens = pack.bms.opens
    if not pack.on_cell_minus:
        return [LoomAnswer("battery management", Verdict.PASS, "minus", "one", NEEDED, "all returns meet at one minus")]
    datum = "" if opens else "which pole the battery management opens"
    offers = said("the cells' own minus", "pack.on_cell_minus")
    return [
        LoomAnswer(name, VERDICTS[opens], NODES[name], offers.text, NEEDED, BECAUSE[opens], datum, offers)
        for name in dict.fromkeys(pack.on_cell_minus)
    ]


RULE = LoomRule(judge)
