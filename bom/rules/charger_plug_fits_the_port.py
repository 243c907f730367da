"""The charger's plug must fit the bike's charge port.

Asks:     both name the same form; or the charger ends in bare leads and the port comes with its mating half.
Why:      chargers come with the plug of their usual scooter, or with none, and ports without their other half: the bike
          stands finished and can't be charged.
Cure:     the charger with that plug; or bare leads and a port that is sold with its mating half.
Ignores:  which pin is plus: the build sheet has it read first. Charging at the pack's own plug, which has no port.
Source:   common practice, no source.
Harm:     order.
Says:     fail, can't tell, tight.
"""

from dataclasses import replace

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins

BARE = "bare leads"


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the plug of the charger with the form of the port."""
    because = "form of the port; bare leads want a port that comes with its mating half"
    forms = same_word("plug of the charger", first.words_of("plug"), second.words_of("plug_form"), because)
    mates = is_word("mating half", second.words_of("mate_included"), ("yes",), because)
    bare = np.array([word == BARE for word in first.word("plug")])[:, None]
    return [replace(forms, verdicts=np.where(bare, mates.verdicts[None, :], forms.verdicts))]


RULE = PairRule("plugs into", judge)
