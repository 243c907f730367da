"""What converters and draws do, changed one step at a time until the solved volts agree with it."""

import numpy as np

from bom.circuit.compiled import BLOCKS, HOLDS, OFF, Compiled
from bom.circuit.pattern import Floats, Ints

BACK_A = 1e-6  # amps into an output that holds; less is rounding


def first_modes(compiled: Compiled) -> Ints:
    """Let every converter and every draw hold to begin with."""
    return np.full(len(compiled.output_v) + len(compiled.amount), HOLDS, dtype=np.intp)


def next_modes(compiled: Compiled, volts: Floats, modes: Ints, bend_w: Floats | None) -> Ints:
    """Change what does not agree with the volts. Equal modes mean that all agrees, or that nothing can be changed.

    bend_w  bend of the last change of volts, where they did not settle

    Outputs come first: what a converter gives decides what it takes, and so what is left for the rest.
    """
    changed = _overloaded_off(compiled, volts, modes)
    if bend_w is not None:
        return _relieved(modes, bend_w) if np.array_equal(changed, modes) else changed
    changed = _blocked(compiled, volts, changed)
    return _low_inputs_off(compiled, volts, modes) if np.array_equal(changed, modes) else changed


def _overloaded_off(compiled: Compiled, volts: Floats, modes: Ints) -> Ints:
    """Let a converter go that would give more than its limit and does not keep its current."""
    held_a = compiled.held_a(volts)
    out = modes.copy()
    new = out[: len(held_a)]
    new[(new == HOLDS) & (held_a > compiled.limit_a) & ~compiled.keeps_current] = OFF
    return out


def _blocked(compiled: Compiled, volts: Floats, modes: Ints) -> Ints:
    """Block a converter that is fed from outside; let it hold again after."""
    held_a = compiled.held_a(volts)
    mode = modes[: len(held_a)]
    out = modes.copy()
    out[: len(held_a)][(mode == BLOCKS) & (held_a > BACK_A)] = HOLDS
    out[: len(held_a)][(mode == HOLDS) & (held_a < -BACK_A)] = BLOCKS
    return out


def _low_inputs_off(compiled: Compiled, volts: Floats, modes: Ints) -> Ints:
    """Let a converter go that has too little to live on."""
    out = modes.copy()
    low = compiled.across(volts, compiled.input_ends) < compiled.lowest_input_v
    out[: len(low)][low] = OFF
    return out


def _relieved(modes: Ints, bend_w: Floats) -> Ints:
    """Let go what bends the network most: less volts make it take more."""
    out = modes.copy()
    if np.min(bend_w, initial=0.0) < 0.0:
        out[np.argmin(bend_w)] = OFF
    return out


def let_go(compiled: Compiled, volts: Floats, modes: Ints) -> tuple[str, ...]:
    """Name the draws of watts that have let go or stand below their least volts, and the converters that are off."""
    count = len(compiled.output_v)
    below = (compiled.across(volts, compiled.draw_ends) < compiled.least_v) | (modes[count:] == OFF)
    low = compiled.is_watts & below & (compiled.amount > 0)
    names = [d.name for d, gone in zip(compiled.network.draws, low, strict=True) if gone]
    off = modes[:count] == OFF
    return (*names, *(c.name for c, gone in zip(compiled.network.converters, off, strict=True) if gone))


def limiting(compiled: Compiled, volts: Floats, modes: Ints) -> tuple[str, ...]:
    """Name the converters that give their limit and no longer hold their volts."""
    over = compiled.over_limit(compiled.held_a(volts), modes)
    return tuple(c.name for c, limits in zip(compiled.network.converters, over, strict=True) if limits)
