"""What leads of controllers, grips, buttons and meters are for, and what stands on them, in the trade's words."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Function = Literal[
    "throttle supply",
    "throttle signal",
    "throttle ground",
    "throttle switch",
    "brake",
    "brake ground",
    "regen",
    "key input",
    "forward",
    "reverse",
    "low speed",
    "high speed",
    "cruise",
    "boost",
    "park",
    "side stand",
    "anti-theft",
    "button ground",
    "signal ground",
    "meter supply",
    "meter ground",
    "meter signal",
    "battery gauge",
    "data",
    "hall supply",
    "hall ground",
    "hall A",
    "hall B",
    "hall C",
    "motor temperature",
    "5 V output",
    "12 V output",
    "self-learning",
    "programming",
    "other",
]

# What builders and sellers call them instead.
TRADE_WORDS: Mapping[str, str] = {
    "throttle plus": "throttle supply",
    "throttle 5 V": "throttle supply",
    "accelerator plus": "throttle supply",
    "throttle": "throttle signal",
    "accelerator": "throttle signal",
    "wiper": "throttle signal",
    "throttle minus": "throttle ground",
    "idle switch": "throttle switch",
    "brake cut": "brake",
    "brake input": "brake",
    "brake minus": "brake ground",
    "regen level": "regen",
    "ignition": "key input",
    "electric lock": "key input",
    "door lock": "key input",
    "enable": "key input",
    "cruise control": "cruise",
    "parking": "park",
    "alarm": "anti-theft",
    "switch ground": "button ground",
    "button minus": "button ground",
    "common ground": "signal ground",
    "minus": "signal ground",
    "display supply": "meter supply",
    "gauge plus": "meter supply",
    "display ground": "meter ground",
    "gauge minus": "meter ground",
    "speed pulse": "meter signal",
    "tacho": "meter signal",
    "speed output": "meter signal",
    "one-line": "data",
    "serial": "data",
    "hall plus": "hall supply",
    "hall minus": "hall ground",
    "learning plug": "self-learning",
    "USB": "programming",
}

SignalName = Literal[
    "ground",
    "5 V supply",
    "12 V supply",
    "pack-volts supply",
    "5 V feed",
    "12 V feed",
    "pack-volts feed",
    "5 V analogue",
    "5 V pulse",
    "5 V data",
    "ground-active",
    "12 V high-active",
    "pack-volts enable",
    "contact",
]

FIVE, TWELVE, PACK = 1, 2, 3
LEVELS: Mapping[int, str] = {0: "no volts of its own", FIVE: "5 V", TWELVE: "12 V", PACK: "pack volts"}


@dataclass(frozen=True)
class Signal:
    """What stands on a lead.

    role   "gives", "takes", "ground", "contact", or "either" where the function tells which way it goes
    level  which volts live on it; 0 for a ground and a bare contact
    """

    role: str
    level: int


SIGNALS: Mapping[str, Signal] = {
    "ground": Signal("ground", 0),
    "5 V supply": Signal("gives", FIVE),
    "12 V supply": Signal("gives", TWELVE),
    "pack-volts supply": Signal("gives", PACK),
    "5 V feed": Signal("takes", FIVE),
    "12 V feed": Signal("takes", TWELVE),
    "pack-volts feed": Signal("takes", PACK),
    "5 V analogue": Signal("either", FIVE),
    "5 V pulse": Signal("either", FIVE),
    "5 V data": Signal("either", FIVE),
    # held up to 5 V inside the controller until a contact takes it to ground
    "ground-active": Signal("takes", FIVE),
    "12 V high-active": Signal("takes", TWELVE),
    "pack-volts enable": Signal("takes", PACK),
    "contact": Signal("contact", 0),
}

# Signals that go from the controller outwards; all others come to it.
OUTWARDS = ("meter signal", "battery gauge", "data", "5 V output", "12 V output")

# One lead of these may serve several others, through a splice.
SHARED = (
    "brake",
    "brake ground",
    "button ground",
    "signal ground",
    "meter ground",
    "5 V output",
    "12 V output",
)

# Where a device has no lead of the same function, this one serves.
INSTEAD: Mapping[str, str] = {
    "throttle ground": "signal ground",
    "brake ground": "signal ground",
    "button ground": "signal ground",
    "meter ground": "signal ground",
    "throttle supply": "5 V output",
    "hall supply": "5 V output",
    "hall ground": "signal ground",
    "meter supply": "12 V output",
}
