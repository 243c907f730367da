"""The known word most like a mistyped one: what the faults of job files and of tables share."""

from collections.abc import Sequence

_LEAST_LIKENESS = 65  # of 100; lower than this and a guess misleads more than it helps


def nearest(word: str, known: Sequence[str]) -> str:
    """Name the known word most like this one as a sentence with a space before it; "" when none is near."""
    best = nearest_word(word, known)
    return f' The nearest is "{best}".' if best else ""


def nearest_words(word: str, known: Sequence[str], *, most: int = 5) -> list[str]:
    """List the known words most like a part of one, the best first, however far off."""
    from rapidfuzz import fuzz, process, utils

    found = process.extract(word, known, scorer=fuzz.partial_ratio, processor=utils.default_process, limit=most)
    return [entry[0] for entry in found]


def nearest_word(word: str, known: Sequence[str]) -> str:
    """Give the known word most like this one; "" when none is near."""
    # Imported here because only a faulty file needs it.
    from rapidfuzz import fuzz, process, utils

    best = process.extractOne(
        word, known, scorer=fuzz.ratio, processor=utils.default_process, score_cutoff=_LEAST_LIKENESS
    )
    return best[0] if best else ""
