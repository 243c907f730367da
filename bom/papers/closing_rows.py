"""What happens at closing, as words that workbook and build sheet share."""

from bom.build import Build
from bom.circuit.waking import Loss, Stuck, riding
from bom.papers.open_rows import dark_words


def walked_in(build: Build) -> str:
    """Name the state in which wires are opened and things fail; and say so where the bike does not stand in it."""
    state = riding(build.walks.bike)
    if state is None:
        return "no state of this bike rides"
    let_go = next(standing.collapsed for standing in build.walks.states if standing.state.name == state.name)
    if let_go:
        return f"{state.name}; but there {let_go}: settle that first, this tells little until then"
    return state.name


def loss_words(loss: Loss, build: Build) -> tuple[str, str]:
    """Name the loads that go out, and the coils that drop out, when something goes."""
    waking = build.walks.waking
    loads = {name for other in (waking.losses if waking else ()) for name in other.dark}
    return dark_words(loss.dark, loads) or "nothing", ", ".join(loss.drops) or "nothing"


def waits(stuck: Stuck) -> str:
    """Say why a coil stays out."""
    if stuck.waits_for == stuck.coil:
        return "deadlock: it is fed through its own contact"
    return f"it waits for the {stuck.waits_for}" if stuck.waits_for else "nothing feeds it"
