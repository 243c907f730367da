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
    carrying = [
        (place.name, place.circuit == "traction", view.duties[place.name].carry_a.high)
        for place in view.loom.places
        if (place.family == "cable" or place.name in through) and view.duties[place.name].has("carry_a")
    ]
    for standing in view.walks.states:
        if standing.collapsed:
            continue
        for name, heavy, duty_a in carrying:
            if heavy and standing.state.traction == "peak":
                continue
            amps = standing.amps(name)
            counted = max(duty_a, most[name].amps if name in most else 0.0)
            if amps > counted * (1 + CLOSE):
                most[name] = Excess(name, amps, standing.state.name)
    return tuple(sorted(most.values(), key=lambda excess: excess.place))
