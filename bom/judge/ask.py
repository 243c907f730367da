"""The verdict of every rule on every candidate of a place, and on every pair that bears on each other."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from bom.duties.model import Duty
from bom.judge.compare import Judgement, worst
from bom.judge.rule import Rule, pair_rules, part_rules
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins

Verdicts = npt.NDArray[np.int8]


@dataclass(frozen=True)
class Answer:
    """One comparison of one rule."""

    rule: Rule
    judgement: Judgement


@lru_cache(maxsize=8192)
def judge_parts(parts: Parts, duty: Duty, margins: Margins) -> tuple[Answer, ...]:
    """Ask every part rule of the family that has something to ask here about all parts at once.

    The same parts are asked for the same duty once, at however many places they stand.
    """
    if not len(parts):
        return ()
    return tuple(
        Answer(rule, judgement)
        for rule, shape in part_rules(parts.family)
        if duty.has(*shape.only_with)
        for judgement in shape.judge(parts, duty, margins)
    )


@lru_cache(maxsize=8192)
def judge_pairs(
    link: str, first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins
) -> tuple[Answer, ...]:
    """Ask every pair rule of a link that has something to ask here about all pairs at once."""
    return tuple(
        Answer(rule, judgement)
        for rule, shape in pair_rules(link)
        if second_duty.has(*shape.only_with)
        for judgement in shape.judge(first, second, first_duty, second_duty, margins)
    )


@lru_cache(maxsize=8192)
def passing(parts: Parts, duty: Duty, margins: Margins, worst_allowed: Verdict) -> tuple[int, ...]:
    """List the parts that no part rule answers worse than this."""
    answers = verdicts(judge_parts(parts, duty, margins), (len(parts),))
    return tuple(int(index) for index in np.flatnonzero(answers <= worst_allowed))


def verdicts(answers: Sequence[Answer], shape: tuple[int, ...]) -> Verdicts:
    """Take the worst answer for each part or pair; where nothing was asked there is nothing against it."""
    if not answers:
        return np.full(shape, Verdict.NOT_ASKED, dtype=np.int8)
    return np.broadcast_to(worst([answer.judgement for answer in answers]), shape)
