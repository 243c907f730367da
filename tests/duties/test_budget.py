"""The 12 V budget of the street job by hand, lamps by UN R37."""

from collections.abc import Callable

import pytest
from pydantic import ValidationError

from bom.duties.budget import load_amps
from bom.duties.circuits import Facts, circuit_needs, rush_a
from bom.duties.envelope import envelope
from bom.loom.layout import lay_out
from bom.read.job import JobFile, Load
from bom.read.margins import Margins

Edited = Callable[..., JobFile]
FactsOf = Callable[..., Facts]

# Greatest watts of UN R37 03 series (21 W and 5 W read second-hand on a public page, others from memory) at 13.5 V:
# 60 W: 75 W at 13.2 V, x (13.5 / 13.2) ^ 1.6 = 77.75 W; 5 W: 6.6 W; 21 W: 26.5 W; 3 W: 3.45 W.
AMPS = {
    "headlamp": 5.759,
    "tail lamp": 0.489,
    "stop lamp": 1.963,
    "front indicators": 1.963,
    "rear indicators": 1.963,
    "horn": 3.0,
    "dash lamps": 0.511,
    "controller display": 0.222,
}
COILS = 2.6  # of the fixture


@pytest.mark.parametrize("load", AMPS)
def test_amps_of_a_load(load: str, edited: Edited, facts_of: FactsOf) -> None:
    assert facts_of(edited()).budget.loads[load].amps == pytest.approx(AMPS[load], abs=0.0006)


NIGHT = AMPS["headlamp"] + AMPS["tail lamp"] + AMPS["dash lamps"] + AMPS["controller display"] + COILS


@pytest.mark.parametrize(
    ("state", "amps"),
    [
        ("parked, key off", 0.0),
        ("key on, standing", 2.822),
        ("riding by day", 2.822),
        ("riding by night", 9.581),
        ("braking and indicating by night", 15.470),
        ("full throttle, empty pack", 9.581),
        ("regeneration, full pack", 4.785),
        ("charging", 0.0),
        ("rain, everything on", 18.470),
    ],
)
def test_amps_of_a_state(state: str, amps: float, edited: Edited, facts_of: FactsOf) -> None:
    assert facts_of(edited()).budget.states[state] == pytest.approx(amps, abs=0.003)


def test_worst_state_is_named(edited: Edited, facts_of: FactsOf) -> None:
    assert facts_of(edited()).budget.worst[0] == "rain, everything on"
    assert pytest.approx(9.581, abs=0.002) == NIGHT


def test_a_cold_headlamp_on_top(edited: Edited, facts_of: FactsOf) -> None:
    """Ten times its amps, nine of them extra: 18.470 + 9 x 5.759 (8 to 15 by lamp practice, from memory).

    The horn's 3 A once more: its contact is closed half the time (Trade).
    """
    assert rush_a(facts_of(edited())).high == pytest.approx(73.30, abs=0.02)


def test_converter_input_amps(edited: Edited, facts_of: FactsOf) -> None:
    """18.470 A x 13.5 V / 0.85 = 293.3 W, from 55.92 V."""
    carry = circuit_needs(facts_of(edited()))["converter input"]["carry_a"]
    assert carry.low == carry.high == pytest.approx(5.246, abs=0.002)


def test_light_switch_closes_on_cold_filaments(edited: Edited, facts_of: FactsOf) -> None:
    """Headlamp, tail and dash lamps: 6.759 A running, ten times that cold."""
    needs = circuit_needs(facts_of(edited()))["switch light switch"]
    assert needs["carry_a"].high == pytest.approx(6.759, abs=0.001)
    assert needs["make_a"].high == pytest.approx(67.59, abs=0.01)


def test_traction_making_and_reverse_amps(edited: Edited, facts_of: FactsOf) -> None:
    """5 % of 84 V left over 0.9 x 38 mohm: 122.8 A; without precharge all of 2456 A; 30 A of regeneration come back."""
    needs = circuit_needs(facts_of(edited()))["traction"]
    assert needs["make_a"].high == pytest.approx(122.8, abs=0.05)
    assert needs["reverse_a"].high == 30.0
    bare = circuit_needs(facts_of(edited("street-72", {"wishes.precharge": False})))["traction"]
    assert bare["make_a"].high == pytest.approx(2456.1, abs=0.1)


def test_mean_precharge_amps(edited: Edited, facts_of: FactsOf) -> None:
    """2.2 mF x 88 V / 3 s + 5 W / 62 V = 0.0645 + 0.0806 A."""
    carry = circuit_needs(facts_of(edited()))["precharge"]["carry_a"]
    assert carry.high == pytest.approx(0.1452, abs=0.0001)


