"""A donor's part is described with the job's own margins, wherever it stands."""

from collections.abc import Callable

from bom.build import Build


def test_the_volts_a_donor_part_served_follow_the_job(converted: Callable[..., Build]) -> None:
    # Worked: 12 V x 1.3 = 15.6 V on charge, where the job sets the share to 1.3 in place of 1.2.
    build = converted("street-72", {"margins.served_volts_fraction": 1.3})
    entry = build.filled["key switch"]
    assert entry.origin == "donor"
    assert entry.part.number("dc_volts_v")[0] == 15.6


def test_a_switch_that_is_not_kept_is_bought_of_its_own_kind(converted: Callable[..., Build]) -> None:
    """A horn button that goes leaves a place for a horn button (common practice)."""
    build = converted("street-72", {"donor.items.horn button.keep": "no"})
    entry = build.filled["switch horn button"]
    assert entry.origin == "chosen"
    assert entry.part.word("kind") == ("horn button",)
