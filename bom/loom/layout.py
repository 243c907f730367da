"""From a job to its loom, for one key arrangement."""

from bom.loom.builder import Builder
from bom.loom.low_volt import lay_out_low_volt
from bom.loom.model import Loom
from bom.loom.taps import lay_out_taps
from bom.loom.traction import lay_out_traction
from bom.margins import Margins
from bom.read.job import JobFile


def lay_out(job: JobFile, margins: Margins, key_at: str) -> Loom:
    """Lay out the whole loom with the key at "12 V" or at "pack volts"."""
    build = Builder(job, margins, key_at)
    lay_out_traction(build)
    lay_out_taps(build)
    lay_out_low_volt(build)
    for purpose in ("traction voltage", "isolator", "fuse table", "wait time"):
        build.place(f"{purpose} label", "label", f"label: {purpose}", "labels", "frame")
    return build.done()
