"""What the choice comes to: places filled with one part each, and places that stay open."""

from dataclasses import dataclass

from bom.judge.verdict import Verdict
from bom.loom.model import Place
from bom.parts import Parts

HOLE_CURE = "add a part to the catalogue that meets this, pin one by your own judgement, or change the job"
NONE = "none chosen"
# How a figure that lacks begins where it is one of a part, not of the bike.
OF_A_PART = ("the part's ", "the other part's figure for ")


@dataclass(frozen=True)
class Filled:
    """A place and the one part that stands there.

    origin  "chosen", "donor", "pinned", or "received" in place of what was ordered
    """

    place: Place
    part: Parts
    origin: str

    @property
    def part_id(self) -> str:
        """Id of the part."""
        return self.part.ids[0]


@dataclass(frozen=True)
class Aside:
    """A part that stands nowhere: it came, or was ordered, for a place that is not wanted with what arrived.

    origin  "received", or how the ordered one was come by
    """

    place: str
    part_id: str
    origin: str
    why: str


@dataclass(frozen=True)
class Hole:
    """A place nothing can stand at, and the nearest miss; or one that only a part that arrived wants.

    verdict  fail, or can't tell where only facts are missing
    datum    the fact that would settle it
    rules    that speak against the nearest miss, or against the pair that blocks; none where nothing is offered
    blocked  the place whose part nothing goes with that passes alone, "" where nothing passes alone
    wanted_by  the place whose part arrived and wants this one, "" where it was wanted as ordered
    remedy   what helps, whatever facts lack
    """

    place: Place
    sentence: str
    verdict: Verdict = Verdict.FAIL
    datum: str = ""
    rules: tuple[str, ...] = ()
    blocked: str = ""
    wanted_by: str = ""
    remedy: str = HOLE_CURE

    @property
    def title(self) -> str:
        """Say that nothing is chosen; an open fuse or contact would be another thing."""
        name = self.place.name
        return f"{NONE} for: {name}" if name.endswith("s") else f"no {name} chosen"

    @property
    def cure(self) -> str:
        """Say what helps."""
        if not self.datum:
            return self.remedy
        found = f"find out {self.datum}"
        return f"{found}; or: {self.remedy}" if self.datum.startswith(OF_A_PART) else found
