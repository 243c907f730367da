"""The fault walk: amps by hand, which fuse opens, what burns, and the path of a short to the frame."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from bom.build import Build
from bom.check.roots import groups
from bom.circuit.fault import End, Fault, Hot
from bom.circuit.short_figures import amps_figure, told
from bom.judge.verdict import Verdict
from bom.trace import Origin

Converted = Callable[..., Build]
STREET_20_A_BLADE = "BF-0207"
HICCUPS = "CV-0101"
AC_ONLY_TAP, AC_ONLY_MAIN, STRIP_32_V = "TF-0901", "MF-0911", "MF-0912"
COMMON_MINUS = "CV-0102"  # 20 to 60 V in, 10 A, input and output share the minus


def _fault(build: Build, point: str, to: str = "its return") -> Fault:
    return next(fault for fault in build.walks.faults if fault.point == point and fault.to == to)


def _ohm_20(build: Build, wire: str) -> float:
    part = build.filled[wire].part
    return float(part.number("resistance_mohm_per_m")[0]) * build.loom.wire(wire).length_m / 1000


def test_a_short_at_the_plus_post_carries_what_ohms_law_says(converted: Converted) -> None:
    """Worked: 84.0 V over 0.9 x 38 mohm, six leads with two joints each, fuse, plug and isolator, and the short."""
    build = converted("street-72")
    margins = build.facts.margins
    leads = ["pack lead", "lead to pack plug", "lead to isolator", "lead to plus post"]
    leads += ["return to pack plug", "return to pack minus"]
    ohm = 0.9 * 0.038 + 1e-4 + sum(_ohm_20(build, lead) + 2 * margins.joint_low_ohm for lead in leads)
    rated = float(build.filled["main fuse"].part.number("rated_a")[0])
    ohm += margins.fuse_drop_low_v / rated + 3 * margins.heavy_contact_low_ohm
    assert _fault(build, "plus post").high_a == pytest.approx(84.0 / ohm, rel=1e-6)


def test_the_least_amps_come_from_an_empty_cold_aged_pack_through_hot_worn_copper(converted: Converted) -> None:
    """Worked: 62 V (the low cut) over 3 x 38 mohm and the same leads at 105 C with worn joints."""
    build = converted("street-72")
    margins = build.facts.margins
    leads = ["pack lead", "lead to pack plug", "lead to isolator", "lead to plus post"]
    leads += ["return to pack plug", "return to pack minus"]
    hot = 1 + 0.00393 * (105.0 - 20.0)
    ohm = 3 * 0.038 + 1e-4 + sum(_ohm_20(build, lead) * hot + 2 * margins.bolted_joint_high_ohm for lead in leads)
    rated = float(build.filled["main fuse"].part.number("rated_a")[0])
    ohm += margins.fuse_drop_high_v / rated + 3 * margins.heavy_contact_high_ohm
    assert _fault(build, "plus post").low_a == pytest.approx(62.0 / ohm, rel=1e-6)


def test_a_converter_that_limits_at_20_a_need_never_open_a_20_a_blade(converted: Converted) -> None:
    """Published: a blade opens within 5 s at 2.0 x its rating (ISO 8820-3, read second-hand): 20 A open 10 A."""
    build = converted("street-72", {"pins.headlamp circuit fuse": STREET_20_A_BLADE})
    fault = _fault(build, "headlamp plus")
    assert fault.limited
    assert fault.low_a == pytest.approx(20.0)
    assert fault.fuse == "headlamp circuit fuse"
    assert not fault.opens
    assert fault.end in (End.NEVER, End.BURNS)
    assert fault.would_do_a == pytest.approx(10.0)


def test_a_converter_that_limits_at_20_a_opens_a_10_a_blade_within_5_s(converted: Converted) -> None:
    """Published: as above, from the other side."""
    build = converted("street-72", {"pins.signals circuit fuse": "BF-0205"})
    fault = _fault(build, "flasher in")
    assert float(build.filled[fault.fuse].part.number("rated_a")[0]) == 10.0
    assert fault.opens
    assert fault.latest_s == pytest.approx(5.0)


def test_a_converter_that_hiccups_feeds_no_fault(converted: Converted) -> None:
    """Trade: one that hiccups gives no steady amps, so that no fuse surely opens."""
    build = converted("moped-48", {"pins.converter": HICCUPS})
    assert _fault(build, "headlamp plus").end in (End.LETS_GO, End.NOT_KNOWN)


def test_a_short_ahead_of_the_main_fuse_is_cleared_by_nothing(converted: Converted) -> None:
    """Trade: no fuse lies between the pack and the pack end of the main fuse."""
    build = converted("street-72")
    for point in ("pack plus", "main fuse in"):
        assert _fault(build, point).end == End.UNFUSED


def test_a_short_on_the_buffer_battery_is_ahead_of_its_fuse(converted: Converted) -> None:
    """Worked: 12.8 V over milliohms give hundreds of amps; the converter's 20 A through the fuse are a few per cent."""
    build = converted("street-72", {"wishes.buffer_battery": True, "donor.lamp_return": "frame"})
    for to in ("its return", "the frame"):
        fault = _fault(build, "buffer plus", to)
        assert fault.source == "buffer battery"
        assert fault.fuse == ""
        assert fault.end == End.UNFUSED
    assert _fault(build, "12 V plus").fuse == "buffer fuse"  # past it the battery's amps come through