def test_volts_between_motor_leads(edited: Edited, facts_of: FactsOf) -> None:
    """Six-step limit, sqrt(2 / 3) of the bus: 0.8165 x 88 V = 71.85 V (algebra)."""
    assert circuit_needs(facts_of(edited()))["phase"]["ac_voltage_v"].high == pytest.approx(71.85, abs=0.01)


def test_flasher_sees_one_side_as_printed(edited: Edited, facts_of: FactsOf, margins: Margins) -> None:
    """2 x 21 W."""
    facts = facts_of(edited())
    duties = envelope(lay_out(facts.job, margins, "12 V"), facts)
    assert duties["flasher"].flasher_w.high == 42.0


@pytest.mark.parametrize(
    ("wire", "drop_v"),
    [
        # 1 % of 62 V over 0.15 + 0.45 + 0.3 + 0.9 = 1.8 m
        ("pack lead", 0.62 * 0.15 / 1.8),
        ("controller lead", 0.62 * 0.3 / 1.8),
        # 3 % of 62 V over the tap and its return, 2 x 0.6 m
        ("converter feed", 1.86 / 2),
        # 3 % of 13.5 V over 1.6 m to the switch, 0.6 m to the lamp, 1.6 m back, 0.15 m of tail for each of the three
        ("headlamp circuit to the light switch", 0.405 * 1.6 / 4.25),
        ("wire to the headlamp", 0.405 * 0.6 / 4.25),
        ("wire from the headlamp", 0.405 * 1.6 / 4.25),
    ],
)
def test_share_of_the_drop(wire: str, drop_v: float, edited: Edited, facts_of: FactsOf, margins: Margins) -> None:
    facts = facts_of(edited())
    duties = envelope(lay_out(facts.job, margins, "12 V"), facts)
    assert duties[wire].drop_v.high == pytest.approx(drop_v, rel=1e-9)


@pytest.mark.parametrize("key_at", ["12 V", "pack volts"])
def test_shares_of_the_main_path_add_up_to_the_whole(
    key_at: str, edited: Edited, facts_of: FactsOf, margins: Margins
) -> None:
    facts = facts_of(edited(), key_at)
    loom = lay_out(facts.job, margins, key_at)
    duties = envelope(loom, facts)
    main = [wire.name for wire in loom.wires if loom.place(wire.name).circuit == "traction"]
    assert sum(duties[name].drop_v.high for name in main) == pytest.approx(0.62)


def test_charger_duties(edited: Edited, facts_of: FactsOf, margins: Margins) -> None:
    facts = facts_of(edited())
    duty = envelope(lay_out(facts.job, margins, "12 V"), facts)["charger"]
    assert (duty.charge_end_v.high, duty.charge_limit_a.high, duty.charge_wish_a.high) == (84.0, 45.0, 10.0)


def test_a_duty_nobody_has_is_a_fault_of_the_program(edited: Edited, facts_of: FactsOf, margins: Margins) -> None:
    facts = facts_of(edited())
    duty = envelope(lay_out(facts.job, margins, "12 V"), facts)["charger"]
    with pytest.raises(AttributeError, match="there is no duty lamp_w"):
        _ = duty.lamp_w


@pytest.mark.parametrize(
    ("keys", "each_w"),
    [
        # Published: UN R37, 5 W: R5W 5.5 W, P21/5W minor 6.6 W, at 13.5 V; from memory and second-hand
        ({"kind": "filament", "power": "5 W"}, 6.6),
        ({"kind": "filament", "power": "5 W", "category": "R5W"}, 5.5),
        # Published: UN R128, W5W LED 2 W; read second-hand on a public page
        ({"kind": "LED", "power": "1.2 W", "category": "W5W/LED"}, 2.0),
        ({"kind": "LED", "power": "1.2 W"}, 1.2),
    ],
)
def test_a_lamp_of_a_known_category(keys: dict[str, object], each_w: float) -> None:
    load = Load.model_validate({"name": "lamp", "on": ["key"], **keys})
    assert load_amps(load, 13.5).each_w == pytest.approx(each_w)
    assert load_amps(load, 13.5).amps == pytest.approx(each_w / 13.5)


@pytest.mark.parametrize("keys", [
    {"kind": "filament", "power": "10 W", "category": "R5W"},
    {"kind": "filament", "power": "5 W", "category": "W5W/LED"},
    {"kind": "LED", "power": "3 W", "category": "W5W/LED"},
    {"kind": "motor", "power": "5 W", "category": "R5W"},
])  # fmt: skip
def test_a_category_of_other_watts_is_refused(keys: dict[str, object]) -> None:
    with pytest.raises(ValidationError, match="Leave out category, or write one of this kind and watts"):
        Load.model_validate({"name": "lamp", "on": ["key"], **keys})
