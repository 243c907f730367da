"""What sits in the open must keep splashing water out.

Asks:     the second digit of its IP code is at least that of its zone: 4 (splash from all sides) in the frame and at
          the bar; in the closed box and under the seat nothing is asked.
Why:      the tracks between wet terminals at pack volts carry current, char and burn; at 12 V the contacts corrode,
          and the bike stops miles from home.
Cure:     the sealed one of the same size; or move it into the box.
Ignores:  dust, the first digit; how a plug is hung; what a pressure washer does. A holder that is used once, at the
          first closing.
Source:   IEC 60529 and ISO 20653, second digits 4 (splash), 5 and 6 (jets), 7 and 8 (under water, which prove no
          jets), 9K; from memory. Which zone asks which is common practice, no source.
Harm:     fire.
Says:     fail, can't tell, tight.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ip_code import water_digits
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the water digit."""
    return [at_least("water digit of its IP code", water_digits(parts, duty.water_x.high), duty.water_x)]


RULE = PartRule(
    ("fuse_holder", "fuse_box", "power_connector", "signal_connector", "charge_port", "charger", "pilot_lamp"),
    judge,
    only_with=("water_x",),
)
