"""A stub that no fuse guards must have the least copper set for it.

Asks:     its copper is at least the margin stub_mm2, whatever its own fuse further on is.
Why:      only the main fuse sees a short in a stub, and may take seconds: 0.75 mm2 melts in hundredths of one.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a thicker stub, short, in a sleeve of its own.
Ignores:  a weak short: no area that a tap fuse's holder takes outlasts a main fuse's slowest opening, so the sleeve
          and the shortness are what protects.
Source:   IEC 60364-4-43 434.2.1 (an unfused wire is short, covered and placed so that a short is unlikely), from
          memory; the area is common practice, an estimate.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the copper."""
    return [at_least("area", parts.rating("area_mm2"), duty.least_area_mm2)]


RULE = PartRule(("cable",), judge, only_with=("least_area_mm2",))
