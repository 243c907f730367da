"""Places for what joins control leads, or caps them."""

from bom.leads.pairing import pair
from bom.loom.builder import Builder


def lay_out_leads(build: Builder) -> None:
    """Pair the leads of the job's devices, and place what is bought for them."""
    build.paired = pair(build.job)
    for fitting in build.paired.fittings:
        build.place(
            fitting.name,
            fitting.family,
            fitting.title,
            fitting.circuit,
            fitting.zone,
            fitting.count,
            leads=fitting.leads,
        )
