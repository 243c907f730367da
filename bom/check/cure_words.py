"""What helps against a cause, beside what its rule says: another way to wire the key that is known to pass."""

from typing import TYPE_CHECKING

from bom.arrangement import DONORS_KEY
from bom.check.causes import Cause

if TYPE_CHECKING:
    from bom.session import Session

KEY = "key switch"


def cure_words(cause: Cause, session: "Session") -> str:
    """Give the cure; of a key that does not pass the cheapest arrangement in which nothing fails, with its price."""
    sound = [build for build in session.others if build.sound and not build.arrangement.endswith(DONORS_KEY)]
    if not cause.to_settle or KEY not in cause.places or not sound:
        return cause.cure
    best = min(sound, key=lambda build: build.bill.total)
    known = f'wishes.key = "{best.arrangement}" passes, parts {best.bill.total:,.2f} {best.bill.currency}'
    return "; or: ".join(filter(None, (known, cause.cure)))
