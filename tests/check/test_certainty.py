"""A donor item that waits for a test says its price; every donor verdict says how what decides it is known."""

from collections.abc import Callable

import pytest

from bom.check.certainty import certainties, certainty_lines
from bom.check.donor_text import donor_text
from bom.check.donor_words import DonorVerdict
from bom.check.report import as_json, as_text
from bom.session import Session

Sessions = Callable[[str], Session]
STARTERS = ("street-72", "moped-48", "frame-return-105")


def item_of(session: Session, name: str) -> DonorVerdict:
    return next(item for item in session.build.donor if item.name == name)


@pytest.mark.parametrize("starter", STARTERS)
def test_every_item_says_how_it_is_known(session_of: Sessions, starter: str) -> None:
    text = " ".join(donor_text(session_of(starter)).split())
    for item in session_of(starter).build.donor:
        assert item.evidence, item.name
        told = item.evidence == "not known" or f"Known by: {item.evidence}." in text
        assert told, item.name  # what is not known is said by the reason


@pytest.mark.parametrize(
    ("starter", "name", "evidence"),
    [
        ("street-72", "light switch", "served in the donor"),  # it opened these lamps for years
        ("street-72", "ignition coils", "as the job says"),  # the builder does not want them
        ("street-72", "regulator", "common practice"),  # a cell of the matrix
        ("moped-48", "rear brake switch", "marked"),  # its print is in the job
        ("moped-48", "horn button", "not known"),
    ],
)
def test_the_evidence_is_of_what_decides(session_of: Sessions, starter: str, name: str, evidence: str) -> None:
    assert item_of(session_of(starter), name).evidence == evidence


@pytest.mark.parametrize("starter", STARTERS)
def test_who_waits_for_a_test_says_its_price(session_of: Sessions, starter: str) -> None:
    session = session_of(starter)
    waits = {item.name for item in session.build.donor if item.verdict == "test first"}
    assert set(session.certainties) == waits
    for told in session.certainties.values():
        assert told.wanted
        assert all(entry.figure and entry.why and entry.way and entry.minutes > 0 for entry in told.wanted)
        assert told.minutes == sum(entry.minutes for entry in told.wanted)


def test_certainty_costs_the_part_that_stands_there(session_of: Sessions) -> None:
    """Worked: one horn button on the bill, bought for this place alone, so its whole line is the price."""
    session = session_of("moped-48")
    part_id = session.build.filled["switch horn button"].part_id
    line = next(line for line in session.build.bill.lines if line.part_id == part_id)
    assert line.places == ("switch horn button",)
    told = session.certainties["horn button"]
    assert told.price == round(line.cost, 2)
    assert told.parts == (f"{part_id} {line.name}",)
    assert f"{line.cost:.2f} EUR" in certainty_lines(told, "")[-1]


def test_a_share_of_a_line_is_by_its_quantity(session_of: Sessions) -> None:
    """Worked: cable for the donor's loom is bought by the metre with other runs; no more than the lines it is on."""
    session = session_of("frame-return-105")
    told = session.certainties["loom"]
    mine = {place.name for place in session.build.loom.places if place.item == "loom"}
    lines = [line for line in session.build.bill.lines if mine & set(line.places)]
    assert 0 < told.price < sum(line.cost for line in lines)


def test_without_questions_the_item_s_own_test_is_told(session_of: Sessions) -> None:
    session = session_of("moped-48")
    told = certainties(session.build, ())["horn button"]
    assert told.wanted[0].way == item_of(session, "horn button").test


def test_what_is_no_data_sheet_is_shown_with_the_finding(session_of: Sessions) -> None:
    text = as_text(session_of("street-72"), everything=True)
    assert "Known by: served in the donor." in text
    assert "Known by: data sheet." not in text


def test_the_findings_as_data_hold_both(session_of: Sessions) -> None:
    told = as_json(session_of("moped-48"), everything=False)
    assert "horn button" in told["certainty"]  # type: ignore[operator]
    assert told["questions"]