def test_two_minus_ends_make_no_short(converted: Converted) -> None:
    """Worked: amps that charge the buffer drop millivolts along the returns; a touch there changes nothing."""
    build = converted("street-72", {"wishes.buffer_battery": True})
    ends = {fault.end for fault in build.walks.faults if fault.point in ("12 V minus", "buffer minus")}
    assert ends <= {End.NO_CURRENT}


def test_amps_of_a_short_on_the_buffer_battery_are_not_told_as_the_packs(converted: Converted) -> None:
    """Worked: 84 V over some ohms is no account of amps that a 12.8 V battery gives."""
    build = converted("street-72", {"wishes.buffer_battery": True})
    fed = next(f for f in build.walks.faults if f.source == "buffer battery" and f.high_a > 1 and not f.limited)
    trace = amps_figure(build.walks.bike.view, fed).trace
    assert isinstance(trace, Origin)
    assert trace.kind == "solved state"


def test_the_frame_of_an_isolated_bike_carries_nothing_from_the_pack(converted: Converted) -> None:
    """Worked: an isolated converter joins nothing, so that a first touch of pack plus closes no circuit."""
    build = converted("frame-return-105")
    assert _fault(build, "controller plus", "the frame").end == End.NO_CURRENT


def test_pack_plus_on_a_frame_that_carries_pack_minus_comes_home_through_the_thin_returns(
    converted: Converted,
) -> None:
    """Worked: through bond, 12 V return and converter return; a fuse of 80 A or so does not guard 1 mm2."""
    build = converted("moped-48", {"pins.converter": COMMON_MINUS})
    fault = _fault(build, "controller plus", "the frame")
    assert {"frame bond", "12 V return", "converter return", "main fuse"} <= set(fault.path)
    assert fault.low_a > 100
    assert fault.end == End.BURNS


def test_a_chafed_lamp_lead_shows_its_way_through_the_frame(converted: Converted) -> None:
    """Worked: fuse, lead, frame, bond and back to the converter; the circuit's own fuse is in the way."""
    build = converted("moped-48", {"pins.converter": COMMON_MINUS})
    lead = next(bridge for bridge in build.loom.bridges if bridge.kind == "load").start
    fault = _fault(build, lead, "the frame")
    assert "frame bond" in fault.path
    assert fault.fuse
    assert fault.source == "converter"


def test_the_smaller_fuse_opens_and_an_overlap_is_named(converted: Converted) -> None:
    """Worked: the tap fuse of a few amps sees the same amps as the main fuse, so that it opens by then."""
    fault = _fault(converted("street-72"), "converter in")
    assert fault.fuse == "converter fuse"
    assert fault.also_opens in ("", "main fuse")


