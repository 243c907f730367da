"""The functions a formula may name: the physics itself, with its arguments in order."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from bom.judge.ip_code import water_digit
from bom.physics.adiabatic import longest_s
from bom.physics.ampacity import ampacity_a
from bom.physics.fuse import earliest_s, latest_s, rerating_fraction, surely_opens_multiple
from bom.physics.lamp import upper_watts
from bom.physics.phase import greatest_line_rms_v


def _ampacity(
    area: Any, metal: Any, outside: Any, r_20: Any, most: Any, end: Any, air: Any, skin: Any, loaded: Any
) -> Any:
    return ampacity_a(
        area_mm2=area,
        conductor_mm=metal,
        outside_mm=outside,
        resistance_20_mohm_per_m=r_20,
        cable_max_c=most,
        terminal_max_c=end,
        ambient_c=air,
        insulation=skin,
        loaded_wires=loaded,
    )


def _burnt(area: Any, current: Any, start: Any, end: Any) -> Any:
    return longest_s(area_mm2=area, current_a=current, start_c=start, end_c=end)


def _printed_break(volts: Any, time_constant: Any, points: Any) -> Any:
    """Take the greatest printed amps at no fewer volts and no shorter time constant; NaN where there are none."""
    return max((amps for volt, ms, amps in points if volt >= volts and ms >= time_constant), default=math.nan)


def _curve_amps(area: Any, air: Any, points: Any) -> Any:
    """Take the amps of the largest listed wire not thicker, at the next hotter listed air."""
    held = [(listed, amps) for listed, warm, amps in points if listed <= area and warm >= air]
    return max(held, default=(0.0, math.nan))[1]


def _share_at(air: Any, points: Any) -> Any:
    """Take the share of the next hotter listed air; NaN past the end."""
    return max((share for warm, share in points if warm >= air), default=math.nan)


# name in a formula -> what it does
FUNCTIONS: Mapping[str, Callable[..., Any]] = {
    "max": max,
    "min": min,
    "sqrt": math.sqrt,
    "ln": math.log,
    "rounded": round,
    "line_volts": lambda bus: greatest_line_rms_v(bus_v=bus),
    "greatest_watts": lambda printed: upper_watts(printed_w=printed, nominal_v=12).watts,
    "printed_break": _printed_break,
    "water_digit": water_digit,
    "curve_amps": _curve_amps,
    "share_at": _share_at,
    "ampacity": _ampacity,
    "adiabatic_limit": _burnt,
    "latest_opening": lambda multiple, points: latest_s(multiple=multiple, points=points),
    "earliest_opening": lambda multiple, points: earliest_s(multiple=multiple, points=points),
    "sure_multiple": lambda within, points: surely_opens_multiple(within_s=within, points=points),
    "rerating": lambda air, points: rerating_fraction(ambient_c=air, points=points),
}
