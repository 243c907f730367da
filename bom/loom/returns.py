"""How lamps come home: by wire, or through the frame."""

from bom.read.job import JobFile


def is_wired(job: JobFile) -> bool:
    """Tell whether lamps return by wire: as the builder says, else as the donor has it."""
    wish = job.wishes.two_wire
    return job.donor.lamp_return == "wire" if wish is None else wish


def gains_returns(job: JobFile) -> bool:
    """Tell whether lamps that returned through the frame return by wire now."""
    return job.donor.lamp_return == "frame" and is_wired(job)
