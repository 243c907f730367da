"""Whatever closes the contactor must wait until the bus is full.

Asks:     it senses the bus up to the highest volts; or it is a timer that can be set to the time allowed, and what
          draws from the bus meanwhile is known.
Why:      a timer knows nothing of a bus that something drags down, and closes on a large step.
Cure:     a bus-sensing closer, or measure the controller's idle watts and enter them.
Ignores:  a controller that closes its own contactor: say so by leaving the contactor to it.
Source:   Formula Student EV 5.7.1 (close on measured volts), read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the sensing range, or the timer's range with the time allowed."""
    senses = np.array([word == "yes" for word in parts.word("senses_bus")])
    blank = np.array([word == "" for word in parts.word("senses_bus")])
    trusted = duty.word("bus load known") == "yes"
    timer_low, timer_high = parts.number("delay_min_s"), parts.number("delay_max_s")
    longest = np.where(senses, np.inf, timer_high if trusted else np.nan)
    shortest = np.where(senses, 0.0, timer_low if trusted else np.nan)
    volts = np.where(senses, parts.number("senses_to_v"), np.inf)
    unknown = np.where(blank, np.nan, 0.0)
    return [
        at_least("volts it senses", volts + unknown, duty.voltage_v),
        at_least("longest delay", longest + unknown, duty.precharge_s),
        at_most("shortest delay", shortest + unknown, duty.precharge_s),
    ]


RULE = PartRule(("closer",), judge)
