"""The record: plain JSON that agrees with the build and with its list of keys."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from bom.data import folder
from bom.session import Session


@pytest.fixture(scope="session")
def kept(written: list[Path]) -> Any:
    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is no JSON")

    return json.loads(written[2].read_text(encoding="utf-8"), parse_constant=refuse)


def test_keys_are_sorted(written: list[Path]) -> None:
    def in_order(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        assert [key for key, _ in pairs] == sorted(key for key, _ in pairs)
        return dict(pairs)

    json.loads(written[2].read_text(encoding="utf-8"), object_pairs_hook=in_order)


def test_every_key_is_in_the_list(kept: Any) -> None:
    page = (folder("templates") / "record.md").read_text(encoding="utf-8")
    listed = {re.split(r"[.\[]", name)[0] for name in re.findall(r"`([a-z_]+)", page)}
    assert set(kept) <= listed


def test_findings_are_all_there(papers: Session, kept: Any) -> None:
    assert len(kept["findings"]) == len(papers.build.findings)
    for entry, finding in zip(kept["findings"], papers.build.findings, strict=True):
        assert (entry["subject"], entry["verdict"]) == (finding.subject, finding.verdict.word)
        assert set(entry) == set(vars(finding))


def test_the_bill_adds_up(papers: Session, kept: Any) -> None:
    bill = kept["bill"]
    assert bill["total"] == papers.build.bill.total
    assert sum(line["cost"] for line in bill["lines"]) == pytest.approx(bill["total"], abs=0.001)
    for line in bill["lines"]:
        buy = line["purchase"]
        if buy is not None:
            assert buy["packs"] * buy["pack_size"] >= line["quantity"] + line["spare"] - 1e-9
            assert line["cost"] == pytest.approx(buy["packs"] * buy["pack_price"], abs=0.005)


def test_places_say_what_stands_there(papers: Session, kept: Any) -> None:
    assert set(kept["places"]) == {place.name for place in papers.build.loom.places}
    filled = {name: entry["part"]["part_id"] for name, entry in kept["places"].items() if entry["part"]}
    assert filled == {name: entry.part_id for name, entry in papers.build.filled.items()}
    assert {entry["place"] for entry in kept["holes"]} == set(kept["places"]) - set(filled)


def test_both_arrangements_are_compared(papers: Session, kept: Any) -> None:
    assert [entry["arrangement"] for entry in kept["arrangements"]] == [b.arrangement for b in papers.builds]
    assert kept["arrangements"][0]["counts"]["fail"] == sum(
        entry["verdict"] == "fail" for entry in (*kept["findings"], *kept["holes"])
    )


def test_the_gates_are_those_of_the_build(papers: Session, kept: Any) -> None:
    assert [entry["name"] for entry in kept["donor_gates"]][:2] == ["isolation", "earth"]
    assert len(kept["donor_gates"]) == 10
    assert {key for entry in kept["donor_gates"] for key in entry} == {
        "name",
        "question",
        "answer",
        "follows",
        "verdict",
    }
    assert kept["donor_type"].startswith("12 V")
