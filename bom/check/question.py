"""One figure of a part worth asking for, in words: the question to the supplier, and the test on arrival."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from bom.check.trial import Needed
from bom.judge.rule import rules
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.goods_in import NEED, Proves, test_of
from bom.read.questions import quick_way

BY_WORD = "please send its data sheet; known here by word alone"


@dataclass(frozen=True)
class Question:
    """One figure of one part that would change a verdict.

    stands   "bought", "donor", or "left out" for a candidate that would stand at an open place
    places   where it would
    column   of the part's table, or a curve
    blank    True where there is no figure, False where it is known by word alone
    what     the figure as the papers name it
    need     what this bike asks of it
    why      why the rule asks
    ask      what to ask the supplier before ordering
    test     what to do when the part arrives, before it is energised
    proves   whether that test settles it
    passes   the reading to pass, with this bike's figure
    minutes  of the test, a rough estimate
    now      worst verdict of the places as they stand, in words
    then     what it would be with this figure, and all others asked of the part, good
    """

    stands: str
    places: tuple[str, ...]
    family: str
    part_id: str
    name: str
    column: str
    blank: bool
    what: str
    need: str
    why: str
    ask: str
    test: str
    proves: Proves
    passes: str
    minutes: float
    now: str
    then: str

    @property
    def of_supplier(self) -> bool:
        """Tell whether a supplier can be asked."""
        return self.stands != "donor"


def question_of(stands: str, place: str, part: Parts, needed: Needed, catalogue: Catalogue) -> Question:
    """Word a figure that a place needs of a part."""
    waiting = needed.waiting
    said = [finding for finding in waiting if "not known" not in finding.needed] or waiting
    needs = {finding.what: [f.needed for f in said if f.what == finding.what] for finding in said}
    need = "; ".join(f"{what} {' and '.join(dict.fromkeys(asks))}" for what, asks in needs.items())
    what = "; ".join(needs)
    test = test_of(part.family, needed.column, catalogue.goods_in)
    way = quick_way(what, catalogue.find_out)
    return Question(
        stands=stands,
        places=(place,),
        family=part.family,
        part_id=part.ids[0],
        name=part.word("name")[0],
        column=needed.column,
        blank=needed.blank,
        what=what,
        need=need,
        why=_why()[waiting[0].rule],
        ask=_ask(part.family, needed, what, need, catalogue),
        test=test.test if test else way.way,
        proves=test.proves if test else "settles",
        passes=(test.passes if test else NEED).replace(NEED, need),
        minutes=test.minutes if test else way.minutes,
        now=needed.now.word,
        then=needed.then.word,
    )


@cache
def _why() -> Mapping[str, str]:
    return {rule.name: rule.why for rule in rules()}


def _ask(family: str, needed: Needed, what: str, need: str, catalogue: Catalogue) -> str:
    """Word the question to the supplier: the shop's own words where it has them."""
    own = [row.question for row in catalogue.ask_supplier if (row.family, row.column) == (family, needed.column)]
    if not needed.blank:
        return f"{own[0] if own else what}: {BY_WORD}; this bike asks {need}"
    return f"{own[0]}; this bike asks {need}" if own else f"is it so: {need}"
