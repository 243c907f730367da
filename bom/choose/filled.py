"""What the choice comes to: places filled with one part each, and places that stay open."""

from dataclasses import dataclass

from bom.judge.verdict import Verdict
from bom.loom.model import Place
from bom.parts import Parts


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
class Hole:
    """A place nothing can stand at, and the nearest miss.

    verdict  fail, or can't tell where only facts are missing
    datum    the fact that would settle it
    """

    place: Place
    sentence: str
    verdict: Verdict = Verdict.FAIL
    datum: str = ""
