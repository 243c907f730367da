"""What a print on a donor's switch leaves open: coils behind its contacts."""

from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.read.job import Item

BREAKS = "contact-breaks-dc"


def print_words(item: Item, finding: Finding) -> str:
    """Tell why a printed figure does not answer what a contact breaks: it names lamps, and a coil dies slowly."""
    lacks = finding.rule == BREAKS and finding.verdict == Verdict.CANT_TELL
    if not lacks or item.breaks is None or item.dc_volts is None:
        return ""
    return f" Its {item.breaks:g} A at {item.dc_volts:g} V names no time constant, so it counts for lamps alone."
