"""The sheet of the lamps: what each gets, and the 12 V side in its worst moment."""

from math import isnan

from bom import units
from bom.build import Build
from bom.circuit.dips import Dip
from bom.circuit.lights import Light
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT, VOLTS, Look
from bom.papers.page import Heading, Page

DASH = "–"
SHARE = Look(align="right", wrap=False)
LAMPS = (
    Heading("lamp", 24, BOLD),
    Heading("kind", 24),
    Heading("least V", 10, VOLTS),
    Heading("in the state", 28),
    Heading("light", 10, SHARE),
    Heading("most V", 10, VOLTS),
    Heading("in the state", 28),
    Heading("life", 10, SHARE),
    Heading("taken as", 32),
)
DIP = (
    Heading("in the worst moment", 24, BOLD),
    Heading("what", 24),
    Heading("V", 10, VOLTS),
    Heading("lives on", 28),
)
NOTES = (
    "Solved with contacts and joints at their sound worst; new ones leave a little more. Light and life are over those "
    "at test volts (13.5 V, headlamps 13.2 V): light ~ V^3.4, life ~ V^-12. It is evidence and no approval.",
    "Everything on, the largest filament lights cold, horns have their contact closed. Volts are those of the first "
    "moment; times are estimates.",
)


def write_lights(page: Page, build: Build) -> None:
    """Write what each lamp gets, then the worst moment."""
    page.put(1, 1, "Lamps: volts at the lamp", SECTION)
    page.line(2, NOTES[0], NOTE, len(LAMPS))
    page.heading(3, LAMPS)
    row = 3
    for light in build.walks.lights:
        row += 1
        page.row(row, lamp_cells(light), LAMPS)
    if not build.walks.lights:
        row += 1
        page.line(row, "No lamp is lit in a state that stands.", TEXT, len(LAMPS))
    _dip(page, row + 2, build)


def lamp_cells(light: Light) -> tuple[object, ...]:
    """Give the cells of one lamp."""
    kind = light.kind if isnan(light.test_v) else f"{light.kind}, tested at {light.test_v:g} V"
    low = (round(light.low_v, 2), light.low_state, shown(light, light.light))
    high = (round(light.high_v, 2), light.high_state, shown(light, light.life))
    return (light.load, kind, *low, *high, light.assumed or DASH)


def shown(light: Light, value: float) -> str:
    """Print light or life; an LED lamp has no such law, and far from test volts it ends."""
    if light.kind == "LED":
        return DASH
    return "outside the law" if isnan(value) else f"{value:.0%}"


def _dip(page: Page, row: int, build: Build) -> None:
    dip = build.walks.dip
    page.put(row, 1, "The 12 V side in its worst moment", SECTION)
    page.line(row + 1, NOTES[1], NOTE, len(LAMPS))
    page.heading(row + 2, DIP, widths=False)
    rows = dip_rows(build, dip) if dip else [("none", "no state rides, or no converter stands", DASH, DASH)]
    for index, cells in enumerate(rows, start=row + 3):
        page.row(index, cells, DIP)


def dip_rows(build: Build, dip: Dip) -> list[tuple[object, ...]]:
    """List rail, coils and flasher with what they live on."""
    if dip.lets_go:
        return [("12 V side", "the converter switches off", 0.0, "a converter that rides it, or a buffer battery")]
    lit = f", {dip.filament} cold" if dip.filament else ""
    limits = " and limits" if dip.limits else ""
    given = f"the converter gives {units.show(dip.gives_a, 'current')}{limits}"
    rows: list[tuple[object, ...]] = [("12 V side", f"{dip.state}{lit}", round(dip.rail_v, 1), given)]
    flasher = build.filled.get("flasher")
    rows += [
        (coil, "coil", round(volts, 1), f"drops out below {units.show(dip.drops_v[coil], 'voltage')}")
        for coil, volts in dip.coils_v.items()
    ]
    if flasher and not isnan(dip.flasher_v):
        least = units.show(float(flasher.part.number("supply_min_v")[0]), "voltage")
        rows.append(("flasher", flasher.part_id, round(dip.flasher_v, 1), f"runs from {least}"))
    return rows
