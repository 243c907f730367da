"""The sheet of the motor's side."""

from math import isfinite

from bom import units
from bom.build import Build
from bom.circuit.motor_side import Figure
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT, Look
from bom.papers.page import Heading, Page

FIGURE = Look(align="right", wrap=False)
MOTOR = (
    Heading("figure", 44, BOLD),
    Heading("is", 14, FIGURE),
    Heading("because", 90),
    Heading("to find out", 44),
)


def write_motor_side(page: Page, build: Build) -> None:
    """Write the figures of the motor's side."""
    page.put(1, 1, "Motor side", SECTION)
    page.line(
        2,
        "Leads between controller and motor, and what still feeds the bus once the contactor is open. It is evidence "
        "and no approval: measured amps, volts and waiting times stand over it. A wheel that turns makes volts.",
        NOTE,
        len(MOTOR),
    )
    page.heading(3, MOTOR)
    figures = build.walks.motor
    for row, figure in enumerate(figures, start=4):
        page.row(row, (figure.what, shown(figure), figure.because, figure.datum or "–"), MOTOR)
    if not figures:
        page.line(4, "Nothing is known of the motor's side.", TEXT, len(MOTOR))


def shown(figure: Figure) -> str:
    """Print a figure in its unit; one without a dimension is a share."""
    if not figure.dimension:
        return f"{figure.value:.0%}" if isfinite(figure.value) else "not known"
    return units.show(figure.value, figure.dimension)
