"""What it takes to keep a donor item that goes: the cheapest change whose whole build has no fail."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import isnan

from bom.build import Build
from bom.check.donor_words import DonorVerdict, Kept
from bom.judge.verdict import Verdict
from bom.keep.mends import mended
from bom.keep.ways import ways_to_keep
from bom.read.catalogue import Catalogue
from bom.read.donor_matrix import VERDICTS
from bom.read.job import Item, JobFile

Rebuild = Callable[[JobFile, str], Build]


@dataclass(frozen=True)
class Start:
    """A build that ways start from, and what it changes of the one on paper; "" for that one itself.

    minutes  of work that the change takes, a rough estimate
    """

    title: str
    build: Build
    minutes: float = 0.0


def keep_what_goes(
    build: Build, others: Sequence[Build], catalogue: Catalogue, rebuild: Rebuild
) -> tuple[DonorVerdict, ...]:
    """Give the donor's verdicts, each thing that goes with the cheapest way in which it stays and the whole bike holds.

    The whole bike holds where nothing fails and no place stays open. Ways start from the build on paper; where that
    does not hold of itself, from what mends it, or from the cheapest other key arrangement; these are ways too. One in
    which a thing surely stays comes before one in which a test must tell. What the builder does not want, and what
    nothing can keep, has none.
    """
    if all(told.verdict != "goes" for told in build.donor):
        return build.donor
    sound = sorted((each for each in others if _holds(each)), key=lambda each: each.bill.total)
    starts = [Start("", build), *(Start(f"the key at {each.arrangement}", each) for each in sound)]
    mend = mended(build)
    if mend is not None:
        starts.insert(1, Start(mend.title, rebuild(mend.job, build.facts.key_at), mend.minutes))
    best = next((start for start in starts if _holds(start.build)), starts[0])
    items = {item.name: item for item in build.facts.job.donor.items}

    def with_way(told: DonorVerdict) -> DonorVerdict:
        item = items.get(told.name)
        if told.verdict != "goes" or told.wished == "no" or (item and not item.may_stay):
            return told
        ways = [way for start in starts[1:] for way in _kept(start.title, told.name, build, start.build, start.minutes)]
        ways += _changed(item, build, best, catalogue, rebuild) if item else []
        return replace(told, kept=min(ways, key=_worth, default=None))

    return tuple(map(with_way, build.donor))


def _worth(way: Kept) -> tuple[int, float, float]:
    return VERDICTS.index(way.verdict), way.more, way.minutes


def _holds(build: Build) -> bool:
    """Tell whether nothing fails and no place stays open."""
    return not build.holes and not build.count(Verdict.FAIL)


def _changed(item: Item, build: Build, start: Start, catalogue: Catalogue, rebuild: Rebuild) -> Iterator[Kept]:
    moved = f"{start.title}, and " if start.title else ""
    for way in ways_to_keep(item, start.build.facts.job, catalogue):
        changed = rebuild(way.job, start.build.facts.key_at)
        yield from _kept(f"{moved}{way.title}", item.name, build, changed, start.minutes + way.minutes)


def _kept(way: str, name: str, build: Build, changed: Build, minutes: float) -> Iterator[Kept]:
    """Give the way if the item stays in it and nothing fails."""
    then = next((item for item in changed.donor if item.name == name), None)
    if then is None or then.verdict == "goes" or not _holds(changed):
        return
    work = minutes + (0.0 if isnan(then.minutes) else then.minutes)
    more = round(changed.bill.total - build.bill.total, 2)
    asks = then.change or then.test or then.reason
    yield Kept(way, changed.arrangement, then.verdict, asks, more, work, len(build.holes))
