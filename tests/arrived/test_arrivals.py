"""Each part that came in one block: what to do, the ratings that differ in words, what is worse and no more."""

from collections.abc import Callable

from bom.arrived.arrivals import arrivals
from bom.build import Build
from bom.check.report import received_lines
from bom.judge.verdict import Verdict

Converted = Callable[..., Build]
DOUBLE = {"place": "main fuse", "part": "MF-0312"}


def test_a_fuse_of_twice_the_amps_is_one_block(converted: Converted) -> None:
    """Worked: a 300 A fuse guards wires that 150 A guarded; it must go back, and its amps are all that differs."""
    build = converted("street-72", {"received": [DOUBLE]})
    (block,) = received_lines(build)
    first, second, *rest = [line.strip() for line in block.splitlines()]
    assert first == "RECEIVED    main fuse: MF-0312 came, MF-0307 was ordered: send it back"
    assert second == "rated amps  150 A -> 300 A"
    assert "answers are worse with it, the worst 3:" in rest[0]
    assert sum(line.startswith("fail: ") for line in rest[1:]) == 3


def test_no_rating_is_named_by_its_column(converted: Converted) -> None:
    came = [{"place": "converter", "part": "CV-0403"}, {"place": "contactor", "part": "CT-0902"}]
    build = converted("street-72", {"received": came})
    told = [each for part in arrivals(build) for each in part.differs]
    assert told
    assert [each.what for each in told if "_" in each.what] == []
    isolated = next(each for each in told if each.what == "isolated")
    assert (isolated.was, isolated.now) == ("yes", "no")


def test_what_still_passes_is_not_told(converted: Converted) -> None:
    build = converted("street-72", {"received": [{"place": "converter", "part": "CV-0403"}]})
    (part,) = arrivals(build)
    assert part.verdict == Verdict.FAIL
    assert part.count < len([f for f in build.findings if "converter" in f.subject])
    assert not [text for text in part.worst if text.startswith("pass")]


def test_the_very_part_that_was_ordered_came_as_ordered(converted: Converted) -> None:
    ordered = converted("street-72").filled["main fuse"].part_id
    (part,) = arrivals(converted("street-72", {"received": [{"place": "main fuse", "part": ordered}]}))
    assert part.heading == f"main fuse: {ordered} came as ordered"
    assert (part.count, part.differs) == (0, ())


def test_a_part_that_is_as_good_may_be_used(converted: Converted) -> None:
    """A clamp of 1500 W takes at least what one of 600 W of the same volts takes."""
    build = converted("street-72", {"received": [{"place": "contactor clamp", "part": "CL-0103"}]})
    (part,) = arrivals(build)
    assert part.heading.endswith("may be used")
    assert part.counted == ""


def test_what_stands_nowhere_is_told_too(converted: Converted) -> None:
    build = converted("street-72", {"received": [{"place": "rail clamp", "part": "CL-0201"}]})
    (line,) = received_lines(build)
    assert line == "RECEIVED    rail clamp: CL-0201 came: not wanted: the converter that stands is isolated"
