"""Places that only a part which arrived wants: open, with what would fill them."""

from collections.abc import Iterator
from dataclasses import replace

from bom.arrived.stands import Stands
from bom.build import Build
from bom.choose.candidates import candidates
from bom.choose.filled import Hole
from bom.judge.ask import judge_pairs, judge_parts, verdicts
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.loom.model import Link, Place
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.families import BY_NAME


def wanted_holes(stands: Stands, ordered: Build, view: LoomView, catalogue: Catalogue) -> Iterator[Hole]:
    """Give each place that was not wanted as ordered and now is, as an open place with a cure that is true."""
    for name, idle in stands.wanted.items():
        place, came = stands.loom.place(name), stands.filled[idle.decider]
        word = came.part.word(idle.column)[0]
        now = idle.if_not if word else f"does not say whether it {idle.told}"
        old = ordered.filled.get(idle.decider)
        was = f"{old.part_id}, which was ordered, {idle.told}; " if old else ""
        sentence = f"Nothing was ordered for it: {was}{came.part_id}, which came, {now}."
        datum = "" if word else f"whether the {idle.decider} {idle.told}"
        back = f"send {came.part_id} back, fit {old.part_id} as ordered; or: " if old else ""
        remedy = f"{back}{_add(place, stands, view, catalogue)}"
        verdict = Verdict.FAIL if word else Verdict.CANT_TELL
        yield Hole(place, sentence, verdict, datum, wanted_by=idle.decider, remedy=remedy)


def _add(place: Place, stands: Stands, view: LoomView, catalogue: Catalogue) -> str:
    """Name the cheapest part that passes there with all that stand; none where it bears on another such place."""
    title = BY_NAME[place.family].title
    near = {name for link in stands.loom.links if place.name in (link.first, link.second) for name in _ends(link)}
    if near & (stands.wanted.keys() - {place.name}):
        return f"add a {title} that passes, and pin it"
    facts, alone = view.facts, replace(stands.loom, places=(place,))
    option = candidates(alone, facts.job, catalogue, facts.margins, view.memory)[place.name]
    for index in sorted(range(len(option.parts)), key=option.costs.__getitem__):
        part = option.parts.take([index])
        if _worst(place.name, part, view) <= Verdict.PASS:
            return f'add {part.ids[0]} ({part.word("name")[0]}): write "{place.name}" = "{part.ids[0]}" under [pins]'
    return f"add a {title} that passes; the catalogue offers none"


def _ends(link: Link) -> tuple[str, str]:
    return link.first, link.second


def _worst(name: str, part: Parts, view: LoomView) -> Verdict:
    """Give the worst answer on a part at a place, alone and with each part that stands beside it."""
    margins, duties, parts = view.facts.margins, view.duties, {**view.parts, name: part}
    found = [verdicts(judge_parts(part, duties[name], margins), (1,))[0]]
    for link in view.loom.links:
        if name in _ends(link) and link.first in parts and link.second in parts:
            asked = (parts[link.first], parts[link.second], duties[link.first], duties[link.second], margins)
            found.append(verdicts(judge_pairs(link.kind, *asked), (1, 1))[0, 0])
    return Verdict(int(max(found)))
