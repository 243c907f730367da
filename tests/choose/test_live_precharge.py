"""A precharge resistor that no relay opens."""

from collections.abc import Callable

from bom.build import Build


def test_a_pack_above_60_v_can_be_built_without_a_precharge_relay(converted: Callable[..., Build]) -> None:
    """Worked: 0.05 x 0.95 x 62 V squared / 5 W = 36.5 ohm at most; 88 V squared / 33 ohm = 235 W."""
    build = converted("street-72", {"wishes.precharge_switched": False})
    assert not build.holes
    resistor = build.filled["precharge resistor"].part
    ohm, watts = (resistor.number(name)[0] for name in ("resistance_ohm", "power_w"))
    assert ohm <= 36.5
    assert watts >= 88.0**2 / ohm
