"""Every fault of a file at once, in plain words, on the right line."""

import tomllib
from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from bom.errors import Fault
from bom.read.faults import faults_of
from bom.read.locate import Lines
from bom.read.quantity import quantity

Volts = Annotated[float, quantity("voltage", 1, 200)]
LampVolts = Annotated[float, quantity("voltage", 3, 60)]
Watts = Annotated[float, quantity("power", 0.05, 2000)]
Share = Annotated[float, quantity("fraction", 0, 1)]


class Section(BaseModel):
    model_config = ConfigDict(extra="forbid")


class Pack(Section):
    chemistry: Literal["NMC", "LFP", "lead-acid"]
    series: int | None = Field(None, ge=1, le=120)
    full_charge: Volts | None = None
    spare: Share = 0.1

    @model_validator(mode="after")
    def _has_volts(self) -> "Pack":
        if self.series is None and self.full_charge is None:
            raise ValueError("Give series or full_charge.")
        return self


class Load(Section):
    name: str
    power: Watts = Field(description="watts as printed")
    volts: LampVolts | Volts | None = None
    on: list[Literal["key", "riding"]] = Field(["key"], min_length=1)


class Lug(Section):
    kind: Literal["lug"]
    stud: int


class Tape(Section):
    kind: Literal["tape"]


class Job(Section):
    pack: Pack
    loads: list[Load] = []
    extras: list[Annotated[Lug | Tape, Field(discriminator="kind")]] = []
    rates: dict[str, float] = {}


def faults(text: str) -> list[Fault]:
    with pytest.raises(ValidationError) as caught:
        Job.model_validate(tomllib.loads(text))
    return faults_of(caught.value, file="bike.toml", lines=Lines.of(text), model=Job)


def only(text: str) -> tuple[int, str, str, str]:
    [fault] = faults(text)
    return fault.line, fault.place, fault.found, fault.accepted


PACK = '[pack]\nchemistry = "LFP"\nseries = 16\n'


def test_all_faults_at_once_with_their_lines() -> None:
    text = """\
[pack]
chemistry = "LPF"
seris = 20
full_charge = 84
[[loads]]
name = "headlamp"
power = "55 wat"
[[loads]]
name = 3
on = ["riding", "kee"]
"""
    assert [(fault.line, fault.place, fault.found) for fault in faults(text)] == [
        (2, "pack.chemistry", "LPF"),
        (4, "pack.full_charge", "84"),
        (3, "pack.seris", "seris"),
        (7, "loads[1] (headlamp).power", "55 wat"),
        (9, "loads[2].name", "3"),
        (8, "loads[2].power", ""),
        (10, "loads[2].on[2]", "kee"),
    ]


def test_the_fault_reads_as_one_sentence() -> None:
    [fault] = faults('[pack]\nchemistry = "LFP"\nfull_charge = 84\n')
    assert str(fault) == ('bike.toml line 3, pack.full_charge: found "84". Write a voltage with its unit, like "84 V".')


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            PACK + "seriess = 2\n",
            (4, "pack.seriess", "seriess", 'There is no such key here. The nearest is "series".'),
        ),
        (
            PACK + "qq = 2\n",
            (
                4,
                "pack.qq",
                "qq",
                "There is no such key here. The keys are chemistry, series, full_charge, spare.",
            ),
        ),
        (
            "[pack]\nseries = 16\n",
            (1, "pack.chemistry", "", 'It is missing. Write "NMC", "LFP" or "lead-acid".'),
        ),
        (
            "[rates]\n",
            (
                0,
                "pack",
                "",
                "It is missing. Write a table with the keys chemistry, series, full_charge, spare.",
            ),
        ),
        ('[pack]\nchemistry = "LFP"\n', (1, "pack", "", "Give series or full_charge.")),
        (
            '[pack]\nchemistry = "lfp"\nseries = 16\n',
            (2, "pack.chemistry", "lfp", 'Write "NMC", "LFP" or "lead-acid". The nearest is "LFP".'),
        ),
        (
            '[pack]\nchemistry = "LFP"\nseries = 0\n',
            (3, "pack.series", "0", "Write a whole number from 1 to 120, without quotes."),
        ),
        (
            '[pack]\nchemistry = "LFP"\nseries = "many"\n',
            (3, "pack.series", "many", "Write a whole number from 1 to 120, without quotes."),
        ),
        (
            PACK + 'full_charge = "840 V"\n',
            (
                4,
                "pack.full_charge",
                "840 V",
                'Write a voltage from 1 V to 200 V, like "84 V".',
            ),
        ),
        (
            PACK + '[[loads]]\nname = "lamp"\n',
            (
                4,
                "loads[1] (lamp).power",
                "",
                'It is missing (watts as printed). Write a power from 50 mW to 2 kW, like "55 W".',
            ),
        ),
        (
            PACK + '[[loads]]\nname = "lamp"\npower = "5 W"\nvolts = 12\n',
            (7, "loads[1] (lamp).volts", "12", 'Write a voltage with its unit, like "12 V".'),
        ),
        (
            PACK + '[[loads]]\nname = "lamp"\npower = "5 W"\non = []\n',
            (7, "loads[1] (lamp).on", "a list", "Write at least 1 item."),
        ),
        (
            PACK + '[[extras]]\nkind = "lug"\n',
            (4, "extras[1].stud", "", "It is missing. Write a whole number, without quotes."),
        ),
        (
            PACK + '[[extras]]\nkind = "glue"\n',
            (4, "extras[1]", "glue", 'Write "lug" or "tape" for "kind".'),
        ),
        (
            PACK + "[[extras]]\n",
            (4, "extras[1]", "", 'The key "kind" is missing; it says which kind of table this is.'),
        ),
        (
            PACK + '[rates]\nUSD = "x"\n',
            (5, "rates.USD", "x", "Write a number, without quotes."),
        ),
        (
            'pack = "LFP"\n',
            (1, "pack", "LFP", "Write a table with the keys chemistry, series, full_charge, spare."),
        ),
        (
            "loads = 3\n" + PACK,
            (1, "loads", "3", "Write a heading in double brackets, like [[loads]], above each entry."),
        ),
    ],
)
def test_each_kind_of_fault(text: str, expected: tuple[int, str, str, str]) -> None:
    assert only(text) == expected


def test_alternatives_are_one_fault() -> None:
    line, place, found, accepted = only(PACK + '[[loads]]\nname = "lamp"\npower = "5 W"\nvolts = "300 V"\n')
    assert (line, place, found) == (7, "loads[1] (lamp).volts", "300 V")
    assert accepted == (
        'Write a voltage from 3 V to 60 V, like "12.6 V". Or: Write a voltage from 1 V to 200 V, like "84 V".'
    )


def test_quantities_arrive_as_plain_numbers() -> None:
    text = '[pack]\nchemistry = "LFP"\nfull_charge = "58,4 V"\nspare = 0.2\n'
    job = Job.model_validate(tomllib.loads(text))
    assert job.pack.full_charge == 58.4
    assert job.pack.spare == 0.2


@pytest.mark.parametrize("value", ["true", "inf", "[1]", "1979-05-27"])
def test_other_values_are_no_quantity(value: str) -> None:
    *_, accepted = only(f"{PACK}full_charge = {value}\n")
    assert accepted == 'Write a voltage from 1 V to 200 V, like "84 V".'


def test_unknown_dimension_is_found_when_the_schema_is_written() -> None:
    with pytest.raises(KeyError):
        quantity("volt", 1, 2)
