"""Gates one to five: isolation, earth, voltage, feed, lamp."""

from typing import TYPE_CHECKING

from bom import units
from bom.check.donor_gate import NOTHING, Gate, found, listed
from bom.duties.budget import largest_filament_a
from bom.judge.verdict import Verdict
from bom.loom.returns import is_wired
from bom.physics.isolation import LOW_VOLTAGE_LIMIT_V, is_above_low_voltage

if TYPE_CHECKING:
    from bom.build import Build

SECOND_BOND = (
    "the frame sits one 12 V above pack minus, and becomes a short of the converter's output at the second bond: "
    "take an isolated converter"
)


def isolation(build: "Build") -> Gate:
    """Ask whether the 12 V side is apart from the pack."""
    name, question = "isolation", "Is the 12 V side apart from the pack?"
    bus, earth, entry = build.facts.pack.highest_bus_v, build.facts.job.donor.earth, build.filled.get("converter")
    against = f"bus up to {bus} against {LOW_VOLTAGE_LIMIT_V:g} V, earth {earth}"
    if entry is None:
        return Gate(name, question, f"no converter stands; {against}", "choose a converter first", Verdict.CANT_TELL)
    word = entry.part.word("isolated")[0]
    kind = {"yes": "isolated", "no": "common minus"}.get(word, "not known whether isolated")
    holds = found(build, "converter-isolation-holds", ["converter"]) if word == "yes" else Verdict.PASS
    follows = _of_converter(build, word) if holds == Verdict.PASS else f"isolation rated or tested at {bus}"
    verdict = max(holds, found(build, "converter-keeps-the-frame-apart", ["converter"]))
    return Gate(name, question, f"{entry.part_id}: {kind}; {against}", follows, verdict)


def _of_converter(build: "Build", isolated: str) -> str:
    if isolated == "yes":
        return NOTHING
    if not isolated:
        return "find out whether its input and output share the minus; until then it counts as sharing it"
    if build.facts.job.donor.earth == "positive":
        return SECOND_BOND
    if is_above_low_voltage(voltage_v=build.facts.pack.highest_bus_v.high):
        return "bar switches, lamp shells and sockets would be traction circuit: take an isolated converter"
    if not is_wired(build.facts.job):
        return "the frame would be pack minus: take an isolated converter, or give every lamp a return wire"
    return "pack plus fused at the pack, one bond in one place, and a written note on the bike"


def earth(build: "Build") -> Gate:
    """Ask which pole the frame is, and which parts mind."""
    donor = build.facts.job.donor
    name, question = "earth", "Which pole is the frame?"
    if donor.earth != "positive":
        return Gate(name, question, f"{donor.earth}", NOTHING, Verdict.PASS)
    verdict = max(found(build, "earth-is-fused"), Verdict.TIGHT)
    bound = [load.name for load in build.facts.job.loads if load.kind in ("LED", "electronics")]
    bound += [item.name for item in donor.items if item.kind == "ammeter"]
    bound += [item.name for item in donor.items if item.kind == "flasher" and item.pins != 2]
    follows = f"mark what minds its poles: {listed(bound)}" if bound else "mark each lead by what it does"
    if verdict == Verdict.FAIL:
        follows = f"the live minus wires have no fuse: returns by wire, or make the earth negative; {follows}"
    return Gate(name, question, "positive, kept", follows, verdict)


def voltage(build: "Build") -> Gate:
    """Ask what a donor of 6 V has to give up."""
    job = build.facts.job
    name, question = "voltage", "Is it a 6 V bike?"
    if job.donor.supply != "6 V":
        return Gate(name, question, f"{job.donor.supply}", NOTHING, Verdict.PASS)
    kept = [load.name for load in job.loads if load.fit == "donor" and load.kind != "electronics"]
    going = f"goes: {listed(kept)}" if kept else "no load of it is kept"
    follows = f"{going}; wire, switches and holders stay, switches once they have opened 13.5 V"
    return Gate(name, question, "6 V", follows, max(found(build, "donor-loads-suit-the-rail", kept), Verdict.TIGHT))


def feed(build: "Build") -> Gate:
    """Ask what ran on alternating current, and what grounds an ignition."""
    job = build.facts.job
    name, question = "feed", "Did any lamp or switch run on alternating current?"
    if job.donor.lighting == "DC":
        return Gate(name, question, "no, all from the battery", NOTHING, Verdict.PASS)
    fed = [load.name for load in job.loads if job.donor.fed_by_coils(load)]
    stops = [item for item in job.donor.items if item.kind in ("key switch", "kill switch") and item.may_stay]
    grounds = [item.name for item in stops if item.contact == "closes to stop"]
    unsaid = [item.name for item in stops if item.contact is None]
    tasks = [f"feed from the fuse box: {listed(fed)}"] if fed else []
    tasks += [f"invert or replace what grounds the ignition: {listed(grounds)}"] if grounds else []
    tasks += [f"find out what opens and what closes to stop: {listed(unsaid)}"] if unsaid else []
    verdict = Verdict.CANT_TELL if unsaid else Verdict.TIGHT
    return Gate(name, question, f"{job.donor.lighting}: {listed(fed) or 'no load listed'}", "; ".join(tasks), verdict)


def lamp(build: "Build") -> Gate:
    """Ask which lamps are filaments, whether the converter rides them cold, and what LED lamps mind."""
    loads, margins = build.facts.job.loads, build.facts.margins
    leds = [load.name for load in loads if load.kind == "LED"]
    filaments = [load.name for load in loads if load.kind == "filament"]
    largest = largest_filament_a(build.facts.budget)
    cold = units.show(largest * margins.cold_filament, "current")
    told = [f"filament: {listed(filaments)}, the largest {units.show(largest, 'current')}, {cold} cold"]
    told = (told if filaments else []) + ([f"LED: {listed(leds)}"] if leds else [])
    rides = found(build, "converter-rides-a-cold-lamp") if filaments else Verdict.PASS
    tasks = [] if rides <= Verdict.PASS else ["a converter that limits at constant current, or LED lamps"]
    tasks += ["poles, heat in the holder and the mark of each LED; a flasher that feels them"] if leds else []
    verdict = max(rides, Verdict.TIGHT if leds else Verdict.PASS)
    return Gate("lamp", "Filament or LED?", "; ".join(told) or "no lamp listed", "; ".join(tasks) or NOTHING, verdict)
