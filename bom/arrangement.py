"""The key arrangements: what the key's contact switches, and what each asks of the rest of the job."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bom.read.job import Item, JobFile

TWELVE = "12 V"
SLEEPING = "12 V, sleeping converter"
PACK = "pack volts"  # the converter's whole feed runs through the key
PACK_SLEEPING = "pack volts, sleeping converter"  # only the converter's enable and the key input do
ALL = (TWELVE, SLEEPING, PACK, PACK_SLEEPING)
AT_PACK, ASLEEP = (PACK, PACK_SLEEPING), (SLEEPING, PACK_SLEEPING)
DONORS_KEY = ", donor's key"  # said of an arrangement at pack volts in which the donor's own key stands


def arranged(job: "JobFile", key_at: str) -> "JobFile":
    """Give the job as an arrangement needs it: a sleeping converter wants a battery that feeds the key meanwhile."""
    if key_at != SLEEPING or job.wishes.buffer_battery:
        return job
    return job.model_copy(update={"wishes": job.wishes.model_copy(update={"buffer_battery": True})})


def compared(job: "JobFile") -> list[tuple[str, "JobFile"]]:
    """List every key arrangement with the job as it asks for it: the wished one first, and as the job says.

    Beside it the key at pack volts is a bought one, unless the donor's passes there and was not asked for; the donor's
    own in the converter's feed, whatever the rules say, is the last.
    """
    key = key_item(job)
    bought = with_item(job, key.name, keep="no") if key and key.keep == "yes" else job
    rest: list[tuple[str, JobFile]] = [(TWELVE, job), (SLEEPING, job), (PACK, bought), (PACK_SLEEPING, bought)]
    if key:
        rest.append((PACK, with_item(job, key.name, keep="yes")))
    wished = job.wishes.key
    if wished not in ALL:
        return rest
    return [(wished, job), *((key_at, asked) for key_at, asked in rest if key_at != wished or asked is not job)]


def key_item(job: "JobFile") -> "Item | None":
    """Find the donor's key switch, if it has one that may stay."""
    return next((item for item in job.donor.items if item.kind == "key switch" and item.may_stay), None)


def with_item(job: "JobFile", name: str, **changes: object) -> "JobFile":
    """Give the job with some keys of one donor item set otherwise."""
    items = [item.model_copy(update=changes) if item.name == name else item for item in job.donor.items]
    return job.model_copy(update={"donor": job.donor.model_copy(update={"items": items})})
