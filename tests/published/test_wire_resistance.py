"""Published: resistance of hot copper, and volts lost in a wire."""

import csv
from pathlib import Path

import pytest

from bom.physics.conductor import (
    copper_resistance_mohm_per_m,
    copper_temperature_factor,
    hot_resistance_ohm,
)

FOOT_M = 0.3048
CIRCULAR_MIL_MM2 = 5.067075e-4


# Published: FAA AC 43.13-1B Chg 1 paragraph 11-66, L2 = 254.5 L1 / (234.5 + T2); formula read second-hand on
# a public page. Worked: the ratio L2 / L1 is one over the resistance factor.
@pytest.mark.parametrize(("temperature_c", "printed"), [(70.0, "0.8358"), (90.0, "0.7843"), (150.0, "0.6619")])
def test_hot_length_factor(agrees, temperature_c, printed):
    assert agrees(1 / copper_temperature_factor(temperature_c=temperature_c), printed)


# Published: IEC 60228 Annex B, correction to 20 C; read second-hand on a public page. The annex prints the
# rounded formula 250 / (230 + T), which lies up to 0.002 from the coefficient it stands for.
@pytest.mark.parametrize(("temperature_c", "printed"), [(5.0, 1.064), (40.0, 0.926), (60.0, 0.862), (75.0, 0.820)])
def test_correction_to_20_c(temperature_c, printed):
    assert 1 / copper_temperature_factor(temperature_c=temperature_c) == pytest.approx(printed, abs=0.0025)


# Published: BS 7671 Table 4E1B column 2, DC, two cables at 90 C, mV/A/m; read second-hand on a public page.
# Resistances: IEC 60228 class 2 plain at 20 C, read second-hand. At 35 mm2 the table prints 1.35, which is
# its step of 0.05 upwards from 1.34; the product of the standard's own figures stands here.
@pytest.mark.parametrize(
    ("ohm_per_km", "printed"),
    [
        (7.41, "19"),
        (4.61, "12"),
        (3.08, "7.9"),
        (1.83, "4.7"),
        (0.727, "1.85"),
        (0.524, "1.34"),
        (0.193, "0.49"),
        (0.153, "0.39"),
    ],
)
def test_drop_of_a_pair_at_90_c(agrees, ohm_per_km, printed):
    pair_ohm = hot_resistance_ohm(resistance_20_mohm_per_m=ohm_per_km, length_m=2.0, temperature_c=90.0)
    assert agrees(pair_ohm * 1000, printed)


# Worked: go and return, IEC 60228 class 5 at 20 C times the factor, by hand.
@pytest.mark.parametrize(
    ("ohm_per_km", "current_a", "one_way_m", "temperature_c", "printed"),
    [
        (0.780, 150.0, 1.2, 20.0, "0.28080"),
        (0.780, 150.0, 1.2, 90.0, "0.35805"),
        (0.386, 300.0, 1.0, 90.0, "0.29531"),
        (7.98, 10.0, 2.0, 60.0, "0.36938"),
        (1.21, 100.0, 1.5, 105.0, "0.48426"),
    ],
)
def test_worked_drops(*, agrees, ohm_per_km, current_a, one_way_m, temperature_c, printed):
    resistance_ohm = hot_resistance_ohm(
        resistance_20_mohm_per_m=ohm_per_km, length_m=2 * one_way_m, temperature_c=temperature_c
    )
    assert agrees(current_a * resistance_ohm, printed)


# Published: FAA AC 43.13-1B Chg 1 Tables 11-7 and 11-8, run length with its return; read second-hand on a
# public page. Two misprints: Table 11-7 prints 3.60 for 3.555, and Table 11-8 prints 0.366 for 0.491; the
# product of the row's own figures stands here.
@pytest.mark.parametrize(
    ("ohm_per_ft", "length_ft", "printed"),
    [
        (0.00044, 107, "0.942"),
        (0.00028, 90, "0.504"),
        (0.00202, 88, "3.555"),
        (0.00126, 39, "0.98"),
        (0.00126, 19.5, "0.491"),
        (0.00126, 273, "6.88"),
    ],
)
def test_worked_drops_of_aircraft_wire(agrees, ohm_per_ft, length_ft, printed):
    resistance_ohm = hot_resistance_ohm(
        resistance_20_mohm_per_m=ohm_per_ft / FOOT_M * 1000, length_m=length_ft * FOOT_M, temperature_c=20.0
    )
    assert agrees(20.0 * resistance_ohm, printed)


# Published: ABYC E-11, least circular mils of its stranded sizes; read second-hand on a public page (16, 8
# and 4 from memory).
ABYC_SIZES_CIRCULAR_MIL = {
    "18": 1537,
    "16": 2336,
    "14": 3702,
    "12": 5833,
    "10": 9343,
    "8": 14810,
    "6": 24538,
    "4": 37360,
    "2": 62450,
    "1": 77790,
    "1/0": 98980,
}
# Derived: copper has the 10.75 ohm circular mil / ft of E-11's formula at 29.3 C.
ABYC_COPPER_C = 29.3


with (Path(__file__).parent / "data" / "boat_drops.csv").open(encoding="utf-8", newline="") as stream:
    BOAT_DROPS = list(csv.DictReader(stream))


# Published: ABYC E-11 Table IX, 12 V, 3 % drop, length out and back: data/boat_drops.csv.
@pytest.mark.parametrize("row", BOAT_DROPS, ids=lambda row: f"{row['current_a']}_A-{row['length_ft']}_ft")
def test_smallest_size_for_three_percent(row):
    current_a, length_ft = float(row["current_a"]), float(row["length_ft"])

    def drop_v(circular_mil: float) -> float:
        cold = copper_resistance_mohm_per_m(area_mm2=circular_mil * CIRCULAR_MIL_MM2)
        return current_a * hot_resistance_ohm(
            resistance_20_mohm_per_m=cold, length_m=length_ft * FOOT_M, temperature_c=ABYC_COPPER_C
        )

    fitting = [name for name, mils in ABYC_SIZES_CIRCULAR_MIL.items() if drop_v(mils) <= 0.36]
    # One row disagrees: 15 A over 60 ft is printed as 6 AWG, whose own circular mils (24 538) fall short of the
    # 26 875 that the rule's formula needs. The formula is followed; 4 AWG is the larger.
    assert fitting[0] == ("4" if row["current_a"] == "15" and row["length_ft"] == "60" else row["value"])


# Worked: IEC 60028's 0.00393 per kelvin, by hand.
@pytest.mark.parametrize(
    ("temperature_c", "printed"),
    [
        (-20.0, "0.84280"),
        (0.0, "0.92140"),
        (60.0, "1.15720"),
        (70.0, "1.19650"),
        (75.0, "1.21615"),
        (105.0, "1.33405"),
        (150.0, "1.51090"),
        (200.0, "1.70740"),
    ],
)
def test_factors_by_hand(agrees, temperature_c, printed):
    assert agrees(copper_temperature_factor(temperature_c=temperature_c), printed)


# Published: FAA AC 43.13-1B Chg 1 paragraph 11-66 example 2: 15.5 ft of 14 AWG allowed cold is 9.47 ft at
# 182 C, printed "about 9.5"; read second-hand on a public page.
def test_hot_run_length(agrees):
    assert agrees(15.5 / copper_temperature_factor(temperature_c=182.0), "9.5")


# Published: IEC 60028 and ASTM B193: 0.15328 ohm g/m2 at a density of 8.89 g/cm3; from memory.
def test_mass_resistivity(agrees):
    assert agrees(copper_resistance_mohm_per_m(area_mm2=1.0) / 1000 * 8.89, "0.15328")
