"""Greatest resistance that a standard allows a cable of a nominal size: what a sheet that gives none may hold."""

from collections.abc import Mapping

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range

# fmt: off
_IEC_60228_MOHM_PER_M = {
    2: {
        0.5: 36.0, 0.75: 24.5, 1.0: 18.1, 1.5: 12.1, 2.5: 7.41, 4.0: 4.61, 6.0: 3.08, 10.0: 1.83, 16.0: 1.15,
        25.0: 0.727, 35.0: 0.524, 50.0: 0.387, 70.0: 0.268, 95.0: 0.193, 120.0: 0.153, 150.0: 0.124,
        185.0: 0.0991, 240.0: 0.0754,
    },
    5: {
        0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3, 2.5: 7.98, 4.0: 4.95, 6.0: 3.30, 10.0: 1.91, 16.0: 1.21,
        25.0: 0.780, 35.0: 0.554, 50.0: 0.386, 70.0: 0.272, 95.0: 0.206, 120.0: 0.161, 150.0: 0.129,
        185.0: 0.106, 240.0: 0.0801,
    },
}
_ISO_6722_MOHM_PER_M = {
    0.13: 136.0, 0.22: 84.8, 0.35: 54.4, 0.5: 37.1, 0.75: 24.7, 1.0: 18.5, 1.25: 14.9, 1.5: 12.7, 2.0: 9.42,
    2.5: 7.60, 3.0: 6.15, 4.0: 4.71, 5.0: 3.94, 6.0: 3.14, 8.0: 2.38, 10.0: 1.82, 12.0: 1.52, 16.0: 1.16,
    20.0: 0.955, 25.0: 0.743, 30.0: 0.647, 35.0: 0.527, 40.0: 0.473, 50.0: 0.368, 60.0: 0.315, 70.0: 0.259,
    95.0: 0.196, 120.0: 0.153,
}
# fmt: on


def iec_60228_mohm_per_m(*, area_mm2: Quantity, strand_class: int) -> Answer:
    """Greatest resistance at 20 C of plain copper by the general cable standard.

    The table's row; nothing between two rows

    area_mm2      0.5 to 240   a listed nominal size
    strand_class  2 or 5       2 stranded for fixed wiring, 5 flexible
    returns       mohm/m at 20 C

    Raises RangeError outside that span, between two sizes, and for any other class.
    Leaves out tinned strands (up to 3 % more).
    Source: IEC 60228:2004 Tables 2 and 3, read second-hand on public pages. (50 mm2 is no slip: class 5
    has less there than class 2.)
    """
    if strand_class not in _IEC_60228_MOHM_PER_M:
        raise RangeError(f"strand_class = {strand_class}: this formula takes 2 or 5")
    check_range("area_mm2", area_mm2, low=0.5, high=240.0)
    return _row_of(area_mm2, _IEC_60228_MOHM_PER_M[strand_class])


def iso_6722_mohm_per_m(*, area_mm2: Quantity) -> Answer:
    """Greatest resistance at 20 C of plain copper by the road-vehicle cable standard.

    The table's row; nothing between two rows

    area_mm2  0.13 to 120   a listed nominal size
    returns   mohm/m at 20 C

    Raises RangeError outside that span and between two sizes.
    Leaves out tinned strands (2 to 7 % more).
    Source: ISO 6722-1:2011, resistance of conductors, from memory; about 5 % under IEC 60228 class 5.
    """
    check_range("area_mm2", area_mm2, low=0.13, high=120.0)
    return _row_of(area_mm2, _ISO_6722_MOHM_PER_M)


def _row_of(area_mm2: Quantity, table: Mapping[float, float]) -> Answer:
    """The row whose size is this area; NaN for NaN; RangeError for a size that is not listed."""
    sizes_mm2, rows = np.array(list(table)), np.array(list(table.values()))
    areas = np.asarray(area_mm2, dtype=float)
    known = ~np.isnan(areas)
    row = np.searchsorted(sizes_mm2, np.where(known, areas, sizes_mm2[0]))
    strange = known & (sizes_mm2[row] != areas)
    if np.any(strange):
        listed = ", ".join(f"{size:g}" for size in sizes_mm2)
        raise RangeError(f"area_mm2 = {areas[strange][0]:g}: this table lists {listed}")
    return np.where(known, rows[row], np.nan)[()]
