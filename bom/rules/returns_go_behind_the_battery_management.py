"""Every return goes behind a battery management that opens the minus.

Asks:     where the battery management opens the minus, nothing returns to the cells' own minus. One that opens the
          plus, or does not say, is asked nothing: there is one minus.
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
BECAUSE = "the low side opens: there it bypasses the cut-off, or floats"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each that returns to the cells' own minus of a pack whose minus opens."""
    pack, place, key = view.facts.job.pack, "battery management", "pack.on_cell_minus"
    if pack.bms.opens != "minus":
        return []
    if pack.on_cell_minus is None:
        return [
            LoomAnswer(place, Verdict.CANT_TELL, "returns", "not known", NEEDED, BECAUSE, "where each minus is joined")
        ]
    if not pack.on_cell_minus:
        met = said("all on the protected minus", key)
        return [LoomAnswer(place, Verdict.PASS, "returns", met.text, NEEDED, BECAUSE, "", met)]
    offers = said("the cells' own minus", key)
    return [
        LoomAnswer(name, Verdict.FAIL, NODES[name], offers.text, NEEDED, BECAUSE, "", offers)
        for name in dict.fromkeys(pack.on_cell_minus)
    ]


RULE = LoomRule(judge)