def test_every_point_that_stands_at_volts_is_shorted(converted: Converted) -> None:
    """Every plus end of a wire is in the walk once."""
    build = converted("street-72")
    walked = [fault.point for fault in build.walks.faults if fault.to == "its return"]
    assert len(walked) == len(set(walked))
    plus = {wire.end for wire in build.loom.wires if build.loom.place(wire.name).circuit.endswith("circuit")}
    returns = {"12 V rail minus", *(point for point in plus if point.endswith("minus"))}
    assert plus - returns <= set(walked)


def test_a_wire_is_as_hot_as_iec_60949_says(converted: Converted) -> None:
    """Worked: the stub's end by (234.5 + 105) exp(I2t / (226 S)^2) - 234.5, with the fuse's greatest let-through."""
    build = converted("moped-48")
    fault = _fault(build, "converter fuse in")
    assert fault.stub is not None
    area = float(build.filled[fault.stub.wire].part.number("area_mm2")[0])
    start = fault.stub.rest_c
    hottest = (234.5 + start) * np.exp(fault.low_a**2 * fault.latest_s / (226 * area) ** 2) - 234.5
    assert start < fault.stub.end_c <= max(hottest, 1083.0) or np.isinf(fault.stub.end_c)


def test_the_way_of_a_short_is_told_in_the_order_the_current_runs(converted: Converted) -> None:
    """Worked: from pack plus out to the controller, over the frame, and home by bond, returns and plug."""
    build = converted("moped-48", {"pins.converter": COMMON_MINUS})
    way = list(_fault(build, "controller plus", "the frame").path)
    assert way[:2] == ["pack lead", "main fuse"]
    home = ["frame bond", "12 V return", "converter's common minus", "converter return"]
    assert [name for name in way if name in home] == home
    assert way[-1] == "return to pack minus"


def test_a_short_ahead_of_the_buffer_fuse_is_cleared_by_nothing(converted: Converted) -> None:
    """Trade: the battery feeds it past its own fuse, which sees the converter's few amps alone; no rating helps."""
    build = converted("street-72", {"wishes.buffer_battery": True})
    for point in ("buffer plus", "buffer fuse in"):
        fault = _fault(build, point)
        assert fault.source == "buffer battery"
        assert fault.end == End.UNFUSED
        assert fault.fuse == ""


def test_the_buffer_fuse_opens_on_a_short_behind_it(converted: Converted) -> None:
    """Worked: 200 A or so through a fuse of 30 A is more than six times its rating."""
    fault = _fault(converted("street-72", {"wishes.buffer_battery": True}), "12 V supply")
    assert fault.fuse == "buffer fuse"
    assert fault.end == End.CLEARED


@pytest.mark.parametrize("starter", ["street-72", "frame-return-105"])
def test_two_minus_ends_that_touch_are_no_short(starter: str, converted: Converted) -> None:
    """Worked: they stand at the same volts but for the drop of the charging amps; another return beside the wire."""
    build = converted(starter, {"wishes.buffer_battery": True})
    minus = ("12 V minus", "buffer minus")
    told = [fault for fault in build.walks.faults if fault.point in minus]
    assert all(fault.to == "the frame" and fault.end == End.NO_CURRENT for fault in told)


def test_of_wires_alike_in_copper_the_one_that_stands_less_is_named(converted: Converted) -> None:
    """Worked: PVC ends at 160 C, cross-linked at 250 C (IEC 60364-4-43 Table 43A, from memory)."""
    pins = {"pins.converter feed": "CB-1202", "pins.converter return": "CB-1302"}
    fault = _fault(converted("moped-48", pins), "converter in")
    assert fault.wire is not None
    assert fault.wire.wire == "converter return"
    assert fault.wire.limit_c == pytest.approx(160.0)


def test_a_fuse_that_takes_hours_is_told_in_hours(converted: Converted) -> None:
    """Worked: 7200 s is the second point of a full-range fuse at 1.45 x, two hours."""
    fault = replace(_fault(converted("street-72"), "precharge fuse in"), latest_s=7200.0)
    assert "within 2 h" in told(fault)


