"""What every formula promises: ranges kept, unknown in gives unknown out, columns in give columns out."""

import inspect
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest

from bom.errors import RangeError
from bom.physics import (
    adiabatic,
    air,
    ampacity,
    arc,
    breaking,
    cable_limits,
    conductor,
    creepage,
    discharge,
    fault_heat,
    fuse,
    heat_balance,
    inrush,
    isolation,
    joint,
    lamp,
    motor,
    pack,
    phase,
    precharge,
    pulse,
)

POINTS = ((1.0, 360000.0, math.nan), (2.0, 2.0, 50.0))
CABLE = {
    "conductor_mm": (7.8, 0.3, 30.0),
    "outside_mm": (10.4, 0.3, 150.0),
    "resistance_20_mohm_per_m": (0.743, 0.05, 250.0),
    "ambient_c": (30.0, -40.0, 150.0),
    "emissivity": (0.9, 0.1, 1.0),
}
TEMPERATURES = {"start_c": (90.0, -40.0, 250.0), "end_c": (250.0, -40.0, 350.0)}
FAULT = {"area_mm2": (25.0, 0.05, 240.0), "current_a": (600.0, 0.0, 100000.0), "start_c": (90.0, -40.0, 250.0)}
RUSH = {
    "voltage_v": (84.0, 0.0, 1000.0),
    "resistance_ohm": (0.02, 1e-4, 1e6),
    "capacitance_f": (1e-3, 1e-7, 0.5),
    "inductance_h": (1e-6, 0.0, 0.01),
}
COLD = {
    "voltage_v": (13.5, 0.0, 40.0),
    "running_a": (4.0, 0.0, 100.0),
    "cold_multiple": (10.0, 1.0, 20.0),
    "time_constant_s": (0.01, 1e-4, 0.1),
}
COIL = {
    "voltage_v": (12.0, 0.1, 1000.0),
    "resistance_ohm": (3.0, 0.1, 1e5),
    "inductance_h": (0.1, 1e-6, 100.0),
    "pull_in_a": (2.0, 0.0, 100.0),
}
DRIVE = {
    "bus_v": (84.0, 1.0, 1000.0),
    "line_v": (40.0, 0.1, 1000.0),
    "power_factor": (0.9, 0.05, 1.0),
    "efficiency": (0.95, 0.3, 1.0),
}
CIRCUIT = {"resistance_ohm": (100.0, 0.1, 1e6), "capacitance_f": (1e-3, 1e-7, 0.5)}


@dataclass(frozen=True)
class Formula:
    """A formula, its numbers as (a usual value, least, most), and arguments that are not numbers.

    Of a formula that gives several answers, `part` names the one looked at.
    """

    function: Callable[..., Any]
    numbers: dict[str, tuple[float, float, float]]
    others: dict[str, Any]
    part: str = ""

    def answer(self, **arguments: Any) -> Any:
        given = self.function(**arguments)
        return getattr(given, self.part) if self.part else given


