"""What is asked of the contacts of a donor's switch beside its ratings: one for each fuse, and coils behind them."""

from math import nan

from bom.judge.finding import Finding
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.verdict import Verdict
from bom.read.donor_matrix import Cell
from bom.read.job import Item
from bom.rules.switch_keeps_fuses_apart import judge

BREAKS = "contact-breaks-dc"
CURE = "put what one contact feeds on one circuit, or give the second circuit a relay"
COUNT = "ohms between its leads in each position, to count separate contacts"


def contact_cells(item: Item, view: LoomView) -> tuple[Cell, ...]:
    """Say what its rule says of a switch that feeds loads behind several fuses; nothing of one that is right."""
    if not item.may_stay:
        return ()
    told = [answer for answer in judge(view) if answer.subject == f"switch {item.name}"]
    return tuple(_cell(answer) for answer in told if answer.verdict > Verdict.PASS)


def _cell(answer: LoomAnswer) -> Cell:
    if answer.verdict == Verdict.CANT_TELL:
        return Cell("", "test first", answer.because, "", "", nan, COUNT, answer.needed, "its rule")
    short = f"{answer.what}: {answer.offered}, needs {answer.needed} ({answer.because})"
    return Cell("", "stays if", short, CURE, "", 20.0, "", "", "its rule")


def print_words(item: Item, finding: Finding) -> str:
    """Tell why a printed figure does not answer what a contact breaks: it names lamps, and a coil dies slowly."""
    lacks = finding.rule == BREAKS and finding.verdict == Verdict.CANT_TELL
    if not lacks or item.breaks is None or item.dc_volts is None:
        return ""
    return f" Its {item.breaks:g} A at {item.dc_volts:g} V names no time constant, so it counts for lamps alone."
