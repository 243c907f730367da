"""Why the blinkers would not flash: each cause the trade knows, asked of this job and answered."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isnan, nan

from bom import units
from bom.build import Build
from bom.check.blinker_tests import TESTS
from bom.check.donor import own_part
from bom.circuit.bike import RAIL_MINUS
from bom.circuit.live import DEAD_V
from bom.judge.ask import judge_pairs, judge_parts
from bom.judge.finding import Finding, finding_of
from bom.judge.verdict import Verdict
from bom.loom.low_volt import lamp_place
from bom.loom.tails import tail_place
from bom.parts import Parts
from bom.read.job import Load

NO, YES, UNTOLD = "no", "yes", "can't tell"
WORDS = {
    Verdict.NOT_ASKED: NO,
    Verdict.PASS: NO,
    Verdict.TIGHT: NO,
    Verdict.CANT_TELL: UNTOLD,
    Verdict.FAIL: YES,
}
# Cause, and what the rules compare that decides it.
OF_THE_FLASHER = (
    ("too few lamp watts", ("least lamp watts",)),
    ("too many lamp watts", ("most lamp watts",)),
    ("supply outside its window", ("lowest supply volts", "highest supply volts")),
    ("a pin without its wire", ("pins",)),
    ("made for the other earth", ("polarity",)),
    ("flashes too slow or too fast", ("flashes a minute",)),
)
BIKE = "the bike"
OWN = "donor's own "  # of a flasher that something bought stands in for


@dataclass(frozen=True)
class Cause:
    """One cause, asked of one thing.

    of       the flasher by its id or name, or the bike
    cause    what would be wrong
    answer   no, yes or can't tell
    because  the numbers
    datum    the fact that would settle a "can't tell"
    test     how to tell on the bike in two minutes
    """

    of: str
    cause: str
    answer: str
    because: str
    datum: str
    test: str


def blinkers(build: Build) -> tuple[Cause, ...]:
    """Answer every cause: of the flasher that stands, of the donor's own where it is another, of the bike."""
    lamps = [load for load in build.facts.job.loads if "indicate" in load.on and not load.is_telltale]
    if not lamps:
        return ()
    return (*_flashers(build, lamps), *_bike(build, lamps))


def _flashers(build: Build, lamps: Sequence[Load]) -> Iterator[Cause]:
    entry = build.filled.get("flasher")
    if entry is not None:
        yield from _flasher(build, entry.part_id, entry.part, lamps)
    else:
        yield _cause("the flasher", "none stands", YES, "no flasher passes: see what speaks against the nearest")
    item = next((item for item in build.facts.job.donor.items if item.kind == "flasher"), None)
    if item is not None and (entry is None or entry.origin != "donor"):
        part = own_part("flasher", item, build.walks.bike.view)
        yield from _flasher(build, f"{OWN}{item.name}", part, lamps)


def _flasher(build: Build, of: str, part: Parts, lamps: Sequence[Load]) -> Iterator[Cause]:
    found = _found(build, part, lamps)
    volts, state = _supply(build)
    for cause, compared in OF_THE_FLASHER:
        asked = [finding for finding in found if finding.what in compared]
        worst = max(asked, key=lambda finding: finding.verdict)
        alike = [finding for finding in asked if finding.verdict == worst.verdict]
        told = "; ".join(_told(alike))
        answer = WORDS[worst.verdict]
        if cause == "supply outside its window" and not isnan(volts):
            told += f"; solved: {units.show(volts, 'voltage')} at its plus, {state}"
        yield _cause(of, cause, answer, told, worst.datum.replace("the part's", f"{of}:"))


def _found(build: Build, part: Parts, lamps: Sequence[Load]) -> list[Finding]:
    """Ask the rules of the flasher alone, and with the lamps bought for it."""
    margins, duties = build.facts.margins, build.duties
    answers = [*judge_parts(part, duties["flasher"], margins)]
    for place in (lamp_place(load) for load in lamps):
        if place in build.filled:
            lamp = build.filled[place].part
            answers += judge_pairs("flashes", part, lamp, duties["flasher"], duties[place], margins)
    return [finding_of(answer, "flasher", (part,)) for answer in answers]


def _told(findings: Sequence[Finding]) -> list[str]:
    """Print comparisons; what is asked of one figure in one piece."""
    asked: dict[str, dict[str, None]] = {}
    for finding in findings:
        asked.setdefault(f"{finding.what} {finding.offered}", {})[finding.needed] = None
    return [f"{figure}, needs {' and '.join(needed)}" for figure, needed in asked.items()]


def _supply(build: Build) -> tuple[float, str]:
    """Give the fewest volts that stand at the flasher's plus in a state that indicates."""
    met = [
        (round(standing.volts("flasher in", RAIL_MINUS), 6), standing.state.name)
        for standing in build.walks.states
        if "indicate" in standing.state.conditions and not standing.collapsed
    ]
    return min((each for each in met if not isnan(each[0])), default=(nan, ""))