def test_a_fuse_that_worn_contacts_keep_shut_still_opens_on_the_greatest_amps(converted: Converted) -> None:
    """Worked: 195 A are 1.3 x 150 A and need never open; 2 kA open it in 0.05 s, so that no lead melts.

    What lasts heats a lead of 156 A in its bundle from 45 C by (195 / 156)^2 of the 60 K it may: 139 C, past its class.
    """
    fault = _fault(converted("street-72", {"margins.heavy_contact_high_ohm": 0.05}), "contactor out")
    assert fault.fuse == "main fuse"
    assert not fault.opens
    assert fault.high_a > 10 * 150.0
    assert fault.wire is not None
    assert fault.wire.end_c == pytest.approx(139, abs=1)
    assert fault.end == End.BURNS


@pytest.mark.parametrize(("hot", "end"), [("wire", End.BURNS), ("stub", End.STUB)])
def test_what_melts_while_its_fuse_stays_shut_is_told_as_burnt(hot: str, end: End, converted: Converted) -> None:
    """Worked: copper at 400 C is past every insulation, whatever the fuse does."""
    whole = replace(_fault(converted("street-72"), "contactor out"), opens=False, limited=False, wire=None, stub=None)
    assert replace(whole, **{hot: Hot("lead", 400.0, 250.0, 105.0)}).end == end


def test_a_fuse_short_of_dc_volts_opens_nothing(converted: Converted) -> None:
    """Trade: a fuse of 32 V DC that blows on 88 V bursts or arcs on; no short behind it alone is cleared."""
    build = converted("street-72", {"pins.main fuse": STRIP_32_V})
    behind = [fault for fault in build.walks.faults if fault.fuse == "main fuse"]
    assert behind
    assert {fault.end for fault in behind} == {End.BURSTS}
    assert not any(fault.opens or np.isfinite(fault.latest_s) for fault in behind)
    assert {fault.bursts for fault in behind} == {"32.0 V on 88.0 V"}


@pytest.mark.parametrize(
    ("place", "part", "point"),
    [("main fuse", AC_ONLY_MAIN, "contactor out"), ("converter fuse", AC_ONLY_TAP, "converter in")],
)
def test_a_fuse_of_ac_volts_alone_is_not_known_to_open(place: str, part: str, point: str, converted: Converted) -> None:
    """Published: IEC 60269-1 rates a fuse for AC and for DC apart, from memory; one rating says nothing of the other.

    A small one blows before the large one behind it, so that the large one is not counted on either.
    """
    fault = _fault(converted("street-72", {f"pins.{place}": part}), point)
    assert fault.fuse == place
    assert fault.end == End.NOT_KNOWN
    assert fault.unsaid == "DC volts"


@pytest.mark.parametrize(
    ("pins", "verdict"),
    [
        ({"pins.main fuse": STRIP_32_V}, Verdict.FAIL),
        ({"pins.main fuse": AC_ONLY_MAIN}, Verdict.CANT_TELL),
        ({"pins.converter fuse": AC_ONLY_TAP}, Verdict.CANT_TELL),
    ],
)
def test_a_fuse_that_does_not_break_is_one_cause(pins: dict[str, str], verdict: Verdict, converted: Converted) -> None:
    """Trade: one wrong fuse is one thing to change; what the shorts say of it is told with its own rules."""
    build = converted("street-72", pins)
    place = next(iter(pins)).removeprefix("pins.")
    told = next(group for group in groups(build) if any(f.rule == "holds-dc-volts" for f in group.findings))
    shorts = [f for f in told.findings if f.rule == "shorts-burn-no-wire"]
    assert [(f.verdict, f.at_fault) for f in shorts] == [(verdict, (place,))]
    assert all(
        f.verdict <= Verdict.TIGHT for f in build.findings if f.rule == "shorts-burn-no-wire" and f not in shorts
    )


def test_no_short_is_told_through_an_open_place(converted: Converted) -> None:
    """Worked: no contactor passes without precharge; what a short behind it does depends on the one that will stand."""
    build = converted("street-72", {"wishes.precharge": False})
    assert [hole.place.name for hole in build.holes] == ["contactor"]
    assert not [fault for fault in build.walks.faults if fault.point == "contactor out" or "contactor" in fault.path]
    assert _fault(build, "converter in").fuse == "converter fuse"
    assert not [f for f in build.findings if f.rule == "shorts-burn-no-wire" and f.verdict > Verdict.TIGHT]


