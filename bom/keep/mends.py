"""Changes of the whole bike without which nothing of the donor could stay: its converter, its returns."""

from bom.build import Build
from bom.check.gates import is_common_minus
from bom.keep.ways import Way
from bom.loom.returns import is_wired

CONVERTER = "converter"
RETURNS_MINUTES = 240.0  # of a second lead to each lamp of a bike, a rough estimate


def mended(build: Build) -> Way | None:
    """Give the job with what endangers the whole bike mended, or None where nothing does.

    A pinned converter of common minus gives way to an isolated one; lamps that come home to a plus on the frame get
    returns by wire, and the donor's shells their tails.
    """
    job, titles, minutes = build.facts.job, [], 0.0
    if CONVERTER in job.pins and is_common_minus(build.walks.bike.view):
        pins = {place: part for place, part in job.pins.items() if place != CONVERTER}
        job = job.model_copy(update={"pins": pins})
        titles.append("an isolated converter")
    if job.donor.earth == "positive" and not is_wired(job):
        job = job.model_copy(update={"wishes": job.wishes.model_copy(update={"two_wire": True})})
        titles.append("returns by wire, with a tail at each shell")
        minutes += RETURNS_MINUTES
    return Way(", and ".join(titles), job, minutes) if titles else None
