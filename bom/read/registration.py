"""What the authority is asked before a cent is spent: title, frame, inspector, power."""

from typing import Annotated

from pydantic import Field

from bom.read.quantity import quantity
from bom.read.section import Section

Kilowatts = Annotated[float, quantity("power", 100, 300_000)]


class Registration(Section):
    """The bike's papers, as far as the builder has asked; local authority stands over all of it."""

    title_clear: bool | None = Field(None, description="title in the owner's name, no lien, frame number as printed")
    frame_kept: bool | None = Field(None, description="bolt-on only: nothing of the frame drilled, cut or welded")
    inspector_asked: bool | None = Field(None, description="the authority or inspector was asked about this conversion")
    power: Kilowatts | None = Field(None, description="of the motor, as its maker rates it")
    donor_power: Kilowatts | None = Field(None, description="of the donor, as its papers say")


PAPERS = "papers"  # what they are called where they are judged

# Key -> the question as the intake sheet asks it, and what is to be found out.
QUESTIONS = {
    "title_clear": (
        "Is the title clear, in the owner's name, and the frame number as printed?",
        "whether the title is clear and in the owner's name",
    ),
    "frame_kept": (
        "Does everything bolt on, with nothing of the frame drilled, cut or welded?",
        "whether everything bolts on, with nothing of the frame drilled, cut or welded",
    ),
    "inspector_asked": (
        "Was the authority or inspector asked about this conversion?",
        "what the authority or inspector says of this conversion",
    ),
    "power": ("How many kW has the motor, as its maker rates it?", "kW of the motor"),
    "donor_power": ("How many kW had the donor, as its papers say?", "kW of the donor"),
}
