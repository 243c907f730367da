"""The sheets of the solved states, and of each wire in its worst."""

from math import isnan

from bom.build import Build
from bom.papers.looks import ALARM, AMPS, BOLD, NOTE, SECTION, VOLTS, WHOLE
from bom.papers.page import Heading, Page, four
from bom.papers.state_rows import StateRow, WireAmps, state_rows, wire_amps

DASH = "–"
LEAST_A = 5e-4  # less is printed as no amps
STATES = (
    Heading("state", 30, BOLD),
    Heading("cells", 9),
    Heading("pack V", 9, VOLTS),
    Heading("bus V", 9, VOLTS),
    Heading("converter in V", 12, VOLTS),
    Heading("converter in A", 12, AMPS),
    Heading("fuse box V", 9, VOLTS),
    Heading("lowest load", 22),
    Heading("its V", 8, VOLTS),
    Heading("pack A", 9, AMPS),
    Heading("hottest wire", 28),
    Heading("°C", 7, WHOLE),
    Heading("stands °C", 8, WHOLE),
    Heading("what lets go", 34),
)
WIRES = (
    Heading("no.", 6, BOLD),
    Heading("wire", 44, BOLD),
    Heading("A", 11, AMPS),
    Heading("for ever A", 12, AMPS),
    Heading("°C", 10, WHOLE),
    Heading("stands °C", 13, WHOLE),
    Heading("lasts", 12),
    Heading("in the state", 40),
)


def write_states(page: Page, build: Build) -> None:
    """Write every state."""
    page.put(1, 1, "States, solved as a circuit", SECTION)
    page.line(
        2,
        "The whole loom with the chosen parts, the pack at its weakest, contacts and joints at their sound worst. "
        f"A negative pack A charges it. {_buffer(build)}"
        "It is evidence and no approval: what you measure stands over it.",
        NOTE,
        len(STATES),
    )
    page.heading(3, STATES)
    for row, state in enumerate(state_rows(build), start=4):
        page.row(row, _cells(state), STATES)
        if state.lets_go:
            page.put(row, len(STATES), state.lets_go, ALARM)


def _buffer(build: Build) -> str:
    """Say why a parked bike with a buffer battery draws amps here and milliamps on the sheet Closing."""
    if not any(bridge.kind == "buffer" for bridge in build.loom.bridges):
        return ""
    return (
        "The buffer battery is taken part empty, so that it charges in every state; a full one takes next to nothing. "
    )


def _cells(state: StateRow) -> tuple[object, ...]:
    volts = tuple(_dashed(value) for value in (state.pack_v, state.bus_v, state.input_v))
    low = (_dashed(four(state.input_a), 3), _dashed(state.rail_v), state.load or DASH, _dashed(state.load_v))
    hot = (state.wire or DASH, _dashed(state.wire_c), _dashed(state.limit_c))
    return (state.name, state.cells, *volts, *low, _dashed(four(state.pack_a), 3), *hot, state.lets_go or "nothing")


def _dashed(value: float, digits: int = 1) -> float | str:
    """Round for the eye; a dash where nothing joins the points."""
    return DASH if isnan(value) else round(value, digits) + 0.0


def write_wire_amps(page: Page, build: Build) -> None:
    """Write every wire in its worst state."""
    page.put(1, 1, "Each wire in the state in which it carries most", SECTION)
    page.line(
        2,
        "Solved as on the sheet States. A burst may pass what a wire carries for ever: the sheet Checks judges it by "
        "its seconds. It is evidence and no approval: what you measure stands over it.",
        NOTE,
        len(WIRES),
    )
    page.heading(3, WIRES)
    for row, wire in enumerate(wire_amps(build), start=4):
        page.row(row, _wire_cells(wire), WIRES)


def _wire_cells(wire: WireAmps) -> tuple[object, ...]:
    idle = wire.amps < LEAST_A
    when = (DASH, "none") if idle else ("burst" if wire.burst else "for ever", wire.state)
    amps = (round(four(wire.amps), 3), four(wire.ampacity_a))
    return (wire.number, wire.wire, *amps, DASH if idle else round(wire.hot_c), round(wire.limit_c), *when)
