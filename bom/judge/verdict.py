"""The five answers a rule can give, worst last."""

from enum import IntEnum


class Verdict(IntEnum):
    """A rule's answer. The order matters: of several answers the greatest stands."""

    NOT_ASKED = 0
    PASS = 1
    TIGHT = 2
    CANT_TELL = 3
    FAIL = 4

    @property
    def word(self) -> str:
        """Name the answer as the papers print it."""
        return _WORDS[self]


_WORDS = {
    Verdict.NOT_ASKED: "not asked",
    Verdict.PASS: "pass",
    Verdict.TIGHT: "tight",
    Verdict.CANT_TELL: "can't tell",
    Verdict.FAIL: "fail",
}
