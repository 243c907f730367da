"""What helps where a part that arrived is worse: it goes back first, and nowhere where that would not help."""

from collections.abc import Callable

from bom.build import Build
from bom.judge.verdict import Verdict

Converted = Callable[..., Build]
PLAIN = {"controller.regen": None, "controller.over_voltage": None}


def test_the_part_that_came_goes_back(converted: Converted) -> None:
    """Worked: 20 cells of 4.20 V are 84.0 V, and 80 V is less; the fuse that was ordered holds 125 V."""
    build = converted("street-72", PLAIN | {"received": [{"place": "main fuse", "part": "MF-0205"}]})
    assert build.ordered is not None
    ordered = build.ordered.filled["main fuse"].part_id
    found = next(f for f in build.findings if f.rule == "holds-dc-volts" and f.subject == "main fuse")
    assert found.cure.startswith(f"send it back, fit {ordered} as ordered; or: a part marked with DC volts")


def test_a_coil_that_takes_more_is_told_at_the_switches_that_feed_it(converted: Converted) -> None:
    """Worked: its coil holds with 3.5 A; with two relays of at least 0.08 A that passes the 3 A of the kill switch."""
    build = converted("street-72", {"received": [{"place": "contactor", "part": "CT-0902"}]})
    assert build.ordered is not None
    ordered = build.ordered
    assert build.duties["key switch"].carry_a.high >= 3.5 > ordered.duties["key switch"].carry_a.high
    found = next(f for f in build.findings if f.rule == "contact-carries" and f.subject == "stop switch")
    assert found.verdict == Verdict.FAIL
    came = ordered.filled["contactor"].part_id
    assert found.cure.startswith(f"send back what came for the contactor, fit {came} as ordered; or: ")


def test_what_failed_as_ordered_too_is_no_reason_to_send_it_back(converted: Converted) -> None:
    """The 48 V contactor that was pinned holds 84 V as little as the 48 V one that came."""
    edits = {"pins.contactor": "CT-0101", "received": [{"place": "contactor", "part": "CT-0201"}]}
    build = converted("street-72", edits)
    found = next(f for f in build.findings if f.rule == "holds-dc-volts" and f.subject == "contactor")
    assert found.verdict == Verdict.FAIL
    assert not found.cure.startswith("send")
