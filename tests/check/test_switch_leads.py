"""The leads of a donor's own switch: counted by the builder, or not."""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.check.donor import DonorVerdict

Converted = Callable[..., Build]
LEAD = "donor.items.light switch.lead"


def light_switch(build: Build) -> DonorVerdict:
    return next(item for item in build.donor if item.name == "light switch")


@pytest.mark.parametrize(
    ("lead", "verdict"),
    [
        (None, "stays"),  # it carried these lamps for years
        ("0.75 mm²", "stays"),  # 7.5 A
        ("0.3 mm²", "goes"),  # 17 x pi/4 x 0.15² = 0.300 mm², 3.0 A
    ],
)
def test_counted_leads_decide(lead: str | None, verdict: str, converted: Converted) -> None:
    """Worked: headlamp 60 W, tail 5 W and dash 2 x 3 W over 13.5 V are 5.3 A; 10 A a mm² by common practice."""
    told = light_switch(converted("street-72", {LEAD: lead} if lead else {}))
    assert told.verdict == verdict
    if verdict == "goes":
        assert "amps its leads stand: 3 A" in told.reason
