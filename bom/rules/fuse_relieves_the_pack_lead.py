"""The lead before the main fuse must carry what the fuse lets pass.

Asks:     the lead's ampacity is at least the main fuse's rating, and 1.45 times it the sure fusing current.
Why:      no fuse stands before this lead; against overload the one behind it is all it has.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the lead as thick as the rest of the run.
Ignores:  a short in the lead itself, which only its shortness and its cover prevent.
Source:   IEC 60364-4-43 433.2 (the overload device may stand along the run), from memory.
"""

from bom.judge.rule import PairRule
from bom.rules.fuse_guards_its_wire import judge

RULE = PairRule("relieves", judge)
