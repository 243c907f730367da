"""A DC breaker that current crosses both ways must not be polarised.

Asks:     with regeneration or charging through it, the breaker is not polarised.
Why:      asked to open a reversed current, its magnets drive the arc away from the chute.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a two-way breaker, or a path of its own for charging.
Ignores:  link plugs and hand switches without magnets.
Source:   breaker makers' notes on polarised types, read second-hand on a public page; no volt threshold.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts, Words
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag of breakers; other kinds have no magnets."""
    kinds = zip(parts.word("kind"), parts.word("polarised"), strict=True)
    polarised = tuple("no" if kind != "breaker" else flag for kind, flag in kinds)
    return [
        is_word(
            "polarised",
            Words(polarised, parts.evidence_of("polarised"), parts.cell("polarised")),
            ("no",),
            f"{duty.reverse_a} flow the other way",
        )
    ]


RULE = PartRule(("isolator",), judge, only_with=("reverse_a",))
