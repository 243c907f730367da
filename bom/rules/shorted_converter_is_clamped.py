"""Behind a converter that is not isolated a clamp must stand across the 12 V supply.

Asks:     where the converter shares its minus with the pack, a clamp and the converter's tap fuse stand by. A
          converter known to be isolated needs none; by the seller's word alone it is tight without.
Why:      the switch of a step-down fails short and passes pack volts to lamps, relays and sockets at once: 54.6 V on
          parts that bear 24 V. A fuse on the 12 V side would then stand at pack volts.
Harm:     fire.
Says:     fail, can't tell, tight.
Cure:     an isolated converter; or a clamp across its output: leave wishes.rail_clamp unsaid.
Ignores:  a converter whose regulation drifts up slowly: the clamp heats, fails short and opens the same fuse.
Source:   common practice, no source.
"""

from bom.judge.compare import HEARSAY
from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.taps import RAIL_CLAMP

VERDICTS = {"no": Verdict.FAIL, "yes": Verdict.TIGHT, "": Verdict.CANT_TELL}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for the clamp behind a common minus, and behind one that may be common."""
    facts, part = view.facts, view.parts.get("converter")
    pack_v, bears = facts.pack.highest_bus_v, facts.margins.of("rail_parts_v", "voltage")
    if part is None or pack_v.high <= bears.low:
        return []
    isolated, known = part.word("isolated")[0], str(part.evidence_of("isolated")[0])
    if isolated == "yes" and known not in HEARSAY:
        return []
    what, needed = "volts behind a converter that fails short", f"at most {bears}"
    if RAIL_CLAMP in view.parts:
        held = said("a clamp holds them off", "wishes.rail_clamp")
        because = "its tap fuse opens when the clamp has failed short"
        return [LoomAnswer(RAIL_CLAMP, Verdict.PASS, what, held.text, needed, because, offers=held, needs=bears)]
    how = {"no": "not isolated", "yes": f"isolated, known only as: {known}"}.get(isolated, "not known to be isolated")
    datum, because = "" if isolated else "whether the converter is isolated", f"no clamp; converter {how}"
    told = (str(pack_v), needed, because, datum, pack_v, bears)
    return [LoomAnswer(RAIL_CLAMP, VERDICTS[isolated], what, *told, at_fault=(RAIL_CLAMP, "converter"))]


RULE = LoomRule(judge)
