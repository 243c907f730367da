"""What happens at closing, as words that workbook and build sheet share."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from bom.build import Build
from bom.circuit.live import DEAD_V, DRIVE
from bom.circuit.waking import Loss, Stuck, riding
from bom.loom.builder import PILOT
from bom.loom.low_volt import RAIL_METER

NEEDED = ("meter", DRIVE)
NO_LOADS = (*NEEDED, RAIL_METER, PILOT)  # what is no load of the 12 V side
ALL_LOADS = "everything on 12 V"


@dataclass(frozen=True)
class Walked:
    """The state in which wires are opened and things fail; nothing is told of one that can't be sustained.

    name   its name, "" where no state rides
    stands whether the bike can sustain it
    """

    name: str
    stands: bool

    @property
    def told(self) -> str:
        """Name it, or say why nothing is told."""
        if not self.name:
            return "Not walked: no state of this bike rides."
        if not self.stands:
            return f'Not told: the bike can\'t sustain "{self.name}", in which this is walked. Settle that first.'
        return f'Walked in the state "{self.name}".'


def walked_in(build: Build) -> Walked:
    """Give the state in which wires are opened and things fail."""
    state = riding(build.walks.bike)
    if state is None:
        return Walked("", False)
    standing = next(standing for standing in build.walks.states if standing.state.name == state.name)
    return Walked(state.name, not standing.collapsed)


def losses(build: Build) -> tuple[Loss, ...]:
    """Give what dies with what; nothing where the state it is walked in can't be sustained."""
    waking = build.walks.waking
    return waking.losses if waking and walked_in(build).stands else ()


def loss_words(loss: Loss, build: Build) -> tuple[str, str]:
    """Name what goes out, and the coils that drop out, when something goes."""
    waking = build.walks.waking
    loads = {name for other in (waking.losses if waking else ()) for name in other.dark} - set(NO_LOADS)
    buffered = any(bridge.kind == "buffer" for bridge in build.loom.bridges)
    nothing = "nothing, while the buffer battery lasts" if buffered else "nothing"
    return dark_words(loss.dark, loads) or nothing, ", ".join(loss.drops) or "nothing"


def waits(stuck: Stuck) -> str:
    """Say why a coil stays out."""
    if stuck.waits_for == stuck.coil:
        why = "deadlock: it is fed through its own contact"
    elif stuck.waits_for:
        why = f"it waits for the {stuck.waits_for}"
    else:
        why = "nothing feeds it" if stuck.volts < DEAD_V else "its volts are too low"
    return f"{why}; it needs {stuck.needs_v:.1f} V"


def dark_words(dark: Sequence[str], loads: Collection[str]) -> str:
    """Name what goes out, the drive first; every load of the 12 V side in one word."""
    rest = [name for name in dark if name not in (DRIVE, *loads)]
    lamps = [name for name in dark if name in loads]
    named = [ALL_LOADS] if len(lamps) == len(loads) > 1 else lamps
    return ", ".join([*([DRIVE] if DRIVE in dark else []), *named, *rest])
