"""What arrived in place of what was ordered: chosen as ordered, judged as received, both printed side by side."""

from collections.abc import Callable

from bom.arrived.received_rows import received_rows
from bom.build import Build
from bom.judge.verdict import Verdict

Converted = Callable[..., Build]
# 20 cells of 4.20 V are 84.0 V when full; without regeneration nothing lifts the bus above.
PLAIN = {"controller.regen": None, "controller.over_voltage": None}
ARRIVED = PLAIN | {"received": [{"place": "main fuse", "part": "MF-0205"}]}


def test_an_80_v_fuse_in_place_of_125_v_fails_on_84_v(converted: Converted) -> None:
    """Worked: 80 V is less than 84.0 V; the 125 V fuse that was ordered held it."""
    build = converted("street-72", ARRIVED)
    found = next(f for f in build.findings if f.rule == "holds-dc-volts" and f.subject == "main fuse")
    assert (found.verdict, found.offered, found.needed) == (Verdict.FAIL, "80.0 V", "at least 84.0 V")
    row = next(row for row in received_rows(build) if "holds-dc-volts" in row.what)
    assert (row.was, row.was_said) == ("125.0 V, needs at least 84.0 V", Verdict.PASS)
    assert (row.now, row.now_said) == ("80.0 V, needs at least 84.0 V", Verdict.FAIL)
    rating = next(row for row in received_rows(build) if row.what == "dc_volts_v")
    assert (rating.was, rating.now) == ("125", "80")


def test_the_rest_is_chosen_and_priced_as_ordered(converted: Converted) -> None:
    build, plain = converted("street-72", ARRIVED), converted("street-72", PLAIN)
    assert {name: entry.part_id for name, entry in build.filled.items() if name != "main fuse"} == {
        name: entry.part_id for name, entry in plain.filled.items() if name != "main fuse"
    }
    assert build.filled["main fuse"].origin == "received"
    assert build.bill == plain.bill
    assert build.ordered is not None
    assert build.ordered.findings == plain.findings


def test_the_very_part_that_was_ordered_changes_nothing(converted: Converted) -> None:
    plain = converted("street-72", PLAIN)
    same = {"place": "main fuse", "part": plain.filled["main fuse"].part_id}
    build = converted("street-72", PLAIN | {"received": [same]})
    assert build.findings == plain.findings
    assert [row.what for row in received_rows(build)] == ["part"]


def test_without_a_received_part_there_is_nothing_to_compare(converted: Converted) -> None:
    assert received_rows(converted("street-72", PLAIN)) == []
