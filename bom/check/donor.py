"""What becomes of each donor item: stays, stays if, goes, or test first."""

from collections.abc import Mapping

from bom.build import DonorVerdict, Filled
from bom.check.finding import Finding
from bom.check.judge_build import judge_one
from bom.check.loom_view import LoomView
from bom.choose.donor import donor_part, served
from bom.duties.model import Duty
from bom.judge.verdict import Verdict
from bom.loom.model import Loom, Place
from bom.read.job import Item, JobFile

# Items with no place in the new loom: what becomes of them and why (common practice).
WITHOUT_PLACE: Mapping[str, tuple[str, str]] = {
    "regulator": ("goes", "nothing is left to regulate; cut its leads back, leave no live ends"),
    "alternator": ("goes", "it has no engine to turn it; keep the cover if you like its look"),
    "ignition": ("goes", "no spark is wanted; cut its feed back to the key switch"),
    "starter relay": ("goes", "its coil is made for seconds and its contacts for 12 V"),
    "starter motor": ("goes", "no engine to start"),
    "battery": ("goes", "the converter takes its place; a small buffer battery is a wish of its own"),
    "ammeter": ("goes", "its range and its place in series suit neither side"),
    "fuel gauge": ("stays if", "something drives it from the state of charge"),
    "speedometer": ("stays if", "it is driven from a wheel, not from the gearbox that goes"),
    "rev counter": ("goes", "no ignition pulses are left to count"),
    "neutral switch": ("stays if", "the gearbox stays; its lamp may serve as a ready lamp"),
    "oil switch": ("goes", "no oil pressure; its lamp may serve as a fault lamp"),
    "side-stand switch": ("stays if", "it opens to stop in the coil chain; measure it"),
    "earth strap": ("stays if", "it bonds 12 V minus to the frame in one place, behind an isolated converter"),
    "start button": ("stays if", "it drives a relay or an arming input at 12 V, never a contactor coil alone"),
    "flasher": ("goes", "no load indicates"),
}
WORDS = {
    Verdict.NOT_ASKED: "stays",
    Verdict.PASS: "stays",
    Verdict.TIGHT: "stays if",
    Verdict.CANT_TELL: "test first",
    Verdict.FAIL: "goes",
}


def donor_verdicts(
    job: JobFile, loom: Loom, view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled]
) -> tuple[DonorVerdict, ...]:
    """Judge every donor item at its place with the same rules that judge a bought part."""
    return tuple(_verdict(item, job, loom, view, duties, filled) for item in job.donor.items)


def _verdict(
    item: Item,
    job: JobFile,
    loom: Loom,
    view: LoomView,
    duties: Mapping[str, Duty],
    filled: Mapping[str, Filled],
) -> DonorVerdict:
    places = [place for place in loom.places if place.item == item.name]
    if item.keep == "no":
        return DonorVerdict(
            item.name, item.kind, item.keep, "goes", "the builder does not want it kept", _instead(item, loom, filled)
        )
    if not places:
        word, reason = WITHOUT_PLACE.get(item.kind, ("test first", "it switches no load of the load list"))
        return DonorVerdict(item.name, item.kind, item.keep, word, reason, "")
    worst = _worst(item, places, job, view, duties)
    if worst is None:
        return DonorVerdict(item.name, item.kind, item.keep, "stays", "no rule asks anything of it", "")
    instead = ", ".join(
        dict.fromkeys(
            f"{filled[place.name].part_id} {filled[place.name].part.word('name')[0]}"
            for place in places
            if place.name in filled and filled[place.name].origin != "donor"
        )
    )
    reason = worst.sentence
    if worst.datum:
        reason += f" Find out: {worst.datum}."
    return DonorVerdict(item.name, item.kind, item.keep, WORDS[worst.verdict], reason, instead)


def _worst(item: Item, places: list[Place], job: JobFile, view: LoomView, duties: Mapping[str, Duty]) -> Finding | None:
    found: list[Finding] = []
    service = served(item, job, view.facts.margins)
    for place in places:
        part = donor_part(place.family, item, service)
        found += judge_one(place.name, part, duties[place.name], view)
    return max(found, key=lambda finding: finding.verdict, default=None)


def _instead(item: Item, loom: Loom, filled: Mapping[str, Filled]) -> str:
    """Name the part bought in its stead, where the loom has a place of its kind."""
    names = {"key switch": "key switch", "kill switch": "stop switch", "flasher": "flasher", "fuse box": "fuse box"}
    entry = filled.get(names.get(item.kind, ""))
    return f"{entry.part_id} {entry.part.word('name')[0]}" if entry else ""
