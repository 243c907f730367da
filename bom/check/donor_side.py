"""What it means that a donor's switch lies on the earth side of its loads."""

from bom.check.gates import is_common_minus
from bom.judge.loom_view import LoomView
from bom.loom.returns import is_wired
from bom.read.job import Item


def side_words(item: Item, view: LoomView) -> str:
    """Say what the earth side asks of a switch in this loom; "" for one that lies before its loads."""
    if item.side != "earth":
        return ""
    job = view.facts.job
    if is_wired(job):
        told = "It lies in the return: its second lead goes to the minus rail"
        told += ", which is no longer the frame." if job.donor.lamp_return == "frame" else "."
    else:
        told = "It lies in the return and joins the frame: bare metal under its clamp."
    if job.donor.earth == "positive":
        told += " Its side was plus on this bike; here it is minus."
    if is_common_minus(view):
        told += " With a converter of common minus its lead belongs to the traction circuit: above 60 V never."
    return told
