"""Where a solved state asks more of a place than was counted on before its part was chosen."""

from dataclasses import dataclass

from bom.judge.loom_view import LoomView

# Less is the drop along the wires: what takes set watts takes a little more amps at the end of them.
CLOSE = 0.02


@dataclass(frozen=True)
class Excess:
    """Amps that a place carries in a solved state, above its duty.

    place  its name
    amps   A
    state  the state that asks most
    """

    place: str
    amps: float
    state: str


def exceeds(view: LoomView) -> tuple[Excess, ...]:
    """List the places that carry more without end, in some state that stands, than their duty says.

    A burst of the controller is judged as a burst; it is no running current of the heavy leads.
    """
    most: dict[str, Excess] = {}
    through = {bridge.name for bridge in view.walks.bike.bridges if bridge.kind in ("fuse", "contact", "plug")}
    for standing in view.walks.states:
        if standing.collapsed:
            continue
        for place in view.loom.places:
            duty, name = view.duties[place.name], place.name
            burst = place.circuit == "traction" and standing.state.traction == "peak"
            carries = place.family == "cable" or name in through
            if burst or not carries or not duty.has("carry_a"):
                continue
            amps = standing.amps(name)
            counted = max(duty.carry_a.high, most[name].amps if name in most else 0.0)
            if amps > counted * (1 + CLOSE):
                most[name] = Excess(name, amps, standing.state.name)
    return tuple(sorted(most.values(), key=lambda excess: excess.place))
