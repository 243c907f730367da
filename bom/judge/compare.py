"""The comparisons every rule is made of: one line judges one part, a column, or a grid of pairs.

A blank rating is NaN and is answered "can't tell", never pass. A duty that is only known to
lie between two ends passes when its bad end does, fails when even its good end does, and is
"can't tell" between. Equality meets. A rating that is only the seller's word, or of unknown
origin, is "tight" at best.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from bom.judge.verdict import Verdict
from bom.parts import Rating, Words
from bom.span import Span
from bom.trace import Trace

Column = npt.NDArray[np.float64]
Verdicts = npt.NDArray[np.int8]
Texts = npt.NDArray[np.object_]
Blank = Verdict | Verdicts
_PASS, _TIGHT, _FAIL, _UNTOLD = (np.int8(v) for v in (Verdict.PASS, Verdict.TIGHT, Verdict.FAIL, Verdict.CANT_TELL))
HEARSAY = ("seller's word", "unknown")


@dataclass(frozen=True)
class Demand:
    """What is asked, when it differs from part to part (a wire must hold whichever fuse guards it)."""

    low: Column
    high: Column
    dimension: str
    because: str
    datum: str = ""
    trace: Trace | None = None

    @classmethod
    def of(cls, values: object, dimension: str, because: str, trace: Trace | None = None) -> "Demand":
        """Ask a value of each part that is known exactly, or NaN where it is not; trace is of the first."""
        column = np.asarray(values, dtype=np.float64)
        return cls(column, column, dimension, because, "", trace)

    @classmethod
    def from_span(cls, span: Span) -> "Demand":
        """Ask the same of every part."""
        return cls(np.asarray(span.low), np.asarray(span.high), span.dimension, span.because, span.datum, span.trace)


@dataclass(frozen=True)
class Judgement:
    """What was compared, and the answer for each part (or pair) of the column (or grid).

    what      the rating's name as the papers print it ("DC volts")
    offered   the rating of each part, NaN where it is not known
    needed    the duty
    sense     "at least", "at most" or "is"
    margin    fraction asked on top of the duty before a pass is clean
    words     for comparisons of words: what is offered, and what is accepted, as printed
    evidence  how each rating is known; None where the rule works it out from several
    trace     where the first rating, or the first word, comes from; that of the duty is with the duty
    wanted    the margin as a figure that knows where it comes from, where it does
    """

    what: str
    verdicts: Verdicts
    offered: Column
    needed: Demand
    sense: str
    margin: float = 0.0
    words: tuple[tuple[str, ...], str] = ((), "")
    evidence: Texts | None = None
    trace: Trace | None = None
    wanted: Span | None = None


def _judge(
    what: str, offered: object, needed: Span | Demand, wanted: float | Span, blank: Blank, *, sense: str
) -> Judgement:
    margin, traced = (wanted.low, wanted) if isinstance(wanted, Span) else (wanted, None)
    demand = Demand.from_span(needed) if isinstance(needed, Span) else needed
    evidence, trace = (offered.evidence, offered.trace) if isinstance(offered, Rating) else (None, None)
    raw = offered.values if isinstance(offered, Rating) else offered
    values = np.atleast_1d(np.asarray(raw, dtype=np.float64))
    if sense == "at least":
        bad, good = values < demand.low, values >= demand.high
        clean = values >= demand.high * (1 + margin)
    else:
        bad, good = values > demand.high, values <= demand.low
        clean = values <= demand.low * (1 - margin)
    answers = np.where(good, np.where(clean, _PASS, _TIGHT), np.where(bad, _FAIL, _UNTOLD))
    answers = np.where(np.isnan(demand.low + demand.high), _UNTOLD, answers)
    verdicts = np.where(np.isnan(values), np.int8(blank), answers)
    return Judgement(
        what,
        discounted(verdicts, evidence),
        values,
        demand,
        sense,
        margin,
        evidence=evidence,
        trace=trace,
        wanted=traced,
    )


def discounted(verdicts: Verdicts, evidence: Texts | None) -> Verdicts:
    """Let a rating that is only hearsay reach "tight", never a clean pass."""
    if evidence is None:
        return verdicts
    hearsay = _hearsay(evidence)
    if not hearsay.any():
        return verdicts
    return np.where(hearsay & (verdicts == _PASS), _TIGHT, verdicts)


def _hearsay(evidence: Texts) -> npt.NDArray[np.bool_]:
    return np.asarray((evidence == HEARSAY[0]) | (evidence == HEARSAY[1]), dtype=np.bool_)


def at_least(
    what: str,
    offered: object,
    needed: Span | Demand,
    *,
    margin: float | Span = 0.0,
    blank: Blank = Verdict.CANT_TELL,
) -> Judgement:
    """Judge a rating that must reach the duty; `margin` is the fraction wanted on top of it."""
    return _judge(what, offered, needed, margin, blank, sense="at least")


def at_most(
    what: str,
    offered: object,
    needed: Span | Demand,
    *,
    margin: float | Span = 0.0,
    blank: Blank = Verdict.CANT_TELL,
) -> Judgement:
    """Judge a rating that must stay below the duty; `margin` is the fraction wanted beneath it."""
    return _judge(what, offered, needed, margin, blank, sense="at most")


def is_word(
    what: str,
    offered: Sequence[str] | Words,
    accepted: Sequence[str],
    because: str,
    *,
    blank: Verdict = Verdict.CANT_TELL,
    other: Verdict = Verdict.FAIL,
    asked: Trace | None = None,
) -> Judgement:
    """Judge a rating that is a word: one of the accepted ones passes, a blank is not known.

    asked  where the accepted word comes from, where the rule itself does not set it
    """
    evidence, trace = (offered.evidence, offered.trace) if isinstance(offered, Words) else (None, None)
    values = offered.values if isinstance(offered, Words) else tuple(offered)
    wanted = list(dict.fromkeys(word for word in accepted if word))
    answers = [blank if not word else Verdict.PASS if word in wanted else other for word in values]
    numbers = np.array([0.0 if word else np.nan for word in values])
    verdicts = discounted(np.array(answers, dtype=np.int8), evidence)
    words = (values, " or ".join(wanted))
    return Judgement(what, verdicts, numbers, Demand.of(0.0, "", because, asked), "is", 0.0, words, evidence, trace)


def same_word(what: str, left: Words, right: Words | str, because: str) -> Judgement:
    """Judge a grid of pairs whose words must agree: rows are the left parts, columns the right ones.

    A plain word on the right is asked of every left part.
    """
    wanted = right.values if isinstance(right, Words) else (right,)
    a, b = np.array(left.values, dtype=object)[:, None], np.array(wanted, dtype=object)[None, :]
    unknown = (a == "") | (b == "")
    verdicts = np.where(unknown, _UNTOLD, np.where(a == b, _PASS, _FAIL))
    evidence = pair_evidence(left.evidence, right.evidence) if isinstance(right, Words) else left.evidence[:, None]
    numbers = np.where(a == "", np.nan, 0.0).astype(np.float64)
    asked = Demand.of(np.where(b == "", np.nan, 0.0), "", because, right.trace if isinstance(right, Words) else None)
    words = (left.values, (wanted[0] or "not known") if len(wanted) == 1 else "")
    return Judgement(what, discounted(verdicts, evidence), numbers, asked, "is", 0.0, words, evidence, left.trace)


def pair_evidence(left: Texts, right: Texts) -> Texts:
    """Tell how each pair of a grid is known: as the right part where that is hearsay, else as the left one."""
    other = np.broadcast_to(right[None, :], (len(left), len(right)))
    return np.where(_hearsay(other), other, left[:, None])


def softened(judgement: Judgement) -> Judgement:
    """Let a shortfall count as tight: where less is worse, not dangerous."""
    soft = np.where(judgement.verdicts == _FAIL, _TIGHT, judgement.verdicts)
    return replace(judgement, verdicts=soft)


def worst(judgements: Sequence[Judgement]) -> Verdicts:
    """Take the worst answer for each part or pair over several comparisons."""
    out: Verdicts = judgements[0].verdicts
    for judgement in judgements[1:]:
        out = np.maximum(out, judgement.verdicts)
    return out
