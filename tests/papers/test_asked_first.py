"""What the build sheet asks first of the authority, and what it has measured at the lamps."""

from dataclasses import replace

from bom.papers.build_sheet import build_sheet
from bom.papers.registration_rows import registration_rows
from bom.read.registration import Registration
from bom.session import Session


def test_the_questions_come_before_what_is_bought(sound: Session) -> None:
    text = build_sheet(sound)
    assert text.index("## Before anything is bought") < text.index("## Settle these first")
    assert "| Does everything bolt on, with nothing of the frame drilled, cut or welded? | yes |" in text
    assert "| How many kW has the motor, as its maker rates it? | 11 kW |" in text


def test_what_is_not_said_is_left_to_be_filled_in() -> None:
    answers = [answer for _, answer in registration_rows(Registration(title_clear=False))]
    assert answers == ["no", "", "", "", ""]


def test_lamp_bodies_are_measured(sound: Session, framed: Session) -> None:
    """Common practice: below 0.1 ohm from each lamp body to what it returns by."""
    assert "Ohms from the 12 V minus to each lamp body: below **0.1 ohm**" in build_sheet(sound)
    assert "Ohms from the frame to each lamp body: below **0.1 ohm**" in build_sheet(framed)


def test_the_sheet_holds_back_a_key_input_of_unknown_volts(sound: Session) -> None:
    """Trade: pack volts into a 12 V input burn it; its wire waits for the diagram."""
    hold = "Do not join its wire until its diagram"
    assert hold not in build_sheet(sound)
    job = sound.loaded.job
    told = {key: value for key, value in job.controller.model_dump(exclude_unset=True).items() if key != "key_input"}
    control = job.controller.model_construct(_fields_set=set(told), **dict(job.controller))
    unsaid = replace(sound, loaded=replace(sound.loaded, job=job.model_copy(update={"controller": control})))
    assert hold in build_sheet(unsaid)
