"""From a job to its loom, for one key arrangement."""

from bom.loom.beside import lay_out_beside
from bom.loom.builder import TAP_CIRCUITS, Builder
from bom.loom.leads import lay_out_leads
from bom.loom.low_volt import lay_out_low_volt
from bom.loom.model import SLEEVING, Loom
from bom.loom.taps import lay_out_taps
from bom.loom.traction import lay_out_traction
from bom.physics.isolation import is_above_low_voltage
from bom.physics.pack import CHEMISTRIES
from bom.read.job import JobFile
from bom.read.margins import Margins


def lay_out(job: JobFile, margins: Margins, key_at: str) -> Loom:
    """Lay out the whole loom in one of the key arrangements (bom.arrangement)."""
    build = Builder(job, margins, key_at)
    lay_out_traction(build)
    lay_out_taps(build)
    lay_out_low_volt(build)
    lay_out_leads(build)
    lay_out_beside(build)
    if _may_exceed_low_voltage(job):
        taps = [wire for wire in build.wires if build.cable(wire.name).circuit in TAP_CIRCUITS]
        length_m = sum(wire.length_m for wire in taps) / 2  # plus and minus of a tap share a sleeve
        build.place(SLEEVING, "sleeve", "orange sleeving over the taps", "labels", "frame", length_m)
    parked = ("live when parked",) if job.wishes.bus_stays_live else ()
    for purpose in ("traction voltage", "isolator", "fuse table", "wait time", *parked):
        build.place(f"{purpose} label", "label", f"label: {purpose}", "labels", "frame")
    return build.done()


def _may_exceed_low_voltage(job: JobFile) -> bool:
    """Tell whether the pack or regeneration may lift the bus above 60 V DC, where leads are marked orange."""
    pack = job.pack
    full = pack.full_charge or (pack.series or 0) * CHEMISTRIES[pack.chemistry].full_v
    limit = job.controller.over_voltage if job.controller.regen is not None else None
    return bool(is_above_low_voltage(voltage_v=max(full, limit or 0.0)))