def _bike(build: Build, lamps: Sequence[Load]) -> Iterator[Cause]:
    yield _return(build, lamps)
    yield _telltale(build, lamps)
    yield _feed(build, lamps)
    if any(load.kind == "LED" for load in lamps):
        yield _way_round(build, lamps)


def _return(build: Build, lamps: Sequence[Load]) -> Cause:
    """Ask how the lamps come home: by a wire that was solved, or by a frame that nobody measured."""
    cause, names = "the lamps have no return", {load.name for load in lamps}
    ends = {bridge.end for bridge in build.loom.bridges if bridge.kind == "load" and names & set(bridge.loads)}
    if "frame" in ends:
        datum = "ohms from each indicator's shell to the frame bond: paint, rust and rubber mounts open it"
        return _cause(BIKE, cause, UNTOLD, "lamps return by the frame", datum)
    bare = [hole.place.name for hole in build.holes if hole.place.name in map(tail_place, lamps)]
    if bare:
        return _cause(BIKE, cause, YES, f"nothing stands for the {', '.join(bare)}")
    lost = [
        volts
        for standing in build.walks.states
        if "indicate" in standing.state.conditions and not standing.collapsed
        for end in ends
        if not isnan(volts := standing.volts(end, RAIL_MINUS))
    ]
    if not lost:
        return _cause(BIKE, cause, UNTOLD, "no state that indicates stands", "a state that indicates")
    told = f"each has its wire home; {units.show(max(lost), 'voltage')} are lost in it"
    return _cause(BIKE, cause, NO, told)


def _telltale(build: Build, lamps: Sequence[Load]) -> Cause:
    """Take the rule's answer; a job that lists no telltale may have one all the same."""
    cause = "a telltale lights the other side"
    found = [finding for finding in build.findings if finding.rule == "telltale-keeps-the-sides-apart"]
    if found:
        worst = max(found, key=lambda finding: finding.verdict)
        return _cause(BIKE, cause, WORDS[worst.verdict], f"{worst.subject}: {worst.sentence}", worst.datum)
    if all(load.kind != "LED" for load in lamps):
        return _cause(BIKE, cause, NO, "filament sides: a telltale across them lights neither")
    datum = "whether one telltale lies across left and right; list it as a load with its telltale key"
    return _cause(BIKE, cause, UNTOLD, "LED sides, and the load list has no telltale", datum)


def _feed(build: Build, lamps: Sequence[Load]) -> Cause:
    """Ask whether a switch feeds every lamp, and whether volts arrive with the flasher closed."""
    cause = "a switch, fuse or wire does not feed it"
    switches = [item for item in build.facts.job.donor.items if item.kind == "indicator switch"]
    unfed = [load.name for load in lamps if switches and not any(load.name in item.feeds for item in switches)]
    if unfed:
        return _cause(BIKE, cause, YES, f"no indicator switch of the job feeds: {', '.join(unfed)}")
    got = [light for light in build.walks.lights if light.load in {load.name for load in lamps}]
    if not got:
        return _cause(BIKE, cause, UNTOLD, "no state that indicates stands", "a state that indicates")
    least = min(got, key=lambda light: light.low_v)
    told = f"solved: {units.show(least.low_v, 'voltage')} at the {least.load} with the flasher closed"
    return _cause(BIKE, cause, NO if least.low_v >= DEAD_V else YES, f"{told}, {least.low_state}")


def _way_round(build: Build, lamps: Sequence[Load]) -> Cause:
    """Ask which way round LED lamps want their volts; the donor's own are known to work on its own earth only."""
    cause, earth = "LED lamps the wrong way round", build.facts.job.donor.earth
    bought = [
        (place, finding)
        for place in map(lamp_place, lamps)
        if place in build.filled
        for answer in judge_parts(build.filled[place].part, build.duties[place], build.facts.margins)
        if (finding := finding_of(answer, place, (build.filled[place].part,))).what == "polarity"
    ]
    worst = max((finding for _, finding in bought), key=lambda finding: finding.verdict, default=None)
    if worst is not None and worst.verdict > Verdict.TIGHT:
        return _cause(BIKE, cause, WORDS[worst.verdict], f"{worst.part}: {_told([worst])[0]}", worst.datum)
    own = [load.name for load in lamps if load.kind == "LED" and not load.is_bought and not load.same_lamp_as]
    if own and earth == "positive":
        datum = f"polarity of the {', '.join(own)}"
        return _cause(BIKE, cause, UNTOLD, "LED lamps of the donor on a positive earth", datum)
    told = f"{worst.part}: {_told([worst])[0]}" if worst else f"they stay on their own earth, which is {earth}"
    return _cause(BIKE, cause, NO, told)


def _cause(of: str, cause: str, answer: str, because: str, datum: str = "") -> Cause:
    return Cause(of, cause, answer, because, datum if answer == UNTOLD else "", TESTS[cause])
