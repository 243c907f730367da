"""Control leads must not tie the 12 V side to the pack.

Asks:     a device with leads on the 12 V side (a load's feed, a donor switch) and on the controller keeps the two apart
          inside.
Why:      the controller's leads belong to pack minus. A display or a brake input fed from the lamps' 12 V brings pack
          minus to the frame: one chafed plus then meets a person who holds it.
Harm:     shock.
Says:     fail, can't tell.
Cure:     feed the display from the controller's own output, or through an isolated supply; a brake switch of its own
          for the controller, or a relay whose contact alone joins the two.
Ignores:  the controller's 12 V key input, which is asked of its own.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import Join, Pairing
from bom.read.job_devices import Device
from bom.read.lead_faults import LOOM
from bom.trace import Fact, Origin

WHAT = "pack and 12 V side"
VERDICTS = {True: Verdict.PASS, False: Verdict.FAIL, None: Verdict.CANT_TELL}
WORDS = {True: "kept apart inside", False: "one minus for both", None: "not known"}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at every device that has leads on both sides."""
    leads = view.loom.leads
    return [_answer(device) for device in view.facts.job.devices if _on_both(device, leads)]


def _on_both(device: Device, leads: Pairing) -> bool:
    """Tell whether leads other than bare contacts join the 12 V side and the controller."""
    joins = [join for join in leads.joins_with(device.name) if _is_electric(join, device.name)]
    at_12_v = any(join.second.outside and join.second.device != LOOM for join in joins)
    at_pack = device.kind == "controller" or any(
        join.first.kind == "controller" and not join.second.outside for join in joins
    )
    return at_12_v and at_pack


def _is_electric(join: Join, device: str) -> bool:
    """A switch's contact has no minus; a bare contact of the donor's feeds nothing."""
    return all(end.role != "contact" for end in join.ends if end.device == device or end.outside)


def _answer(device: Device) -> LoomAnswer:
    apart = device.keeps_apart
    offers = Fact(WORDS[apart], apart, Origin("job", "devices.keeps_apart", device.name))
    datum = "" if apart is not None else f"whether the {device.name} ties its 12 V leads to its other leads (ohm-meter)"
    because = "pack and 12 V side must stay apart"
    return LoomAnswer(device.name, VERDICTS[apart], WHAT, offers.text, "kept apart", because, datum, offers)


RULE = LoomRule(judge)