FORMULAS = [
    Formula(conductor.copper_resistance_mohm_per_m, {"area_mm2": (2.5, 0.05, 240.0)}, {}),
    Formula(conductor.copper_temperature_factor, {"temperature_c": (70.0, -40.0, 250.0)}, {}),
    Formula(
        conductor.hot_resistance_ohm,
        {
            "resistance_20_mohm_per_m": (7.6, 0.05, 250.0),
            "length_m": (2.0, 0.0, 100.0),
            "temperature_c": (70.0, -40.0, 250.0),
        },
        {},
    ),
    Formula(air.nusselt_horizontal_cylinder, {"prandtl": (0.7, 0.5, 10.0), "grashof": (1e4, 0.0, 1e12)}, {}),
    Formula(
        air.surface_loss_w_per_m,
        {
            "outside_mm": (10.0, 0.3, 150.0),
            "surface_c": (70.0, -40.0, 250.0),
            "ambient_c": (30.0, -40.0, 250.0),
            "emissivity": (0.9, 0.0, 1.0),
        },
        {},
    ),
    Formula(
        heat_balance.heat_balance_a,
        CABLE | {"conductor_c": (90.0, -40.0, 250.0)},
        {"insulation": "XLPE"},
    ),
    Formula(
        ampacity.table_a,
        {
            "area_mm2": (25.0, 0.05, 120.0),
            "conductor_c": (90.0, -40.0, 250.0),
            "ambient_c": (30.0, -40.0, 150.0),
        },
        {},
    ),
    Formula(ampacity.bundle_factor, {"loaded_wires": (6.0, 1.0, 20.0)}, {}),
    Formula(
        ampacity.ampacity_a,
        CABLE
        | {
            "area_mm2": (25.0, 0.05, 120.0),
            "cable_max_c": (90.0, -40.0, 250.0),
            "terminal_max_c": (105.0, -40.0, 250.0),
            "loaded_wires": (2.0, 1.0, 20.0),
        },
        {"insulation": "XLPE"},
    ),
    Formula(adiabatic.k_factor, TEMPERATURES, {}),
    Formula(adiabatic.withstand_a2s, TEMPERATURES | {"area_mm2": (25.0, 0.05, 240.0)}, {}),
    Formula(
        adiabatic.longest_s,
        TEMPERATURES | {"area_mm2": (25.0, 0.05, 240.0), "current_a": (4000.0, 0.1, 100000.0)},
        {},
    ),
    Formula(fault_heat.adiabatic_end_c, FAULT | {"time_s": (1.0, 0.0, 5.0)}, {}),
    Formula(
        fault_heat.end_with_loss_c,
        CABLE | FAULT | {"time_s": (20.0, 0.0, 86400.0)},
        {"insulation": "XLPE"},
    ),
    Formula(
        heat_balance.wall_k_m_per_w,
        {"conductor_mm": (7.8, 0.3, 30.0), "outside_mm": (10.4, 0.3, 150.0)},
        {"insulation": "PVC"},
    ),
    Formula(cable_limits.iec_60228_mohm_per_m, {"area_mm2": (2.5, 0.5, 240.0)}, {"strand_class": 5}),
    Formula(cable_limits.iso_6722_mohm_per_m, {"area_mm2": (2.5, 0.13, 120.0)}, {}),
    Formula(joint.joint_drop_v, {"current_a": (100.0, 0.0, 1e5), "resistance_ohm": (1e-3, 0.0, 1.0)}, {}),
    Formula(joint.joint_heat_w, {"current_a": (100.0, 0.0, 1e5), "resistance_ohm": (1e-3, 0.0, 1.0)}, {}),
    Formula(joint.contact_spot_c, {"drop_v": (0.1, 0.0, 0.5), "body_c": (60.0, -40.0, 250.0)}, {}),
    Formula(joint.greatest_joint_ohm, {"area_mm2": (2.5, 0.2, 240.0)}, {"kind": "terminal block"}),
    Formula(joint.least_joint_ohm, {"area_mm2": (2.5, 0.2, 240.0)}, {"kind": "terminal block"}),
    Formula(
        pack.pack_resistance_ohm,
        {
            "series": (20.0, 1.0, 200.0),
            "parallel": (2.0, 1.0, 200.0),
            "cell_resistance_mohm": (1.0, 0.05, 200.0),
        },
        {},
    ),
    Formula(
        pack.highest_fault_a,
        {"full_charge_v": (84.0, 1.0, 1000.0), "pack_resistance_ohm": (0.02, 0.0001, 20.0)},
        {},
    ),
    Formula(
        pack.lowest_fault_a,
        {
            "lowest_rest_v": (60.0, 1.0, 1000.0),
            "pack_resistance_ohm": (0.02, 0.0001, 20.0),
            "wire_resistance_ohm": (0.01, 0.0, 20.0),
            "cold_aged_factor": (4.0, 1.0, 10.0),
        },
        {},
    ),
    Formula(precharge.time_to_fraction_s, CIRCUIT | {"fraction": (0.95, 0.0, 0.999)}, {}),
    Formula(
        precharge.time_under_load_s,
        CIRCUIT
        | {
            "voltage_v": (84.0, 1.0, 1000.0),
            "load_w": (1.0, 0.0, 1e6),
            "fraction": (0.95, 0.0, 0.999),
            "load_starts_fraction": (0.2, 0.01, 1.0),
        },
        {},
    ),
    Formula(
        precharge.greatest_load_w,
        {
            "resistance_ohm": (100.0, 0.1, 1e6),
            "voltage_v": (84.0, 0.0, 1000.0),
            "fraction": (0.95, 0.5, 0.999),
        },
        {},
    ),
    Formula(
        precharge.stored_energy_j,
        {"capacitance_f": (1e-3, 1e-7, 0.5), "voltage_v": (84.0, 0.0, 1000.0)},
        {},
    ),
    Formula(
        precharge.worst_power_w,
        {"resistance_ohm": (100.0, 0.1, 1e6), "voltage_v": (84.0, 0.0, 1000.0)},
        {},
    ),
    Formula(
        discharge.time_to_volts_s,
        {
            "resistance_ohm": (1e4, 0.1, 1e7),
            "capacitance_f": (1e-3, 1e-7, 0.5),
            "start_v": (84.0, 0.0, 1000.0),
            "end_v": (60.0, 1.0, 1000.0),
        },
        {},
    ),
    Formula(fuse.latest_s, {"multiple": (2.0, 0.0, 1000.0)}, {"points": POINTS}),
    Formula(fuse.earliest_s, {"multiple": (2.0, 0.0, 1000.0)}, {"points": POINTS}),
    Formula(fuse.let_through_a2s, {"current_a": (60.0, 0.0, 100000.0)}, {"rated_a": 10.0, "points": POINTS}),
    Formula(
        fuse.rerating_fraction,
        {"ambient_c": (65.0, -60.0, 110.0)},
        {"points": ((20.0, 1.0), (110.0, 0.6))},
    ),
    Formula(
        lamp.power_at_v,
        {"test_w": (26.5, 0.0, 1000.0), "test_v": (13.5, 1.0, 40.0), "voltage_v": (14.0, 0.0, 40.0)},
        {},
    ),
    Formula(lamp.flux_ratio, {"test_v": (13.5, 1.0, 40.0), "voltage_v": (14.0, 0.0, 40.0)}, {}),
    Formula(lamp.life_ratio, {"test_v": (13.5, 1.0, 40.0), "voltage_v": (14.0, 0.0, 40.0)}, {}),
    Formula(isolation.floor_ohm, {"working_voltage_v": (84.0, 0.0, 1500.0)}, {}),
    Formula(
        isolation.measured_ohm,
        {
            "known_resistance_ohm": (5e4, 1e3, 1e7),
            "pack_v": (84.0, 1.0, 1500.0),
            "larger_v": (50.0, 0.1, 1500.0),
            "larger_with_resistor_v": (20.0, 0.1, 1500.0),
        },
        {},
    ),
    Formula(phase.line_rms_v, {"bus_v": (84.0, 0.0, 1500.0)}, {}),
    Formula(phase.greatest_line_rms_v, {"bus_v": (84.0, 0.0, 1500.0)}, {}),
    Formula(
        breaking.breaks_a,
        {"voltage_v": (60.0, 0.0, 1500.0), "time_constant_ms": (1.0, 0.0, 1000.0)},
        {"points": ((125.0, 0.5, 1.0), (30.0, 6.0, 1.0))},
    ),
    Formula(breaking.aviation_switch_a, {"running_a": (5.0, 0.0, 100.0)}, {"system_v": 12.0, "load": "lamp"}),
    Formula(arc.silver_arc_v, {"current_a": (5.0, 0.4, 20.0), "gap_mm": (0.5, 0.0, 10.0)}, {}),
    Formula(
        arc.put_out_a,
        {"voltage_v": (84.0, 1.0, 300.0), "gap_mm": (0.5, 0.0, 10.0), "gaps": (2.0, 1.0, 4.0)},
        {},
    ),
    Formula(arc.long_arc_v, {"current_a": (200.0, 10.0, 20000.0), "gap_mm": (10.0, 5.0, 500.0)}, {}),
    Formula(
        creepage.creepage_mm,
        {"voltage_v": (84.0, 0.0, 500.0)},
        {"pollution_degree": 3, "material_group": "IIIa"},
    ),
    Formula(creepage.board_creepage_mm, {"voltage_v": (84.0, 0.0, 500.0)}, {"pollution_degree": 2}),
    Formula(creepage.impulse_v, {"supply_v": (84.0, 0.0, 300.0)}, {"overvoltage_category": 2}),
    Formula(
        creepage.clearance_mm,
        {"impulse_v": (1500.0, 0.0, 4000.0), "altitude_m": (2500.0, 0.0, 5000.0)},
        {"pollution_degree": 3},
    ),
    Formula(
        discharge.harmless_capacitance_f,
        {"voltage_v": (84.0, 1.0, 1000.0), "energy_j": (0.2, 0.001, 10.0)},
        {},
    ),
    Formula(
        discharge.wait_s,
        {
            "resistance_ohm": (1e4, 0.1, 1e7),
            "capacitance_f": (1e-3, 1e-7, 0.5),
            "start_v": (84.0, 0.0, 1000.0),
            "motor_line_peak_v": (50.0, 0.0, 1000.0),
            "end_v": (60.0, 1.0, 1000.0),
        },
        {},
    ),
    Formula(
        discharge.safe_speed_fraction,
        {"full_speed_line_peak_v": (84.0, 1.0, 1000.0), "end_v": (60.0, 1.0, 1000.0)},
        {},
    ),
    *(Formula(inrush.capacitor_rush, RUSH, {}, part) for part in inrush.CapacitorRush._fields),
    *(Formula(inrush.filament_rush, COLD, {}, part) for part in inrush.FilamentRush._fields),
    Formula(
        inrush.limited_rush_s,
        {
            **{name: span for name, span in COLD.items() if name not in ("voltage_v", "running_a")},
            "voltage_v": (13.5, 0.1, 40.0),
            "running_a": (5.0, 0.01, 100.0),
            "limit_a": (8.0, 0.001, 1000.0),
            "reached_v": (6.0, 0.1, 40.0),
        },
        {},
    ),
    *(Formula(inrush.coil_pull, COIL, {}, part) for part in inrush.CoilPull._fields),
    Formula(
        precharge.left_after_precharge_v,
        {
            "resistance_ohm": (100.0, 0.1, 1e6),
            "voltage_v": (84.0, 0.0, 1000.0),
            "load_w": (1.0, 0.0, 1e6),
        },
        {},
    ),
    Formula(
        pulse.pulse_a2s,
        {"peak_a": (40.0, 0.0, 1e5), "time_s": (0.01, 0.0, 3600.0)},
        {"shape": "half sine"},
    ),
    Formula(
        pulse.ramp_a2s,
        {"start_a": (40.0, 0.0, 1e5), "end_a": (4.0, 0.0, 1e5), "time_s": (0.01, 0.0, 3600.0)},
        {},
    ),
    Formula(pulse.allowed_share, {"pulses": (5000.0, 1.0, 100000.0)}, {}),
    Formula(
        motor.line_peak_v,
        {"full_speed_line_peak_v": (84.0, 0.0, 1000.0), "speed_fraction": (0.5, 0.0, 2.0)},
        {},
    ),
    Formula(
        motor.shorted_bus_a,
        {
            "line_peak_v": (84.0, 0.0, 1000.0),
            "between_leads_ohm": (0.02, 1e-4, 100.0),
            "lead_ohm": (0.001, 0.0, 1.0),
            "phase_inductance_h": (1e-4, 0.0, 0.1),
            "electrical_hz": (500.0, 0.0, 5000.0),
        },
        {},
    ),
    Formula(motor.battery_a, DRIVE | {"phase_a": (200.0, 0.0, 2000.0)}, {}),
    Formula(motor.phase_a, DRIVE | {"battery_a": (100.0, 0.0, 2000.0)}, {}),
]


