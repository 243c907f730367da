"""Distances that insulation needs: along a surface (creepage) and through air (clearance)."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TypeAlias

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range

Row: TypeAlias = tuple[float, ...]

_CREEPAGE_V: Row = (10, 12.5, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 320, 400, 500)
_GROUPS = MappingProxyType({"I": "I", "II": "II", "IIIa": "III", "IIIb": "III"})
# By pollution degree and material group; IIIa and IIIb are alike at these volts.
_CREEPAGE_MM: Mapping[tuple[int, str], Row] = MappingProxyType(
    {
        (1, "any"): (
            0.08,
            0.09,
            0.1,
            0.11,
            0.125,
            0.14,
            0.16,
            0.18,
            0.2,
            0.22,
            0.25,
            0.28,
            0.32,
            0.42,
            0.56,
            0.75,
            1.0,
            1.3,
        ),
        (2, "I"): (0.4, 0.42, 0.45, 0.48, 0.5, 0.53, 0.56, 0.6, 0.63, 0.67, 0.71, 0.75, 0.8, 1.0, 1.25, 1.6, 2.0, 2.5),
        (2, "II"): (0.4, 0.42, 0.45, 0.48, 0.5, 0.53, 0.8, 0.85, 0.9, 0.95, 1.0, 1.05, 1.1, 1.4, 1.8, 2.2, 2.8, 3.6),
        (2, "III"): (0.4, 0.42, 0.45, 0.48, 0.5, 0.53, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.6, 2.0, 2.5, 3.2, 4.0, 5.0),
        (3, "I"): (1.0, 1.05, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0, 2.5, 3.2, 4.0, 5.0, 6.3),
        (3, "II"): (1.0, 1.05, 1.1, 1.2, 1.25, 1.3, 1.6, 1.7, 1.8, 1.9, 2.0, 2.1, 2.2, 2.8, 3.6, 4.5, 5.6, 7.1),
        (3, "III"): (1.0, 1.05, 1.1, 1.2, 1.25, 1.3, 1.8, 1.9, 2.0, 2.1, 2.2, 2.4, 2.5, 3.2, 4.0, 5.0, 6.3, 8.0),
    }
)
_BOARD_V: Row = (50, 63, 80, 100, 125, 160, 200, 250, 320, 400, 500)
_BOARD_MM: Mapping[int, Row] = MappingProxyType(
    {
        1: (0.025, 0.04, 0.063, 0.1, 0.16, 0.25, 0.4, 0.56, 0.75, 1.0, 1.3),
        2: (0.04, 0.063, 0.1, 0.16, 0.25, 0.4, 0.63, 1.0, 1.6, 2.0, 2.5),
    }
)
_SUPPLY_V: Row = (50, 100, 150, 300)
_IMPULSE_V: Mapping[int, Row] = MappingProxyType(
    {
        1: (330, 500, 800, 1500),
        2: (500, 800, 1500, 2500),
        3: (800, 1500, 2500, 4000),
        4: (1500, 2500, 4000, 6000),
    }
)
# Below 1000 V every impulse takes the first row's distance.
_CLEARANCE_V: Row = (1000, 1200, 1500, 2000, 2500, 3000, 4000)
_CLEARANCE_MM: Mapping[int, Row] = MappingProxyType(
    {
        2: (0.2, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0),
        3: (0.8, 0.8, 0.8, 1.0, 1.5, 2.0, 3.0),
    }
)
_ALTITUDE_M: Row = (2000, 3000, 4000, 5000)
_ALTITUDE_FACTOR: Row = (1.0, 1.14, 1.29, 1.48)


def _next_row(name: str, value: Quantity, limits: Row, answers: Row) -> Answer:
    """Answer of the first row whose limit is not below the value."""
    check_range(name, value, low=0.0, high=limits[-1])
    found = np.asarray(answers)[np.minimum(np.searchsorted(limits, value), len(limits) - 1)]
    return np.where(np.isnan(value), np.nan, found)[()]


def creepage_mm(*, voltage_v: Quantity, pollution_degree: int, material_group: str) -> Answer:
    """Least way along a surface between bare live parts, basic insulation. Reinforced takes twice as much.

    The table's row at these volts, or else the next higher one.

    voltage_v         0 to 500   DC, or AC rms, that stands for long
    pollution_degree  1 (sealed), 2 (in a closed box) or 3 (open on a vehicle)
    material_group    I, II, IIIa or IIIb; IIIa where the plastic's tracking index is not known
    returns           mm; from 40 V up at pollution degree 3 it is more than any clearance here

    Raises RangeError outside those spans: no creepage is printed that stands pollution degree 4.
    Leaves out ribs, and potting, which makes a solid of the way.
    Source: IEC 60664-1:2020 Table F.5 (F.4 in 2007), read second-hand on a public page.
    """
    column = _GROUPS.get(material_group)
    row = _CREEPAGE_MM.get((pollution_degree, "any" if column and pollution_degree == 1 else column or ""))
    if row is None:
        raise RangeError(
            f"pollution_degree = {pollution_degree}, material_group = {material_group}: this table takes "
            f"1, 2 and 3, and {', '.join(_GROUPS)}"
        )
    return _next_row("voltage_v", voltage_v, _CREEPAGE_V, row)


def board_creepage_mm(*, voltage_v: Quantity, pollution_degree: int) -> Answer:
    """Least way between tracks of a printed board, basic insulation.

    voltage_v         0 to 500   DC, or AC rms
    pollution_degree  1 (coated or sealed) or 2 (in a closed box)
    returns           mm

    Raises RangeError outside those spans.
    Leaves out open boards: on a vehicle an uncoated board outside a closed box takes `creepage_mm` at 3.
    Source: as `creepage_mm`, printed wiring of material groups I to IIIa.
    """
    if pollution_degree not in _BOARD_MM:
        raise RangeError(f"pollution_degree = {pollution_degree}: this table takes 1 and 2")
    return _next_row("voltage_v", voltage_v, _BOARD_V, _BOARD_MM[pollution_degree])


def impulse_v(*, supply_v: Quantity, overvoltage_category: int) -> Answer:
    """Impulse that a circuit's insulation must stand.

    supply_v              0 to 300   line to neutral of the mains, or the DC volts
    overvoltage_category  1 to 4; a battery-only circuit is usually taken as 1 or 2
    returns               V

    Raises RangeError outside those spans.
    Leaves out surges that the circuit itself makes, such as a coil let go.
    Source: IEC 60664-1 Table F.1, read second-hand on a public page; the usual category is trade opinion.
    """
    if overvoltage_category not in _IMPULSE_V:
        raise RangeError(f"overvoltage_category = {overvoltage_category}: this table takes 1 to 4")
    return _next_row("supply_v", supply_v, _SUPPLY_V, _IMPULSE_V[overvoltage_category])


def clearance_mm(*, impulse_v: Quantity, pollution_degree: int, altitude_m: Quantity = 0.0) -> Answer:
    """Least gap through air for an impulse, inhomogeneous field, basic insulation.

    The table's row at this impulse or the next higher one, times the factor of the next higher altitude.

    impulse_v         0 to 4000
    pollution_degree  2 or 3
    altitude_m        0 to 5000   1 up to 2000 m, then 1.14, 1.29 and 1.48
    returns           mm

    Raises RangeError outside those spans.
    Leaves out reinforced insulation, which takes the next higher impulse.
    Source: IEC 60664-1 Tables F.2 (case A) and A.2, read second-hand on a public page.
    """
    if pollution_degree not in _CLEARANCE_MM:
        raise RangeError(f"pollution_degree = {pollution_degree}: this table takes 2 and 3")
    through_air = _next_row("impulse_v", impulse_v, _CLEARANCE_V, _CLEARANCE_MM[pollution_degree])
    return through_air * _next_row("altitude_m", altitude_m, _ALTITUDE_M, _ALTITUDE_FACTOR)
