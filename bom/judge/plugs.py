"""Whether two plugs mate: by body, ways and keying."""

import numpy as np
import numpy.typing as npt

from bom.judge.compare import Demand, Judgement, discounted, pair_evidence
from bom.judge.verdict import Verdict
from bom.parts import Parts

WAYS = {"power_connector": "poles", "signal_connector": "ways"}
Texts = npt.NDArray[np.object_]


def apart(first: Parts, second: Parts, because: str) -> Judgement:
    """Judge a grid of pairs of plugs that must not mate: one difference that is known is enough."""
    numbers = [parts.number(WAYS[parts.family]) for parts in (first, second)]
    texts = [(_words(first, name)[:, None], _words(second, name)[None, :]) for name in ("body", "keying")]
    ways = (numbers[0][:, None], numbers[1][None, :])
    known = [(one != "") & (other != "") for one, other in texts] + [~np.isnan(ways[0] + ways[1])]
    same = [one == other for one, other in texts] + [ways[0] == ways[1]]
    differ = np.logical_or.reduce([told & ~alike for told, alike in zip(known, same, strict=True)])
    verdicts = np.where(differ, Verdict.PASS, np.where(np.logical_and.reduce(known), Verdict.FAIL, Verdict.CANT_TELL))
    offered = tuple(_told(first, index) for index in range(len(first)))
    wanted = f"other than {_told(second, 0)}" if len(second) == 1 else "another body, ways or keying"
    evidence = pair_evidence(first.evidence_of("body"), second.evidence_of("body"))
    blank = np.where(verdicts == Verdict.CANT_TELL, np.nan, 0.0)
    return Judgement(
        "body, ways and keying",
        discounted(verdicts.astype(np.int8), evidence),
        blank,
        Demand.of(0.0, "", because, second.cell("body")),
        "is",
        words=(offered, wanted),
        evidence=evidence,
        trace=first.cell("body"),
    )


def _words(parts: Parts, name: str) -> Texts:
    return np.array(parts.word(name), dtype=object)


def _told(parts: Parts, index: int) -> str:
    """Name a plug's look in words."""
    ways = parts.number(WAYS[parts.family])[index]
    body, keying = parts.word("body")[index] or "body not known", parts.word("keying")[index] or "not known"
    return f"{body}, {ways:g} {WAYS[parts.family]}, keying {keying}"
