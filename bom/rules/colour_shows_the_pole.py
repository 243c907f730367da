"""A wire, or the sleeve over its lug, must show its pole by its colour.

Asks:     plus leads are red or orange, minus leads black; heavy leads above 60 V DC are orange, below it heavy plus
          leads are red or orange, heavy minus leads black or orange. New 12 V wires are red, their returns black.
          Sleeves over pack-side lugs are red on plus, black on minus; on 12 V never orange.
Why:      two red wires in one pair of holes are crossed one day.
Harm:     damage.
Says:     fail, can't tell.
Cure:     the other colour.
Ignores:  the donor's own loom, which keeps its colours; motor leads, which the builder marks by phase.
Source:   UN R136 5.1.1.5.3 (orange for high-voltage leads outside enclosures), read second-hand on a public page;
          red and black by common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

AS_IT_IS = "as it is"  # of the donor's own loom
COLOURS = {
    "plus": ("red", "orange"),
    "minus": ("black",),
    "heavy": ("orange",),
    "heavy plus": ("red", "orange"),
    "heavy minus": ("black", "orange"),
    "12 V plus": ("red", AS_IT_IS),
    "12 V minus": ("black", AS_IT_IS),
    "plus sleeve": ("red",),
    "minus sleeve": ("black",),
    "12 V sleeve": ("black", "red"),
}


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the colour where the place has a pole."""
    pole = duty.word("pole")
    if not pole:
        return []
    return [
        is_word(
            "colour",
            parts.words_of("colour"),
            COLOURS[pole],
            pole if "sleeve" in pole else f"{pole} lead",
            asked=duty.source_of("pole"),
        )
    ]


RULE = PartRule(("cable", "sleeve"), judge)
