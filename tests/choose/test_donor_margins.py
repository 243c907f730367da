"""A donor's part is described with the job's own margins, wherever it stands."""

from collections.abc import Callable

from bom.build import Build


def test_the_volts_a_donor_part_served_follow_the_job(converted: Callable[..., Build]) -> None:
    # Worked: 12 V x 1.3 = 15.6 V on charge, where the job sets the share to 1.3 in place of 1.2.
    build = converted("street-72", {"margins.served_volts_fraction": 1.3})
    entry = build.filled["key switch"]
    assert entry.origin == "donor"
    assert entry.part.number("dc_volts_v")[0] == 15.6
