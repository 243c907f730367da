"""Was and now: what was ordered beside what arrived, rating by rating and comparison by comparison."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isnan

from bom.arrived.differs import NOT_RATINGS
from bom.build import Build
from bom.check.decides import PAIR
from bom.choose.filled import NONE
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.parts import Parts


@dataclass(frozen=True)
class ReceivedRow:
    """One thing that changed where another part arrived than was ordered.

    what              the part, a rating by its column, or a comparison
    was, now          of what was ordered, of what arrived, as printed
    was_said, now_said  verdict of each; not asked of a rating, which its comparisons judge
    """

    place: str
    what: str
    was: str
    now: str
    was_said: Verdict
    now_said: Verdict


def received_rows(build: Build) -> list[ReceivedRow]:
    """List what changed at each place where a received part stands: the part, its ratings, what was compared."""
    if build.ordered is None:
        return []
    names = [name for name, entry in build.filled.items() if entry.origin == "received"]
    return [row for name in names for row in _of_place(name, build.ordered, build)]


def _of_place(name: str, ordered: Build, build: Build) -> Iterator[ReceivedRow]:
    old, new = ordered.filled.get(name), build.filled[name]
    before, after = (_findings(name, each) for each in (ordered, build))
    worst = [max((found.verdict for found in each.values()), default=Verdict.NOT_ASKED) for each in (before, after)]
    titles = [f"{entry.part_id}, {entry.part.word('name')[0]}" if entry else NONE for entry in (old, new)]
    yield ReceivedRow(name, "part", titles[0], titles[1], worst[0], worst[1])
    was, now = _ratings(old.part) if old else {}, _ratings(new.part)
    for column in now:
        if was.get(column, "–") != now[column]:
            asked = Verdict.NOT_ASKED
            yield ReceivedRow(name, column, was.get(column, "–"), now[column], asked, asked)
    for key in [*after, *(key for key in before if key not in after)]:
        one, two = before.get(key), after.get(key)
        if (one and one.verdict, _told(one)) != (two and two.verdict, _told(two)):
            yield ReceivedRow(name, _what(two or one), _told(one), _told(two), _verdict(one), _verdict(two))


def _findings(name: str, build: Build) -> dict[tuple[str, str, str], Finding]:
    """Give the findings of a place by what they compare; an answer about the whole bike that names it too."""
    own = [finding for finding in build.findings if name in finding.subject.split(PAIR)]
    return {(finding.rule, finding.subject, finding.what): finding for finding in own}


def _what(finding: Finding | None) -> str:
    assert finding is not None  # a key is of one of the two
    return f"{finding.subject}: {finding.what} ({finding.rule})"


def _told(finding: Finding | None) -> str:
    return f"{finding.offered}, needs {finding.needed}" if finding else "not asked"


def _verdict(finding: Finding | None) -> Verdict:
    return finding.verdict if finding else Verdict.NOT_ASKED


def _ratings(part: Parts) -> Mapping[str, str]:
    """Print every rating of a part by its column."""
    numbers = {name: "not known" if isnan(value[0]) else f"{value[0]:g}" for name, value in part.numbers.items()}
    words = {name: part.word(name)[0] or "not known" for name in part.words if name not in NOT_RATINGS}
    return {**numbers, **words}
