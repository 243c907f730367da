"""What it takes to keep a donor item that goes: the cheapest change whose whole build has no fail."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from math import isnan

from bom.build import Build
from bom.check.donor import DonorVerdict, Kept
from bom.judge.verdict import Verdict
from bom.keep.ways import ways_to_keep
from bom.read.catalogue import Catalogue
from bom.read.donor_matrix import VERDICTS
from bom.read.job import Item, JobFile

Rebuild = Callable[[JobFile, str], Build]


def keep_what_goes(
    build: Build, others: Sequence[Build], catalogue: Catalogue, rebuild: Rebuild
) -> tuple[DonorVerdict, ...]:
    """Give the donor's verdicts, each item that goes with the cheapest way in which it stays and the whole bike holds.

    The whole bike holds where nothing fails and no place stays open. Ways start from the build on paper; where that
    does not hold of itself, from the cheapest other key arrangement that does. One in which it surely stays comes
    before one in which a test must tell. What the builder does not want, and what nothing can keep, has none.
    """
    sound = sorted((each for each in others if _holds(each)), key=lambda each: each.bill.total)
    start = build if _holds(build) else next(iter(sound), build)
    items = {item.name: item for item in build.facts.job.donor.items if item.may_stay}

    def with_way(told: DonorVerdict) -> DonorVerdict:
        if told.verdict != "goes" or told.name not in items:
            return told
        ways = [*_elsewhere(told, build, sound), *_changed(items[told.name], build, start, catalogue, rebuild)]
        best = min(ways, key=lambda way: (VERDICTS.index(way.verdict), way.more, way.minutes), default=None)
        return replace(told, kept=best)

    return tuple(map(with_way, build.donor))


def _holds(build: Build) -> bool:
    """Tell whether nothing fails and no place stays open."""
    return not build.holes and not build.count(Verdict.FAIL)


def _elsewhere(told: DonorVerdict, build: Build, sound: Sequence[Build]) -> Iterator[Kept]:
    """Look at the other key arrangements, which are built already."""
    for other in sound:
        yield from _kept(f"the key at {other.arrangement}", told.name, build, other, 0.0)


def _changed(item: Item, build: Build, start: Build, catalogue: Catalogue, rebuild: Rebuild) -> Iterator[Kept]:
    moved = f"the key at {start.arrangement}, and " if start is not build else ""
    for way in ways_to_keep(item, start.facts.job, catalogue):
        changed = rebuild(way.job, start.facts.key_at)
        yield from _kept(f"{moved}{way.title}", item.name, build, changed, way.minutes)


def _kept(way: str, name: str, build: Build, changed: Build, minutes: float) -> Iterator[Kept]:
    """Give the way if the item stays in it and nothing fails."""
    then = next((item for item in changed.donor if item.name == name), None)
    if then is None or then.verdict == "goes" or not _holds(changed):
        return
    work = minutes + (0.0 if isnan(then.minutes) else then.minutes)
    more = round(changed.bill.total - build.bill.total, 2)
    yield Kept(way, changed.arrangement, then.verdict, then.change or then.reason, more, work)
