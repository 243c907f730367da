"""Amps that a wire may carry for ever: the lower of a heat balance and a published table, bundled."""

from collections.abc import Sequence

import numpy as np

from bom.physics.conductor import copper_temperature_factor
from bom.physics.heat_balance import heat_balance_a
from bom.physics.ranges import Answer, Quantity, check_range

__all__ = ["ampacity_a", "bundle_factor", "heat_balance_a", "table_a"]

_TABLE_AMBIENT_C = 30.0
_TABLE_SIZES_MM2 = np.array([1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0])
_TABLE_70_C_A = np.array([22.0, 30.0, 40.0, 51.0, 70.0, 94.0, 131.0, 162.0, 196.0, 251.0])
_TABLE_90_C_A = np.array([26.0, 36.0, 49.0, 63.0, 86.0, 115.0, 161.0, 200.0, 242.0, 310.0])

_BUNDLE_COUNTS = np.array([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 12.0, 16.0, 20.0])
_BUNDLE_FACTORS = np.array([1.00, 0.80, 0.70, 0.65, 0.60, 0.57, 0.54, 0.52, 0.50, 0.45, 0.41, 0.38])


def table_a(*, area_mm2: Quantity, conductor_c: Quantity, ambient_c: Quantity) -> Answer:
    """Published amps of a loaded copper pair in free air, moved to other temperatures.

    table * sqrt((Tc - Ta) / (Tb - 30) * R(Tb) / R(Tc)), Tb the column's own temperature: the 70 C column
    below 90 C, the 90 C column from there on

    area_mm2     0.05 to 120   nominal; below 1.5 the table is silent (inf); between two sizes the
                               smaller one counts, above 70 the 70 mm2 row
    conductor_c  -40 to 250    metal temperature that may not be passed
    ambient_c    -40 to 150
    returns      A; inf where the table is silent; 0 where the air is as hot as the conductor may be

    Raises RangeError outside those spans.
    Leaves out sun, bundles (see `bundle_factor`), sleeves and conduit.
    Source: IEC 60364-5-52:2009 Tables B.52.10 and B.52.12, copper: method E with two loaded cores up to
    16 mm2, method F with two touching single cores from 25 mm2; partly read second-hand on public pages,
    partly from memory. Temperature rule: IEC 60287-1-1, from memory.
    """
    check_range("area_mm2", area_mm2, low=0.05, high=120.0)
    check_range("conductor_c", conductor_c, low=-40.0, high=250.0)
    check_range("ambient_c", ambient_c, low=-40.0, high=150.0)
    resistance_factor = copper_temperature_factor(temperature_c=conductor_c)
    row = np.searchsorted(_TABLE_SIZES_MM2, area_mm2, side="right") - 1
    hot = np.asarray(conductor_c) >= 90.0
    base_c = np.where(hot, 90.0, 70.0)
    base_factor = copper_temperature_factor(temperature_c=base_c)
    listed_a = np.where(hot, _TABLE_90_C_A[row], _TABLE_70_C_A[row])
    rise_ratio = np.maximum(conductor_c - np.asarray(ambient_c), 0.0) / (base_c - _TABLE_AMBIENT_C)
    moved_a = listed_a * np.sqrt(rise_ratio * base_factor / resistance_factor)
    # A silent table stays silent even where a temperature or an area is not known.
    answer_a = np.where(row < 0, np.inf, moved_a)
    return np.where(np.isnan(area_mm2), np.nan, answer_a)[()]


def bundle_factor(*, loaded_wires: Quantity) -> Answer:
    """Share of its own amps that each wire of a bundle may carry.

    loaded_wires  1 to 20   wires that carry current at the same time, each one counted; between two
                            listed counts the higher one counts
    returns       ratio

    Raises RangeError outside that span.
    Leaves out that the published rows count circuits, not wires: counting wires reads low, and is safe.
    Source: IEC 60364-5-52:2009 Table B.52.17 row 1 (bunched in air), from memory.
    """
    check_range("loaded_wires", loaded_wires, low=1.0, high=float(_BUNDLE_COUNTS[-1]))
    row = np.searchsorted(_BUNDLE_COUNTS, loaded_wires, side="left")
    known = np.isfinite(loaded_wires)
    return np.where(known, _BUNDLE_FACTORS[np.where(known, row, 0)], np.nan)[()]


def ampacity_a(
    *,
    area_mm2: Quantity,
    conductor_mm: Quantity,
    outside_mm: Quantity,
    resistance_20_mohm_per_m: Quantity,
    cable_max_c: Quantity,
    terminal_max_c: Quantity,
    ambient_c: Quantity,
    insulation: str | Sequence[str],
    loaded_wires: Quantity,
    emissivity: Quantity = 0.9,
) -> Answer:
    """Amps that a wire in a bundle may carry for ever.

    min(heat balance, table) * bundle factor, at the lower of the cable's and the terminals' temperature

    cable_max_c     -40 to 250   temperature class of the cable
    terminal_max_c  -40 to 250   lowest limit of what it is joined to at either end
    others          as `heat_balance_a`, `table_a` and `bundle_factor`
    returns         A; 0 where the air is as hot as the lower limit; NaN where any figure is unknown

    Raises RangeError outside those spans.
    Leaves out what all three leave out. It checks a choice; a maker's own figure stands over it.
    Source: the three functions; taking the lower of model and table is common practice, no source.
    """
    check_range("cable_max_c", cable_max_c, low=-40.0, high=250.0)
    check_range("terminal_max_c", terminal_max_c, low=-40.0, high=250.0)
    conductor_c = np.minimum(cable_max_c, terminal_max_c)
    model_a = heat_balance_a(
        conductor_mm=conductor_mm,
        outside_mm=outside_mm,
        resistance_20_mohm_per_m=resistance_20_mohm_per_m,
        conductor_c=conductor_c,
        ambient_c=ambient_c,
        insulation=insulation,
        emissivity=emissivity,
    )
    listed_a = table_a(area_mm2=area_mm2, conductor_c=conductor_c, ambient_c=ambient_c)
    return np.minimum(model_a, listed_a) * bundle_factor(loaded_wires=loaded_wires)
