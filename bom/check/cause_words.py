"""A cause in words: the numbers that decide, what is alike, what else its cure must meet."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from bom.check.causes import Cause
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict

DATA_SHEET = "data sheet"
EACH = "alike at each place"


@dataclass(frozen=True)
class Line:
    """One comparison of a cause, at all the places it is made, or one open place.

    verdict  of all of them
    text     the numbers of the first, and the places of the others
    keys     of each, as `why` takes it; none of an open place
    first    the first finding; None of an open place
    cure     what helps, where no line before it says so; "" elsewhere
    """

    verdict: Verdict
    text: str
    keys: tuple[str, ...]
    first: Finding | None
    cure: str = ""


def cause_lines(cause: Cause) -> list[Line]:
    """Tell a cause in lines, the one that decides first."""
    made: dict[tuple[Verdict, str, str], list[Finding]] = {}
    for finding in cause.findings:
        made.setdefault((finding.verdict, finding.rule, finding.what), []).append(finding)
    found = [_line(cause, alike) for alike in made.values()]
    lone = len(cause.holes) == 1 and not cause.decides and not cause.asks
    left = [
        Line(hole.verdict, hole.sentence if lone else f"{hole.title}: {hole.sentence}", (), None)
        for hole in cause.holes
    ]
    return _cured(cause, [*found, *left] if cause.decides else [*left, *found])


def _cured(cause: Cause, lines: Sequence[Line]) -> list[Line]:
    """Give each line the cure that no line before it gave; one figure that lacks settles all its answers."""
    told, out = {cause.cure}, []
    for line in lines:
        cure = line.first.cure if line.first and not cause.asks else ""
        out.append(replace(line, cure="" if cure in told else cure))
        told.add(cure)
    return out


def places_words(cause: Cause) -> str:
    """Name the places of a part that stands at several; "" elsewhere: the lines name them."""
    return f"Places: {', '.join(cause.places)}." if _many(cause) else ""


def known_by(finding: Finding) -> str:
    """Say how a rating is known, where that is no data sheet and no figure lacks."""
    told = finding.part and not finding.datum and finding.evidence != DATA_SHEET
    return f"Known by: {finding.evidence}." if told else ""


def cause_data(cause: Cause) -> Mapping[str, object]:
    """Give a cause as plain data; its findings by their keys."""
    return {
        "title": cause.title,
        "verdict": cause.verdict.word,
        "harm": cause.harm.word,
        "cure": cause.cure,
        "find_out": list(cause.data),
        "places": list(cause.places),
        "open_places": [hole.place.name for hole in cause.holes],
        "findings": list(dict.fromkeys(finding.key for finding in cause.findings)),
        "count": cause.count,
    }


def _line(cause: Cause, alike: Sequence[Finding]) -> Line:
    first = alike[0]
    text = first.sentence
    if first is cause.decides and cause.title.endswith(f": {first.what}"):
        text = text.removeprefix(f"{first.what}: ")
    more = _more(cause, alike)
    text = f"{text.rstrip('.')}; {more}." if more else text
    text = f"{_where(cause, first)}{text}" if not more.startswith(EACH) else text
    return Line(first.verdict, text, tuple(dict.fromkeys(finding.key for finding in alike)), first)


def _where(cause: Cause, finding: Finding) -> str:
    """Name the place of a finding as far as the title has not."""
    if not cause.part:
        return "" if finding.subject in cause.title else f"{finding.subject}: "
    told = cause.places if len(cause.places) == 1 else ()
    left = [place for place in finding.subject.split(" / ") if place not in told] if finding.part else []
    return f"{' / '.join(left)}: " if left else ""


def _more(cause: Cause, alike: Sequence[Finding]) -> str:
    """Count and name the places that are alike; "" where there is one."""
    if len(alike) == 1:
        return ""
    own = ", figures of their own" if len({(finding.offered, finding.needed) for finding in alike}) > 1 else ""
    subjects = {place for finding in alike for place in finding.subject.split(" / ")}
    if _many(cause) and subjects >= set(cause.places):
        return f"{EACH}{own}"
    return f"and {len(alike) - 1} more alike{own}: {', '.join(_others(alike))}"


def _many(cause: Cause) -> bool:
    return cause.part != "" and len(cause.places) > 1


def _others(alike: Sequence[Finding]) -> list[str]:
    """Name the subjects after the first; of pairs that share a place the other place alone."""
    pairs = [finding.subject.split(" / ") for finding in alike]
    for side in (0, 1):
        if all(len(pair) == 2 and pair[side] == pairs[0][side] for pair in pairs):
            return [pair[1 - side] for pair in pairs[1:]]
    return [finding.subject for finding in alike[1:]]
