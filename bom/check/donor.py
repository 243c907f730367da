"""What becomes of each donor item: stays, stays if, goes, or test first."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.check.judge_build import judge_one
from bom.choose.donor import donor_part, served
from bom.choose.filled import Filled
from bom.duties.model import Duty
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.job import Item


@dataclass(frozen=True)
class DonorVerdict:
    """What becomes of one donor item.

    verdict  "stays", "stays if", "goes" or "test first"
    """

    name: str
    kind: str
    wished: str
    verdict: str
    reason: str
    instead: str


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
    "horn": ("stays if", "it sounds on direct current at the new volts; see its load"),
}
WORDS = {
    Verdict.NOT_ASKED: "stays",
    Verdict.PASS: "stays",
    Verdict.TIGHT: "stays if",
    Verdict.CANT_TELL: "test first",
    Verdict.FAIL: "goes",
}


def donor_verdicts(
    view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled]
) -> tuple[DonorVerdict, ...]:
    """Judge every donor item at its places with the same rules that judge a bought part."""
    return tuple(_verdict(item, view, duties, filled) for item in view.facts.job.donor.items)


def _verdict(
    item: Item,
    view: LoomView,
    duties: Mapping[str, Duty],
    filled: Mapping[str, Filled],
) -> DonorVerdict:
    if item.keep == "no":
        return DonorVerdict(
            item.name, item.kind, item.keep, "goes", "the builder does not want it kept.", _instead(item, filled)
        )
    places = [place for place in view.loom.places if place.item == item.name]
    if not places:
        word, reason = WITHOUT_PLACE.get(item.kind, ("test first", "it switches no load of the load list"))
        return DonorVerdict(item.name, item.kind, item.keep, word, reason, "")
    own = {place.family: own_part(place.family, item, view) for place in places}
    findings = {
        place.name: max(
            judge_one(place.name, own[place.family], duties[place.name], view),
            key=lambda finding: finding.verdict,
        )
        for place in places
    }
    worst = max(findings.values(), key=lambda finding: finding.verdict)
    entries = [filled[place.name] for place in places if place.name in filled]
    instead = "; ".join(dict.fromkeys(_named(entry) for entry in entries if entry.origin != "donor"))
    reason = worst.sentence + (f" Find out: {worst.datum}." if worst.datum else "")
    kept = [entry for entry in entries if entry.origin == "donor"]
    if kept and len(kept) < len(entries):
        gone = dict.fromkeys(entry.place.circuit for entry in entries if entry.origin != "donor")
        reason = f"{len(kept)} of {len(entries)} runs stay; renew the others, in the {', '.join(gone)}. {reason}"
        return DonorVerdict(item.name, item.kind, item.keep, "stays if", reason, instead)
    return DonorVerdict(item.name, item.kind, item.keep, WORDS[worst.verdict], reason, instead)


def own_part(family: str, item: Item, view: LoomView) -> Parts:
    """Describe the donor's own part, whatever stands in its places now."""
    facts = view.facts
    return donor_part(family, item, served(item, facts.job, facts.margins))


def _named(entry: Filled) -> str:
    return f"{entry.part_id} {entry.part.word('name')[0]}"


def _instead(item: Item, filled: Mapping[str, Filled]) -> str:
    """Name the part bought in its stead, where the loom has a place of its kind."""
    names = {"key switch": "key switch", "kill switch": "stop switch", "flasher": "flasher", "fuse box": "fuse box"}
    entry = filled.get(names.get(item.kind, ""))
    return _named(entry) if entry else ""
