"""What a bench reading, or a figure, settles of the cells that ask for a test first.

A reading (held = true, with what was read) settles every cell of its item that asks for a test: the cell counts as
"stays". It gives no rating: where the rules have a place for the item and lack a figure, the item is tested first
until the figure is there. The amps a contact opened on the bench are such a figure: `tested` is a measured breaking
point at 12 V, and proves no more than that. A reading that says it did not hold takes the item out, before this.

A figure settles the 6 V cell of a contact: dc_volts and breaks that are measured, marked or of a data sheet, and with
which the rules pass it at the 12 V of this loom. A seller's word and a figure of unknown origin settle nothing, and
neither does a figure of an item that has no place in the loom: there is nothing to compare it with.

What the job says of a switch settles what would be asked of it: how the contact of a brake or kill switch works is
judged by its rule; a switch on the live side has a second lead, whatever the frame was; a flasher of two pins, or one
printed for its earth, is not asked which pole the frame is.
"""

from collections.abc import Sequence
from dataclasses import replace
from math import nan

from bom.choose.donor import FIRM
from bom.read.donor_matrix import Cell
from bom.read.job import CONTACTS, Item

TRIED = "tried on the bench, as the job says"
HOLDS = ("stays", "stays if")
PINS_THAT_DO_NOT_MIND = 2


def settled(cells: Sequence[Cell], item: Item, by_numbers: str) -> tuple[Cell, ...]:
    """Give the cells as they stand after the item's reading and figures.

    by_numbers  what the rules say of it at its places, "" where it has none
    """
    left = [cell for cell in cells if not (_by_figure(cell, item, by_numbers) or _by_word(cell, item))]
    if not item.held:
        return tuple(left)
    because = f"on the bench: {item.reading}"
    return tuple(
        replace(cell, verdict="stays", because=because, change="", minutes=nan, test="", settles="", source=TRIED)
        if cell.verdict == "test first"
        else cell
        for cell in left
    )


def settled_by_reading(cells: Sequence[Cell], item: Item) -> bool:
    """Tell whether the item's reading settles a cell."""
    return bool(item.held) and any(cell.verdict == "test first" for cell in cells)


def _by_figure(cell: Cell, item: Item, by_numbers: str) -> bool:
    """Tell whether the figures of a contact answer what its 6 V cell asks."""
    given = item.breaks is not None and item.dc_volts is not None and item.evidence in FIRM
    asked = cell.verdict == "test first" and item.kind in CONTACTS
    return cell.gate == "6 V" and asked and given and by_numbers in HOLDS


def _by_word(cell: Cell, item: Item) -> bool:
    """Tell whether the job says of a switch what its cell would have looked at."""
    if cell.gate == "AC-lit" and item.kind in ("brake switch", "kill switch"):
        return item.contact is not None
    if cell.gate == "positive earth" and item.kind == "flasher":  # what is printed is compared by its rule
        return item.pins == PINS_THAT_DO_NOT_MIND or (item.polarity is not None and item.evidence in FIRM)
    return cell.gate == "two-wire" and item.side == "live"
