"""Whatever closes the contactor must wait until the bus is full.

Asks:     it senses the bus up to the highest volts and compares it with the pack's; or it is a timer that can be
          set to the time allowed, and what draws from the bus meanwhile is known. One that senses gives up within
          the time allowed. With a buffer battery it must sense. Either lets the precharge relay go when it closes
          the contactor or gives up.
Why:      a timer knows nothing of a bus that something drags down, and closes on a large step; a precharge relay that
          stays closed leaves its resistor across whatever is wrong.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a bus-sensing closer; for a timer, measure the controller's idle watts and enter them; or allow the filling
          another precharge_time.
Ignores:  a controller that closes its own contactor: say so by leaving the contactor to it.
Source:   Formula Student EV 5.7.1 (close on measured volts), read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts, Words
from bom.read.margins import Margins
from bom.trace import Origin, Trace

HELD = "a buffer battery holds the coils while the pack is unplugged, and a timer closes on an empty bus"


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the sensing range, or the timer's range with the time allowed."""
    senses = np.array([word == "yes" for word in parts.word("senses_bus")])
    known = np.where([word == "" for word in parts.word("senses_bus")], np.nan, 0.0)
    trusted = 0.0 if duty.word("bus load known") == "yes" else np.nan
    volts, longest, shortest, gives_up = (
        parts.rating(name) for name in ("senses_to_v", "delay_max_s", "delay_min_s", "gives_up_s")
    )
    compared = tuple(
        "yes" if not sensing else word for sensing, word in zip(senses, parts.word("compares_with_pack"), strict=True)
    )
    held = [is_word("senses the bus", parts.words_of("senses_bus"), ("yes",), HELD)]
    return [
        *(held if duty.word("buffer") == "yes" else []),
        at_least(
            "volts it senses",
            volts.with_values(np.where(senses, volts.values, np.inf) + known, _source(parts, duty, "senses_to_v")),
            duty.voltage_v,
        ),
        at_least(
            "longest delay",
            longest.with_values(
                np.where(senses, np.inf, longest.values + trusted) + known, _source(parts, duty, "delay_max_s")
            ),
            duty.precharge_s,
        ),
        at_most(
            "shortest delay",
            shortest.with_values(
                np.where(senses, 0.0, shortest.values + trusted) + known, _source(parts, duty, "delay_min_s")
            ),
            duty.precharge_s,
        ),
        at_most(
            "time after which it gives up",
            gives_up.with_values(np.where(senses, gives_up.values, 0.0) + known, _source(parts, duty, "gives_up_s")),
            duty.precharge_s,
        ),
        is_word(
            "compares the bus with the pack",
            Words(compared, parts.evidence_of("compares_with_pack"), parts.cell("compares_with_pack")),
            ("yes",),
            "a fixed threshold closes early on a full pack, never on an empty one",
        ),
        is_word(
            "lets the precharge relay go",
            parts.words_of("lets_precharge_go"),
            ("yes",),
            "its resistor is made for seconds",
        ),
    ]


def _source(parts: Parts, duty: Duty, column: str) -> Trace:
    """Name what a figure hangs on: the column, or the kind of closer or the job's silence that overrules it."""
    senses, timed = parts.word("senses_bus")[0], column.startswith("delay_")
    if not senses or (senses == "yes") == timed:
        return parts.decided_by("senses_bus")
    if timed and duty.word("bus load known") != "yes":
        return Origin("job", "controller.standby", note="not said, so a timer cannot be judged")
    return parts.cell(column)


RULE = PartRule(("closer",), judge)
