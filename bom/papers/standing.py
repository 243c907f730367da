"""How a build stands, in words: the headline, and the worst answer at each place."""

from collections import Counter
from collections.abc import Mapping

from bom.build import Build
from bom.check.causes import from_causes
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict

# A sign beside each word, so that a grey print tells them apart.
MARKS: Mapping[Verdict, str] = {
    Verdict.FAIL: "✖",
    Verdict.CANT_TELL: "◐",
    Verdict.TIGHT: "△",
    Verdict.PASS: "✓",
    Verdict.NOT_ASKED: "–",
}
OPEN = "no part passes"
NOT_ORDERED = "nothing was ordered"


def ended(text: str) -> str:
    """End a text with one full stop, so that another sentence can follow."""
    return f"{text.rstrip('.')}."


def marked(verdict: Verdict) -> str:
    """Give the word of a verdict with its sign."""
    return f"{MARKS[verdict]} {verdict.word}"


def places_of(finding: Finding) -> list[str]:
    """Name the places a finding is about."""
    return finding.subject.split(" / ")


def worst_at(build: Build) -> Mapping[str, Finding]:
    """Give the worst finding of each place; of equals the first."""
    worst: dict[str, Finding] = {}
    for finding in build.findings:
        for place in places_of(finding):
            if place not in worst or finding.verdict > worst[place].verdict:
                worst[place] = finding
    return worst


def headline(build: Build) -> str:
    """Say in one line how the build stands."""
    fails, untold, tight = (build.count(v) for v in (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT))
    unpriced = sum(1 for line in build.bill.lines if line.purchase is None)
    said = []
    if fails:
        said.append(f"{fails} {'thing fails' if fails == 1 else 'things fail'}")
    if untold:
        said.append(f"{untold} can't be told")
    roots = from_causes(build)
    if roots:
        said.append(roots)
    if unpriced:
        said.append(f"{unpriced} {'part has' if unpriced == 1 else 'parts have'} no offer")
    if said:
        return f"{', '.join(said)}: settle before ordering"
    if tight:
        return f"Nothing fails; {tight} {'meets its' if tight == 1 else 'meet their'} duty without margin"
    return "Nothing fails and nothing is left untold by the rules asked"


def checks_passed(build: Build) -> Counter[str]:
    """Count the passed comparisons at each place."""
    passed = (finding for finding in build.findings if finding.verdict == Verdict.PASS)
    return Counter(place for finding in passed for place in places_of(finding))
