"""What happens at closing, as words that workbook and build sheet share."""

from bom.build import Build
from bom.circuit.waking import Loss
from bom.papers.open_rows import dark_words


def loss_words(loss: Loss, build: Build) -> tuple[str, str]:
    """Name the loads that go out, and the coils that drop out, when something goes."""
    waking = build.walks.waking
    loads = {name for other in (waking.losses if waking else ()) for name in other.dark}
    return dark_words(loss.dark, loads) or "nothing", ", ".join(loss.drops) or "nothing"