def name_of(formula: Formula) -> str:
    return f"{formula.function.__name__} {formula.part}".strip()


EACH_FORMULA = pytest.mark.parametrize("formula", FORMULAS, ids=name_of)
EACH_NUMBER = pytest.mark.parametrize(
    ("formula", "name"),
    [pytest.param(f, name, id=f"{name_of(f)}-{name}") for f in FORMULAS for name in f.numbers],
)


def usual(formula: Formula) -> dict[str, Any]:
    return {name: number[0] for name, number in formula.numbers.items()} | formula.others


@EACH_FORMULA
def test_a_float_gives_a_finite_float(formula):
    answer = formula.answer(**usual(formula))
    assert isinstance(answer, float)
    assert math.isfinite(answer)


@EACH_NUMBER
def test_unknown_in_gives_unknown_out(formula, name):
    assert math.isnan(formula.answer(**usual(formula) | {name: math.nan}))


@EACH_NUMBER
def test_a_column_in_gives_the_same_column_out(formula, name):
    value = formula.numbers[name][0]
    column = np.array([[value, math.nan], [value, value]])
    answer = formula.answer(**usual(formula) | {name: column})
    assert answer.shape == (2, 2)
    assert math.isnan(answer[0, 1])
    assert answer[1, 0] == pytest.approx(formula.answer(**usual(formula)), rel=1e-12)


