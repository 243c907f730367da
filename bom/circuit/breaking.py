"""Whether a fuse that blows also breaks what it blew on: by its DC volts and its DC breaking amps."""

from dataclasses import dataclass

from bom import units
from bom.duties.model import Duty
from bom.judge.compare import at_least
from bom.judge.verdict import Verdict
from bom.parts import Parts

# Column, what the duty asks of it, its dimension, its words, and how it stands to the duty in a sentence.
ASKED = (
    ("dc_volts_v", "voltage_v", "voltage", "DC volts", "on"),
    ("dc_breaking_a", "fault_high_a", "current", "DC breaking amps", "of"),
)


@dataclass(frozen=True)
class Breaking:
    """Why a fuse may blow and not break.

    short   by what it is short ("32 V on 88 V"), "" where it breaks as far as is known
    unsaid  the figure that nobody knows ("DC volts"), "" where all is known
    """

    short: str = ""
    unsaid: str = ""

    @property
    def sound(self) -> bool:
        """Tell whether it is known to break."""
        return not (self.short or self.unsaid)


def breaking(part: Parts | None, duty: Duty) -> Breaking:
    """Ask a fuse what the rules ask of it; a place without a part is an open place, told of by itself."""
    if part is None:
        return Breaking()
    unsaid = ""
    for column, needed, dimension, word, stands in ASKED:
        if not duty.has(needed):
            continue
        need = getattr(duty, needed)
        verdict = Verdict(int(at_least(word, part.rating(column), need).verdicts[0]))
        if verdict == Verdict.FAIL:
            offered = units.show(float(part.number(column)[0]), dimension)
            return Breaking(short=f"{offered} {stands} {units.show(need.high, dimension)}")
        unsaid = unsaid or (word if verdict == Verdict.CANT_TELL else "")
    return Breaking(unsaid=unsaid)
