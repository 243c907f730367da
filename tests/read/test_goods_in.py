"""The table of tests on parts that arrive is the shop's own, and its slips are told."""

import shutil
from pathlib import Path

import pytest

from bom.data import folder
from bom.errors import InputError
from bom.read.catalogue import Catalogue, read_catalogue
from bom.read.goods_in import test_of as row_for

HEAD = "family,column,proves,test,passes,minutes,source\n"


def read(tmp_path: Path, rows: str) -> Catalogue:
    shop = Path(shutil.copytree(folder("catalog"), tmp_path / "shop"))
    (shop / "settings" / "goods_in.csv").write_text(HEAD + rows, encoding="utf-8")
    return read_catalogue(shop)


def test_a_family_s_own_row_stands_over_the_one_for_all(tmp_path: Path) -> None:
    rows = ",stud_m,settles,caliper,{need},1,ours\nlug,stud_m,settles,a bolt,{need},2,ours\n"
    goods_in = read(tmp_path, rows).goods_in
    own, other = row_for("lug", "stud_m", goods_in), row_for("post", "stud_m", goods_in)
    assert own is not None
    assert other is not None
    assert (own.test, other.test) == ("a bolt", "caliper")
    assert row_for("lug", "area_min_mm2", goods_in) is None


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("lugg,stud_m,settles,caliper,{need},1,ours\n", "No family has this name."),
        ("lug,stud,settles,caliper,{need},1,ours\n", "No such column, and no such curve."),
        ("lug,stud_m,proves,caliper,{need},1,ours\n", "settles"),
        ("lug,stud_m,settles,caliper,it fits,1,ours\n", "Write {need} where the figure"),
    ],
)
def test_a_slip_is_told(tmp_path: Path, row: str, said: str) -> None:
    with pytest.raises(InputError) as caught:
        read(tmp_path, row)
    assert said in str(caught.value)


def test_no_ohm_meter_proves_isolation() -> None:
    """Trade: near zero proves a bond; open at a meter's volts proves nothing at the pack's."""
    goods_in = read_catalogue(folder("catalog")).goods_in
    for family in ("converter", "meter", "charger"):
        row = row_for(family, "isolated", goods_in)
        assert row is not None
        assert row.proves == "finds faults only"
        assert "proves nothing" in row.test


@pytest.mark.parametrize("column", ["breaking_points", "dc_breaking_a", "isolation_v", "time_band"])
def test_what_no_bench_settles_says_so(column: str) -> None:
    """Trade: breaking and standing off are tested once, by who makes the part."""
    rows = [row for row in read_catalogue(folder("catalog")).goods_in if row.column == column]
    assert rows
    assert all(row.proves == "nothing" and "only way" in row.test and "data sheet" in row.passes for row in rows)