@pytest.mark.parametrize(
    ("starter", "pins", "ends", "cure"),
    [
        ("moped-48", {"pins.converter": HICCUPS}, End.LETS_GO, "a larger converter of constant current"),
        ("street-72", {"pins.headlamp circuit fuse": STREET_20_A_BLADE}, End.NEVER, "fuse of 10 A or less"),
        ("moped-48", {"pins.converter": COMMON_MINUS}, End.BURNS, "isolated from its output"),
        ("street-72", {"pins.main fuse": "MF-0312"}, End.BURNS, "a thicker wire, a smaller or faster fuse"),
        ("street-72", {"pins.main fuse": STRIP_32_V}, End.BURSTS, "a fuse that breaks these DC volts"),
        ("street-72", {"pins.main fuse": AC_ONLY_MAIN}, End.NOT_KNOWN, "find the DC volts of the main fuse"),
    ],
)
def test_each_way_a_short_ends_has_its_own_cure(
    starter: str, pins: dict[str, str], ends: End, cure: str, converted: Converted
) -> None:
    """Trade: no wire is too thin where the converter lets go; no wire helps a fuse that does not break."""
    build = converted(starter, pins)
    told = [f.cure for f in build.findings if f.rule == "shorts-burn-no-wire"]
    assert ends in {fault.end for fault in build.walks.faults}
    assert sum(cure in said for said in told) == 1, told
    assert len(set(told)) == len(told)


def test_a_stub_is_told_by_the_seconds_it_stands(converted: Converted) -> None:
    """Worked: 7.6 mohm/m are 1000 / (58 x 7.6) = 2.269 mm2; XLPE from 105 to 250 C, k = 226 sqrt(ln(484.5 / 339.5)).

    That is 134.8; (134.8 x 2.269 / 507.9 A)^2 = 0.363 s. IEC 60364-4-43 434.5.2, from memory.
    """
    build = converted("street-72")
    stub = _fault(build, "precharge fuse in").stub
    assert stub is not None
    assert stub.burns_s == pytest.approx((134.8 * 2.269 / 507.9) ** 2, rel=2e-3)
    told = next(f for f in build.findings if f.rule == "shorts-burn-no-wire")
    assert told.what == "precharge stub, 2.5 mm², ahead of its fuse"
    assert told.offered == "a short to its return burns it in 363 ms"
    assert told.needed == "the main fuse open by then: it lets in the heat of 3.93 s"


def test_heat_for_less_than_the_printed_time_is_explained(converted: Converted) -> None:
    """Worked: 508 A are more than 3 x 150 A, for which 5 s are printed; (450 A)^2 x 5 s / (508 A)^2 are 3.92 s."""
    build = converted("street-72")
    stub = _fault(build, "precharge fuse in").stub
    told = next(f for f in build.findings if f.rule == "shorts-burn-no-wire")
    assert stub is not None
    assert float(build.filled["main fuse"].part.number("rated_a")[0]) == 150.0
    assert stub.time_s == pytest.approx((3 * 150.0) ** 2 * 5 / stub.amps**2, rel=1e-3)
    assert f"opens within 5 s by its print, letting in no more heat than 508 A for {stub.time_s:.3g} s" in told.because


@pytest.mark.parametrize(
    ("laid", "cure"), [("100 mm", "keep it at most 100 mm"), ("300 mm", "shorten it to at most 200 mm")]
)
def test_a_stub_is_offered_no_cure_that_is_taken(laid: str, cure: str, converted: Converted) -> None:
    """Trade: nothing is left to buy for a stub that is short and sleeved; 200 mm by common practice."""
    build = converted("street-72", {"runs.tap_stub": laid})
    told = next(f for f in build.findings if f.rule == "shorts-burn-no-wire")
    assert told.cure == f"{cure}, in a sleeve of its own, which is on the bill."
