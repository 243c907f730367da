"""Why nothing can stand at a place: what was asked, and who came nearest."""

import numpy as np

from bom.build import Hole
from bom.check.finding import finding_of
from bom.choose.candidates import Candidates
from bom.choose.qualify import judge_parts
from bom.duties.model import Duty
from bom.judge.verdict import Verdict
from bom.margins import Margins
from bom.read.families import BY_NAME


def open_place(option: Candidates, duty: Duty, margins: Margins, some_pass_alone: bool) -> Hole:
    """Say in a few sentences why a place stays open, and which facts would settle it."""
    title, place = BY_NAME[option.place.family].title, option.place
    if not len(option.parts):
        return Hole(place, f"No {title} in the catalogue has an offer.")
    if some_pass_alone:
        return Hole(place, f"Some {title}s pass alone, but none together with the parts it bears on.")
    nearest, lacking = _nearest(option, duty, margins)
    answers = judge_parts(option.parts.take([nearest]), duty, margins)
    part = option.parts.take([nearest])
    against = [finding_of(answer, place.name, (part,)) for answer in answers]
    against = [finding for finding in against if finding.verdict > Verdict.PASS]
    reasons = " ".join(f"{finding.verdict.word}: {finding.sentence}" for finding in against)
    others = lacking - 1 if against and max(f.verdict for f in against) == Verdict.CANT_TELL else lacking
    more = f" {others} more fail nothing but lack a figure." if others > 0 else ""
    sentence = f"No {title} passes. Nearest is {part.ids[0]} ({part.word('name')[0]}): {reasons}{more}"
    data = dict.fromkeys(finding.datum for finding in against if finding.datum)
    verdict = Verdict.CANT_TELL if lacking else Verdict.FAIL
    return Hole(place, sentence, verdict, "; ".join(data))


def _nearest(option: Candidates, duty: Duty, margins: Margins) -> tuple[int, int]:
    """Find the candidate with the mildest worst answer and the fewest against it; count those that only lack."""
    count = len(option.parts)
    answers = judge_parts(option.parts, duty, margins)
    grid = np.stack([np.broadcast_to(answer.judgement.verdicts, (count,)) for answer in answers])
    against, worst = (grid > Verdict.PASS).sum(axis=0), grid.max(axis=0)
    nearest = int(np.lexsort((np.array(option.costs), against, worst))[0])
    return nearest, int((worst == Verdict.CANT_TELL).sum())
