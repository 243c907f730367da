"""The sheet of what happens at closing, at waking, and with the key off."""

from math import isfinite, nan

from bom import units
from bom.build import Build
from bom.circuit.waking import Loss
from bom.judge.parked_drain import empty_days, parked_days, parked_drain_a, parked_draws
from bom.papers.closing_rows import loss_words, losses, waits, walked_in
from bom.papers.looks import ALARM, AMPS, BOLD, NOTE, SECTION, TEXT, VOLTS, Look
from bom.papers.page import Heading, Page, four

RIGHT = Look(align="right", wrap=False)
RUSHES = (
    Heading("what closes", 40, BOLD),
    Heading("peak A", 12, AMPS),
    Heading("over in", 14, RIGHT),
    Heading("heat J", 12, AMPS),
    Heading("because", 70),
    Heading("to find out", 40),
)
DASH = "–"
NOTES = (
    "A peak is worked out from ohms, microfarads and cold filaments: evidence, no approval; a scope's reading stands "
    "over it. Never close onto an empty bus without precharge.",
    "The key turned on from parked, the pack full: volts that make each thing happen. Tick them off at the first "
    "closing, wheel raised; what you measure stands over these.",
    "A motor that turns can go on feeding the bus past an open contactor. ",
    "From the pack with the key off. Cells lose charge by themselves as well: measure after a minute.",
)


def write_closing(page: Page, build: Build) -> None:
    """Write the rushes, the waking order, what dies with what, and the drain with the key off."""
    page.put(1, 1, "Closing, waking, key off", SECTION)
    page.line(2, NOTES[0], NOTE, len(RUSHES))
    page.heading(3, RUSHES)
    row = 3
    for rush in build.walks.rushes:
        row += 1
        amps, heat = (four(value) for value in (rush.peak_a, rush.heat_j))
        time_s = "never" if rush.time_s == float("inf") else units.show(rush.time_s, "time")
        page.row(row, (rush.what, amps, time_s, heat, rush.because, rush.datum or DASH), RUSHES)
    row = _waking(page, row + 2, build)
    row = _losses(page, row + 2, build)
    _parked(page, row + 2, build)


def _title(page: Page, row: int, title: str, note: str) -> None:
    page.put(row, 1, title, SECTION)
    page.line(row + 1, note, NOTE, len(RUSHES))


def _waking(page: Page, row: int, build: Build) -> int:
    """Write the steps, then the coils that stay out."""
    _title(page, row, "Waking order", NOTES[1])
    row += 2
    page.heading(
        row, (Heading("step", 40, BOLD), Heading("V", 12, VOLTS), Heading("at", 14), Heading("", 12)), widths=False
    )
    waking = build.walks.waking
    for number, step in enumerate(waking.steps if waking else (), start=1):
        row += 1
        page.put(row, 1, f"{number}. {step.what}", BOLD)
        page.put(row, 2, round(step.volts, 1), VOLTS)
        page.line_in(row, 3, 4, step.at, TEXT)
    for stuck in waking.stuck if waking else ():
        row += 1
        page.put(row, 1, f"the {stuck.coil} stays out", ALARM)
        page.put(row, 2, round(stuck.volts, 1), VOLTS)
        page.line_in(row, 3, 5, waits(stuck), TEXT)
    if waking is None:
        row += 1
        page.line(row, "Not walked: no state of this bike has key and contactor on.", TEXT, len(RUSHES))
    return row


def _losses(page: Page, row: int, build: Build) -> int:
    _title(page, row, "What dies with what", f"{NOTES[2]}{walked_in(build).told}")
    row += 1
    for loss in losses(build):
        row += 1
        _loss(page, row, loss, build)
    return row


def _loss(page: Page, row: int, loss: Loss, build: Build) -> None:
    dark, drops = loss_words(loss, build)
    page.put(row, 1, loss.what, BOLD)
    page.line_in(row, 2, 5, f"goes dark: {dark}; drops out: {drops}", TEXT)


def _parked(page: Page, row: int, build: Build) -> None:
    """Write what stays on with the key off, and how long the pack lasts."""
    _title(page, row, "What stays on with the key off", NOTES[3])
    row += 2
    page.heading(row, (Heading("what", 40, BOLD), Heading("mA", 12, AMPS)), widths=False)
    view, facts = build.walks.bike.view, build.facts
    drain_a, unknown = parked_drain_a(view)
    for what, amps in (*parked_draws(view), ("together, as far as known" if unknown else "together", drain_a)):
        row += 1
        page.put(row, 1, what, BOLD)
        page.put(row, 2, four(amps * 1000), AMPS)
    lost = f"{facts.margins.drain_fraction:.0%}"
    for what, days in (
        (f"until {lost} of the pack is gone", parked_days(facts, drain_a)),
        ("from full until the cells are at their least", empty_days(facts, drain_a)),
    ):
        row += 1
        page.put(row, 1, what, BOLD)
        count = f"{days:.0f} days" if isfinite(days) else days
        page.put(row, 2, nan if unknown else count, RIGHT)
        page.line_in(row, 3, 5, f"at most {count}: {unknown} not known" if unknown else "by capacity and drain", TEXT)
