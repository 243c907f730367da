"""Donor items that the whole bike rules out, whatever their own figures say."""

from dataclasses import replace

from bom.check.donor_words import DonorVerdict
from bom.check.gates import is_common_minus
from bom.judge.loom_view import LoomView
from bom.loom.returns import is_wired
from bom.physics.isolation import is_above_low_voltage
from bom.read.donor_matrix import LAMP_KINDS

NO_WIRES = ("speedometer",)  # driven by a cable, it has no part in the 12 V side
SHELLED = (*LAMP_KINDS, "horn")


def ruled_out(told: DonorVerdict, view: LoomView) -> DonorVerdict:
    """Let an item go that the converter, or the earth, makes dangerous to keep; give any other as it is."""
    if told.verdict == "goes":
        return told
    gate, reason = _by_converter(told, view) or _by_earth(told, view) or ("", "")
    if not gate:
        return told
    out = DonorVerdict(told.name, told.kind, told.wished, "goes", reason, told.instead)
    return replace(out, gate=gate, evidence="common practice")


def _by_converter(told: DonorVerdict, view: LoomView) -> tuple[str, str] | None:
    bus = view.facts.pack.highest_bus_v
    above = bool(is_above_low_voltage(voltage_v=bus.high))
    if not above or not is_common_minus(view) or told.kind in NO_WIRES:
        return None
    joins = "joins" if view.parts["converter"].word("isolated")[0] == "no" else "may join"
    return "common minus", f"the converter {joins} 12 V to a pack of up to {bus}: all of it is traction circuit then."


def _by_earth(told: DonorVerdict, view: LoomView) -> tuple[str, str] | None:
    job = view.facts.job
    if job.donor.earth != "positive" or told.kind not in SHELLED or is_wired(job):
        return None
    return "positive earth", "its shell is the plus, which this loom fuses: it may not come home by the frame."
