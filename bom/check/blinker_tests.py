"""How to tell each cause of dead blinkers on the bike in two minutes.

Common practice, no source. Every test works on the 12 V side alone, fed by a bench supply or a small battery.
"""

from collections.abc import Mapping

TESTS: Mapping[str, str] = {
    "none stands": "join the flasher's two leads: the lamps of a side light steady, so all but the flasher works",
    "too few lamp watts": "hang one 21 W bulb across a lamp of that side: it flashes then, so the watts were too few",
    "too many lamp watts": "take one lamp of the side out: it flashes then, so the watts were too many",
    "supply outside its window": "meter on volts from the flasher's plus to the minus rail with a side switched on: "
    "inside its window, and no dip of more than a volt as the lamps light",
    "a pin without its wire": "count its pins; a third marked 31, E or minus wants the minus rail: touch it with a "
    "fused wire",
    "made for the other earth": "on a bench supply limited to 1 A, with a lamp, try it both ways round",
    "flashes too slow or too fast": "count flashes for 30 s with its own lamps, and double: 60 to 120",
    "the lamps have no return": "a wire from the minus rail to the lamp's shell: it lights then, so the return was "
    "open; clean to metal or lead a wire",
    "a telltale lights the other side": "take the telltale out: the far side stays dark then, so it was the telltale",
    "a switch, fuse or wire does not feed it": "test lamp to minus at the fuse, the flasher's plus, its out, the "
    "switch's out, the lamp: the break lies before the first that stays dark",
    "LED lamps the wrong way round": "one lamp on a bench supply limited to 1 A: it lights one way round only",
}
