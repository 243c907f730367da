"""The workbook: its sheets in the order a builder asks for them."""

from openpyxl import Workbook
from openpyxl.styles.cell_style import StyleArray

from bom.papers.looks import NORMAL, Look
from bom.papers.page import Page, clean
from bom.papers.page_setup import set_up
from bom.papers.save import saved
from bom.papers.sheet_assumptions import write_assumptions
from bom.papers.sheet_bike import write_donor, write_wires
from bom.papers.sheet_blinkers import write_blinkers
from bom.papers.sheet_budget import write_budget
from bom.papers.sheet_checks import write_checks
from bom.papers.sheet_closing import write_closing
from bom.papers.sheet_find_out import write_find_out
from bom.papers.sheet_key import write_key
from bom.papers.sheet_leads import write_leads
from bom.papers.sheet_lights import write_lights
from bom.papers.sheet_motor import write_motor_side
from bom.papers.sheet_opens import write_opens
from bom.papers.sheet_orders import write_orders
from bom.papers.sheet_parts import write_parts
from bom.papers.sheet_prices import write_prices
from bom.papers.sheet_received import write_received
from bom.papers.sheet_shorts import write_shorts
from bom.papers.sheet_states import write_states, write_wire_amps
from bom.papers.sheet_summary import write_summary
from bom.papers.sheet_volts import write_volts_and_fuses
from bom.session import Session

SHEETS = (
    "Summary",
    "Parts",
    "Orders",
    "Prices",
    "Checks",
    "Received",
    "Find out",
    "12 V budget",
    "Donor",
    "Key",
    "Wires",
    "Leads",
    "Volts and fuses",
    "States",
    "Wire amps",
    "Shorts",
    "Open wires",
    "Closing",
    "Motor side",
    "Lamps",
    "Blinkers",
    "Assumptions",
)
HEADING_ROW = {"Summary": 3, "12 V budget": 4}
FROZEN = {
    "Parts": "C4",
    "Wires": "C4",
    "Key": "B4",
    "Leads": "D4",
    "Checks": "C4",
    "States": "B4",
    "Wire amps": "C4",
    "Shorts": "C4",
    "Open wires": "C4",
    "12 V budget": "B5",
}


def workbook(session: Session) -> bytes:
    """Give the finished workbook's bytes."""
    book, build, job = Workbook(), session.build, session.loaded.job
    book.remove(book.worksheets[0])
    book._named_styles["Normal"].font = NORMAL  # type: ignore[attr-defined]  # the stubs leave it out
    styles: dict[Look, StyleArray] = {}
    pages = {name: Page(book.create_sheet(name), styles) for name in SHEETS}
    parts = write_parts(pages["Parts"], build, write_prices(pages["Prices"], build, job.money))
    write_orders(pages["Orders"], session, parts)
    write_checks(pages["Checks"], build)
    write_received(pages["Received"], build)
    write_find_out(pages["Find out"], session)
    write_budget(pages["12 V budget"], build)
    write_donor(pages["Donor"], session)
    write_key(pages["Key"], session)
    write_wires(pages["Wires"], build)
    write_leads(pages["Leads"], build)
    write_volts_and_fuses(pages["Volts and fuses"], build, session.catalogue)
    write_states(pages["States"], build)
    write_wire_amps(pages["Wire amps"], build)
    write_shorts(pages["Shorts"], build)
    write_opens(pages["Open wires"], build)
    write_closing(pages["Closing"], build)
    write_motor_side(pages["Motor side"], build)
    write_lights(pages["Lamps"], build)
    write_blinkers(pages["Blinkers"], build)
    write_assumptions(pages["Assumptions"], session)
    write_summary(pages["Summary"], session, parts)
    for name, page in pages.items():
        repeat = HEADING_ROW.get(name, 3)
        freeze = FROZEN.get(name, f"A{repeat + 1}")
        set_up(page, title=job.title, repeat=repeat, freeze=freeze, cover=name == "Summary")
    book.properties.title = clean(job.title)
    book.calculation.fullCalcOnLoad = True
    return saved(book, job.date, {name: page.results for name, page in pages.items()})
