"""A part must hold off the highest direct-current volts of its circuit.

Asks:     the part's DC volts are at least the highest volts of the circuit it sits in.
Why:      an open fuse or contact that cannot hold the volts keeps arcing and burns; an AC figure says
          nothing about DC, and the pack's label says less than its full charge.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a part marked with DC volts at or above the highest bus volts.
Ignores:  AC ratings; creepage and clearance on the builder's own board.
Source:   ISO 8820-1 (a fuse's volts are a marking of their own), read second-hand on a public page;
          IEC 60947-1 rated operational voltage, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the DC volts."""
    return [at_least("DC volts", parts.rating("dc_volts_v"), duty.voltage_v)]


RULE = PartRule(
    (
        "main_fuse",
        "tap_fuse",
        "blade_fuse",
        "fuse_holder",
        "fuse_box",
        "contactor",
        "relay",
        "key_switch",
        "stop_switch",
        "cap_switch",
        "bar_switch",
        "isolator",
        "power_connector",
        "signal_connector",
        "end_cap",
        "precharge_resistor",
        "charge_port",
        "post",
        "splice",
        "tail",
    ),
    judge,
    only_with=("voltage_v",),
)
