"""The 12 V side may only touch the frame through an isolated converter.

Asks:     above 60 V DC, or with a positive earth, the converter is isolated; a common minus at or below 60 V is tight,
          the more so where the frame becomes pack minus.
Why:      a common minus makes everything at 12 V part of the traction circuit: bar switches, lamp shells and
          the frame; one chafed traction lead then shorts through it or a hand does. With a positive earth
          the second bond shorts the converter's output.
Harm:     shock.
Says:     fail, can't tell, tight.
Cure:     an isolated converter, and a test of the isolation at working volts; else the plus fused at the pack, one
          bond in one place, and a written note on the bike.
Ignores:  second bonds through controller, meter, throttle or charger; the build sheet tests for those.
Source:   UN R136 paragraph 2 (high voltage is above 60 V DC) and 5.1.3, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.physics.isolation import is_above_low_voltage
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Ask for isolation; below the line a common minus is tight, never a pass."""
    high = bool(is_above_low_voltage(voltage_v=duty.voltage_v.high))
    framed = "frame" in (duty.word("lamp return"), duty.word("shells"))
    other = Verdict.FAIL if high or duty.word("earth") == "positive" else Verdict.TIGHT
    reason = f"bus up to {duty.voltage_v}, lamps return by {duty.word('lamp return')}, "
    reason += f"earth {duty.word('earth')}{'; the frame becomes pack minus' if framed else ''}"
    return [is_word("isolated", parts.words_of("isolated"), ("yes",), reason, other=other)]


RULE = PartRule(("converter",), judge)
