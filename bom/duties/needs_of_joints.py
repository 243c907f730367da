"""What joins wires is asked: ways, poles and copper of plugs, splices, posts, holders, lugs and sleeves."""

from collections import Counter

from bom.duties.circuits import Facts, Needs
from bom.duties.needs_of_wires import counted
from bom.loom.model import Loom, Place
from bom.span import Span


def _plug(place: Place, loom: Loom, facts: Facts) -> Needs:
    if place.circuit == "phase":
        return {"poles": counted(3.0, "", "three motor leads", place.name)}
    return {"poles": counted(2.0, "", "plus and minus of the pack", place.name)}


def _post(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = sum(1 for link in loom.links if link.kind == "on stud" and link.second == place.name)
    return {"ways": counted(float(count), "", "one lug for each wire that meets there", place.name)}


def _splice(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Count the wires, and the leads that parts themselves bring."""
    count = _taken(place, loom, "takes wire")
    ways = counted(float(count + place.leads), "", "one way for each wire that meets there", place.name)
    return {"ways": ways, **_leads(place, loom, facts)}


def _signal_connector(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = _taken(place, loom, "takes wire")
    ways = counted(float(count + place.leads), "", "one contact for each wire", place.name)
    return {"ways": ways, **_leads(place, loom, facts)}


def _fuse_box(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = _taken(place, loom, "takes fuse")
    return {"ways": counted(float(count), "", "one way for each blade fuse", place.name)}


def _taken(place: Place, loom: Loom, kind: str) -> int:
    """Count what a holder, plug or splice takes; a load's tails are one place, shared by its sides."""
    takers = Counter(link.second for link in loom.links if link.kind == kind)
    taken = [loom.place(link.second) for link in loom.links if link.kind == kind and link.first == place.name]
    return sum(max(int(each.quantity) // takers[each.name], 1) if each.family == "tail" else 1 for each in taken)


def _leads(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Give the copper of the control leads that a fitting takes, from the thinnest to the thickest."""
    fitting = loom.leads.fitting_of.get(place.name)
    if fitting is None:
        return {}
    wires = sorted((device.wire, device.name) for device in facts.job.devices if device.name in fitting.devices)
    least, most = (
        Span.given(area, "area", f"leads of the {name}", "devices.wire", name) for area, name in (wires[0], wires[-1])
    )
    return {"lead_least_mm2": least, "lead_most_mm2": most}


def _lug(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask an area of a lug that goes on a tail which is no wire of the loom."""
    tail = facts.job.motor.lead_area
    if place.name == "motor tail lugs" and tail is not None:
        return {"tail_mm2": Span.given(tail, "area", "copper of the motor's tails", "motor.lead_area")}
    return {}


def _sleeve(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask a width of sleeving only; heat-shrink is judged with its wire."""
    if place.circuit != "labels":
        return {}
    return {"width_mm": Span.fixed(8.0, "", "a pair of thin leads, common practice", "mm")}


JOINTS = {
    "power_connector": _plug,
    "post": _post,
    "splice": _splice,
    "signal_connector": _signal_connector,
    "fuse_box": _fuse_box,
    "end_cap": _leads,
    "lug": _lug,
    "sleeve": _sleeve,
}
