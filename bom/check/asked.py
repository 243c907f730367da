"""Asking the rules of one place, and of its pairs, about one part or a table of ways to fill its figures."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.duties.model import Duty
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.judge.compare import HEARSAY
from bom.judge.verdict import Verdict
from bom.loom.model import Link
from bom.parts import Parts
from bom.read.margins import Margins

Grid = npt.NDArray[np.int8]


@dataclass(frozen=True)
class Bench:
    """A place and all that its rules need: its duty, the neighbours that bear on it, the table of its family.

    free  places whose part was chosen: beside a part of which more is known another is chosen
    """

    place: str
    duties: Mapping[str, Duty]
    margins: Margins
    links: Sequence[Link]
    parts: Mapping[str, Parts]
    table: Parts
    free: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Asked:
    """One answer about the part of the place; of a pair, link is what joins it to its neighbour.

    loose  that neighbour is chosen anew, so what it fails with other figures says nothing
    """

    answer: Answer
    subject: str
    link: Link | None
    loose: bool = False

    @property
    def verdict(self) -> Verdict:
        """Give the answer on the part as it is."""
        return Verdict(int(np.ravel(self.answer.judgement.verdicts)[0]))

    def verdicts(self, count: int) -> Grid:
        """Give the answer of each row of the table that was asked."""
        every = np.broadcast_to(np.ravel(self.answer.judgement.verdicts), (count,)).astype(np.int8)
        return np.where(every == Verdict.FAIL, np.int8(Verdict.PASS), every) if self.loose else every

    @property
    def leans(self) -> bool:
        """Tell whether it is untold, or tight for a figure that is hearsay."""
        evidence = self.answer.judgement.evidence
        known = "" if evidence is None else str(np.ravel(evidence)[0])
        return self.verdict == Verdict.CANT_TELL or (self.verdict == Verdict.TIGHT and known in HEARSAY)


def asked(bench: Bench, parts: Parts) -> list[Asked]:
    """Ask every rule of the place, and of the place with each of its neighbours, about one part or a table."""
    duty = bench.duties[bench.place]
    found = [Asked(answer, bench.place, None) for answer in judge_parts(parts, duty, bench.margins)]
    for link in bench.links:
        if bench.place not in (link.first, link.second):
            continue
        pair = {name: bench.parts.get(name) for name in (link.first, link.second)} | {bench.place: parts}
        first, second = pair[link.first], pair[link.second]
        if first is not None and second is not None:
            duties = bench.duties[link.first], bench.duties[link.second]
            answers = judge_pairs(link.kind, first, second, *duties, bench.margins)
            loose = (link.second if bench.place == link.first else link.first) in bench.free
            found += [Asked(answer, f"{link.first} / {link.second}", link, loose) for answer in answers]
    return found
