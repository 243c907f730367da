"""Ends of leads, made of what the job says: the leads of its devices, and what else a lead may be joined to."""

from bom.leads.model import End
from bom.read.job import JobFile
from bom.read.job_devices import Device, Lead
from bom.read.lead_colours import WORDS, in_words
from bom.read.lead_faults import LOOM
from bom.read.lead_kinds import OUTWARDS, SIGNALS

KEY_WIRE = "key input wire"


def ends_of(job: JobFile) -> list[End]:
    """Give every lead of every device, in the order of the job."""
    return [_end(device, lead) for device in job.devices for lead in device.leads]


def _end(device: Device, lead: Lead) -> End:
    known = SIGNALS.get(lead.signal or "")
    return End(
        device.name,
        device.kind,
        lead.label,
        lead.function,
        lead.signal or "",
        _role(device, lead),
        known.level if known else None,
        lead.low,
        lead.high,
        lead.supply,
        lead.draws,
        in_words(lead.colour, lead.scheme or device.scheme or WORDS),
        lead.plug,
        lead.plug or device.plug,
        lead.pin,
        lead.momentary,
        lead.to,
    )


def _role(device: Device, lead: Lead) -> str:
    """Tell which way a signal goes: to the controller, unless its function leads outwards."""
    role = SIGNALS[lead.signal].role if lead.signal else ""
    if role != "either":
        return role
    outwards = lead.function in OUTWARDS
    return "gives" if (device.kind == "controller") == outwards else "takes"


def outside_end(end: End, job: JobFile) -> End | None:
    """Give the donor item or load that an end is to be joined to, None where it names neither."""
    for item in job.donor.items:
        if item.name == end.to:
            # A switch that feeds loads has 12 V on its far side; any other is a bare contact.
            return _outside(item.name, item.kind, "12 V supply" if item.feeds else "contact")
    for load in job.loads:
        if load.name == end.to:
            ground = end.role == "ground" or end.function.endswith("ground")
            return _outside(load.name, "its return" if ground else "its feed", "ground" if ground else "12 V supply")
    return None


def key_wire(job: JobFile) -> End | None:
    """Give the wire of the loom that wakes the controller; None where nothing does."""
    feed = {"pack volts": "pack-volts supply", "12 V": "12 V supply"}.get(job.controller.key_input)
    return _outside(LOOM, KEY_WIRE, feed) if feed else None


def _outside(device: str, label: str, signal: str) -> End:
    known = SIGNALS[signal]
    return End(device, "", label, label, signal, known.role, known.level, outside=True)
