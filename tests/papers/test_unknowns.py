"""Quick ways and questions to suppliers come from the shop's own catalogue."""

import shutil
from pathlib import Path

import pytest

from bom.data import folder
from bom.errors import InputError
from bom.read.catalogue import read_catalogue
from bom.read.questions import quick_way


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    return Path(shutil.copytree(folder("catalog"), tmp_path / "shop"))


def write(shop: Path, name: str, text: str) -> None:
    (shop / "settings" / f"{name}.csv").write_text(text, encoding="utf-8")


def faults(shop: Path) -> str:
    with pytest.raises(InputError) as caught:
        read_catalogue(shop)
    return str(caught.value)


def test_the_shop_s_own_rows_are_used(shop: Path) -> None:
    write(shop, "find_out", "keyword,way,minutes,source\nIdle,ask Kim,7,ours\n,look it up,9,ours\n")
    write(shop, "ask_supplier", "family,column,question\nhorn,current_a,how many amps\n")
    catalogue = read_catalogue(shop)
    assert quick_way("the converter's idle amps", catalogue.find_out).way == "ask Kim"
    assert quick_way("anything else", catalogue.find_out).minutes == 9
    assert [question.question for question in catalogue.ask_supplier] == ["how many amps"]


@pytest.mark.parametrize("rows", ["", "idle,ask Kim,7,ours\n"])
def test_the_last_way_must_serve_every_other_figure(shop: Path, rows: str) -> None:
    write(shop, "find_out", f"keyword,way,minutes,source\n{rows}")
    assert "Leave the keyword of the last row blank" in faults(shop)


def test_a_question_names_a_column_that_is_there(shop: Path) -> None:
    write(shop, "ask_supplier", "family,column,question\nhorn,curent_a,how many\nhonr,current_a,how many\n")
    said = faults(shop)
    assert "The family has no such column." in said
    assert "No family has this name." in said
