"""Gates six to ten: key, switch side, load, return, evidence."""

from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING

from bom.check.donor_gate import NOTHING, Gate, found, listed
from bom.judge.verdict import Verdict
from bom.loom.returns import gains_returns, is_wired
from bom.read.donor_matrix import VERDICTS
from bom.read.job import SIDED

if TYPE_CHECKING:
    from bom.build import Build

AS_VERDICT = {
    "stays": Verdict.PASS,
    "stays if": Verdict.TIGHT,
    "test first": Verdict.CANT_TELL,
    "goes": Verdict.FAIL,
}


def key(build: "Build") -> Gate:
    """Ask what the key opens, and whether the donor's own does."""
    name, question = "key", "What does the key open, and does the donor's own?"
    duty, entry = build.duties["key switch"], build.filled.get("key switch")
    asked = f"{build.arrangement}: opens {duty.break_a} at {duty.break_v}"
    told = next((item for item in build.donor if item.kind == "key switch"), None)
    if told is None:
        answer = f"{asked}; no key of the donor is listed, {entry.part_id if entry else 'none'} stands"
        return Gate(name, question, answer, NOTHING, Verdict.PASS if entry else Verdict.CANT_TELL)
    answer = f"{asked}; the donor's {told.name}: {told.verdict}"
    follows = {
        "stays": NOTHING,
        "stays if": told.change or told.reason,
        "test first": told.test,
        "goes": told.change or f"take {told.instead or 'another'}",
    }
    # A key that goes is no failure of the bike: another stands in its place.
    verdict = Verdict.TIGHT if told.verdict == "goes" and entry else AS_VERDICT[told.verdict]
    return Gate(name, question, answer, follows[told.verdict], verdict)


def switch_side(build: "Build") -> Gate:
    """Ask on which side of its loads each switch lies."""
    job = build.facts.job
    name, question = "switch side", "Does each switch lie before its loads, or in their return?"
    switches = [item for item in job.donor.items if item.kind in SIDED and item.may_stay]
    by_side = {side: [item.name for item in switches if item.side == side] for side in ("live", "earth", None)}
    words = {"live": "live", "earth": "earth", None: "not said, laid before the loads"}
    answer = "; ".join(f"{words[side]}: {listed(names)}" for side, names in by_side.items() if names)
    turned = job.donor.earth == "positive" or gains_returns(job)
    tasks, verdict = [], Verdict.PASS
    if by_side["earth"]:
        home = "its lead becomes the return" if is_wired(job) else "bare metal under the clamp"
        tasks, verdict = [f"{listed(by_side['earth'])}: {home}"], Verdict.TIGHT
    horns = [item.name for item in switches if item.side is None and item.kind == "horn button"]
    asked = by_side[None] if turned else horns if job.donor.lamp_return == "frame" else []
    if asked:
        tasks.append(f"find out by ohms from its lead to the bar, pressed: {listed(asked)}")
        verdict = Verdict.CANT_TELL
    return Gate(name, question, answer or "no such switch stays", "; ".join(tasks) or NOTHING, verdict)


def load(build: "Build") -> Gate:
    """Ask what loses its feeder with the engine."""
    orphans = list(_orphans(build))
    fed = "" if build.facts.job.donor.lighting == "DC" else "what the coils fed, as feed tells"
    answer = listed(filter(None, (*(name for name, _ in orphans), fed))) or "nothing that is listed"
    follows = "; ".join(f"{name}: {what}" for name, what in orphans) or NOTHING
    verdict = Verdict.TIGHT if orphans or fed else Verdict.PASS
    return Gate("load", "What was fed by regulator, coil or engine?", answer, follows, verdict)


def _orphans(build: "Build") -> Iterator[tuple[str, str]]:
    """Give what is left without a feeder, and what becomes of it."""
    donor = build.facts.job.donor
    for item in donor.items:
        if item.kind in ("flasher", "horn") and donor.lighting == "AC" and item.may_stay:
            tried = f"on the bench: {item.reading}" if item.held else "the coils fed it: try it on 13.5 V DC"
            yield item.name, "it is made for 6 V: it goes" if donor.supply == "6 V" else tried
        elif item.kind == "rev counter":
            yield item.name, "no ignition pulses: it goes"
        elif item.kind == "oil switch":
            yield item.name, "no oil pressure: its lamp may tell of faults"
        elif item.kind in ("alternator", "regulator") and donor.lighting != "AC":
            yield item.name, "look for what it woke: a headlamp relay, a charge lamp"


def back(build: "Build") -> Gate:
    """Ask how lamp amps come home."""
    job, wired = build.facts.job, is_wired(build.facts.job)
    name, question = "return", "How do lamp amps come home?"
    answer = f"by {'wire' if wired else 'frame'}, on the donor by {job.donor.lamp_return}"
    if not wired:
        verdict = max(found(build, "earth-is-fused"), Verdict.TIGHT)
        bare = "bare metal at each lamp; a return wire on coated or rubber mounts"
        follows = "a return wire for each lamp: plus is the frame" if verdict == Verdict.FAIL else bare
        return Gate(name, question, answer, follows, verdict)
    if job.donor.lamp_return == "wire":
        return Gate(name, question, answer, NOTHING, Verdict.PASS)
    return Gate(name, question, answer, "a return for each lamp; insulate shells and horn", Verdict.TIGHT)


def evidence(build: "Build") -> Gate:
    """Ask what is not known of what may stay."""
    counts = Counter(item.verdict for item in build.donor)
    answer = ", ".join(f"{counts[word]} {word}" for word in VERDICTS if counts[word]) or "nothing is listed"
    untried = [item.name for item in build.donor if item.verdict == "test first"]
    follows = f"test first: {listed(untried)}" if untried else NOTHING
    verdict = Verdict.CANT_TELL if untried or not build.donor else Verdict.PASS
    if not build.donor:
        follows = "list the donor's parts under [[donor.items]]"
    return Gate("evidence", "Is each verdict known, not hoped?", answer, follows, verdict)
