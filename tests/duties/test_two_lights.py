"""A lamp with two lights: its greater filament is held against the greater load, its lesser against the lesser."""

from collections.abc import Callable

from bom.build import Build


def test_a_bulb_of_21_and_5_w_serves_tail_and_stop(converted: Callable[..., Build]) -> None:
    """UN R37 category P21/5W: 21 W stop, 5 W tail, base BAY15d (read second-hand on a public page)."""
    build = converted(
        "moped-48",
        {
            "loads.tail lamp.kind": "filament",
            "loads.tail lamp.power": "5 W",
            "loads.stop lamp.kind": "filament",
            "loads.stop lamp.power": "21 W",
        },
    )
    duty = build.duties["new tail lamp"]
    assert (duty.lamp_w.high, duty.second_w.high) == (21.0, 5.0)
    lamp = build.filled["new tail lamp"].part
    assert (lamp.number("power_w")[0], lamp.number("power_second_w")[0]) == (21.0, 5.0)
    assert lamp.word("base") == ("BAY15d",)


def test_a_lamp_of_one_light_is_asked_nothing_of_a_second(converted: Callable[..., Build]) -> None:
    assert not converted("moped-48").duties["new headlamp"].has("second_w")
