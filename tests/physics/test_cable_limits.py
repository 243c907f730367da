import numpy as np
import pytest

from bom.errors import RangeError
from bom.physics.cable_limits import iec_60228_mohm_per_m, iso_6722_mohm_per_m


def test_nothing_is_read_between_two_sizes():
    with pytest.raises(RangeError, match=r"area_mm2 = 3: this table lists 0\.5, 0\.75, 1, 1\.5, 2\.5, 4"):
        iec_60228_mohm_per_m(area_mm2=np.array([2.5, np.nan, 3.0]), strand_class=5)
    with pytest.raises(RangeError, match=r"area_mm2 = 0\.8: this table lists 0\.13"):
        iso_6722_mohm_per_m(area_mm2=0.8)


@pytest.mark.parametrize("strand_class", [1, 6, 0])
def test_other_classes_are_refused(strand_class):
    with pytest.raises(RangeError, match=f"strand_class = {strand_class}: this formula takes 2 or 5"):
        iec_60228_mohm_per_m(area_mm2=2.5, strand_class=strand_class)


def test_a_whole_column_in_any_order():
    column = iso_6722_mohm_per_m(area_mm2=np.array([25.0, 0.75, 6.0]))
    assert column.tolist() == [0.743, 24.7, 3.14]