@EACH_NUMBER
def test_outside_its_range_it_raises_and_says_which(formula, name):
    _, least, most = formula.numbers[name]
    for beyond in (least - max(1e-9, abs(least) * 1e-6), most * (1 + 1e-6)):
        with pytest.raises(RangeError, match=r"the (least|most) this formula takes|no more than") as caught:
            formula.answer(**usual(formula) | {name: beyond})
        assert name in str(caught.value)
        assert f"{beyond:g}" in str(caught.value)


@EACH_NUMBER
def test_the_limits_themselves_are_inside(formula, name):
    for limit in formula.numbers[name][1:]:
        try:
            formula.answer(**usual(formula) | {name: limit})
        except RangeError as error:
            # At this limit another argument's usual value may stand in the wrong order to it.
            if not re.search(r"no more than|voltage_v / test_v", str(error)):
                raise


@EACH_FORMULA
def test_one_bad_value_spoils_a_column(formula):
    name, (value, least, _) = next(iter(formula.numbers.items()))
    with pytest.raises(RangeError):
        formula.answer(**usual(formula) | {name: np.array([value, math.nan, least - 1.0])})


@EACH_FORMULA
def test_the_docstring_names_every_argument_and_its_source(formula):
    text = inspect.getdoc(formula.function)
    for name, parameter in inspect.signature(formula.function).parameters.items():
        assert parameter.kind is inspect.Parameter.KEYWORD_ONLY
        assert name in text or "others" in text
    for heading in ("returns", "Raises RangeError", "Leaves out", "Source:"):
        assert heading in text
