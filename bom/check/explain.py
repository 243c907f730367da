"""What `donorbill rules` prints: every rule under the harm it wards off, or one of them with its worked example."""

from collections import Counter

from bom.check.examples import Example, Told, of_parts
from bom.check.why_text import labelled, wrapped
from bom.data import folder
from bom.judge.harm import BY_WORD, Harm
from bom.judge.rule import LoomRule, Rule, rules
from bom.judge.verdict import Verdict
from bom.read.margins import shipped_margins
from bom.read.words import nearest_words

MOST = 3  # comparisons shown of one example
SURELY = 88  # of 100: a name at least so like one of a rule is read as meant


def listed(only: Harm | None = None) -> str:
    """List the rules under what goes wrong where they fail, the worst first; or those of one harm."""
    lines = []
    for harm in sorted(Harm) if only is None else [only]:
        lines += wrapped(f"{harm.word.upper()}  {harm.meaning}", "      ")
        for rule in rules():
            if rule.harm is harm:
                lines += wrapped(f"  {rule.name} ({rule.severity}): {rule.title}", "      ")
        lines.append("")
    counts = Counter(rule.harm for rule in rules())
    told = ", ".join(f"{counts[harm]} {harm.word}" for harm in sorted(Harm))
    ends = (
        f"{len(rules())} rules, each with what it can say beside pass: {told}.",
        "Explain one: donorbill rules NAME. List one harm: donorbill rules fire",
    )
    return "\n".join([*lines, *(line for end in ends for line in wrapped(end, ""))])


def harm_meant(text: str) -> Harm | None:
    """Find the harm that a text names."""
    return BY_WORD.get(text.strip().casefold())


def meant(text: str) -> Rule | None:
    """Find the rule that a text names: its name, a part that only one name has, or a name misspelt."""
    from rapidfuzz import fuzz, process

    by_name = {rule.name: rule for rule in rules()}
    wanted = _hyphened(text)
    if wanted in by_name:
        return by_name[wanted]
    holding = [name for name in by_name if _holds(name, wanted)]
    if len(holding) == 1:
        return by_name[holding[0]]
    best = process.extract(wanted, list(by_name), scorer=fuzz.ratio, score_cutoff=SURELY, limit=2)
    alone = len(best) == 1 or (len(best) == 2 and best[0][1] > best[1][1])
    return by_name[best[0][0]] if alone and not holding else None


def not_meant(text: str) -> str:
    """Say that a text names several rules, and which; or none, and which are nearest."""
    names = [rule.name for rule in rules()]
    several = [name for name in names if _holds(name, _hyphened(text))]
    if several:
        return "\n".join([f'"{text}" names {len(several)} rules. Say which:', *(f"  {name}" for name in several)])
    return "\n".join(
        [f'No rule is named by "{text}". The nearest:', *(f"  {name}" for name in nearest_words(text, names))]
    )


def _holds(name: str, wanted: str) -> bool:
    """Tell whether a rule's name holds these words whole: "lug" is no part of "plug"."""
    return bool(wanted) and f"-{wanted}-" in f"-{name}-"


def _hyphened(text: str) -> str:
    """Write words as the name of a rule is written."""
    return "-".join(text.casefold().replace("-", " ").replace("_", " ").split())


def explained(rule: Rule) -> str:
    """Explain one rule, and let it work its example."""
    bad, cured = example(rule)
    shown = [told for told in bad.told if told.finding.verdict > Verdict.PASS]
    lines = [
        *wrapped(f"{rule.name}: {rule.title}", "    "),
        *labelled("places", ", ".join(rule.places)),
        *labelled("asks", rule.asks),
        *labelled("why", rule.why),
        *labelled("severity", rule.severity),
        *labelled("harm", f"{rule.harm.word}: {rule.harm.meaning}"),
        *labelled("cure", rule.cure),
        *labelled("left out", rule.ignores),
        *labelled("source", rule.source),
        "",
        *_worked(bad, shown, "An example"),
        "",
        *_worked(cured, _alike(shown, cured), "Cured"),
    ]
    return "\n".join(lines)


def example(rule: Rule) -> tuple[Example, Example]:
    """Let a rule work its bad example and the cured one."""
    if not isinstance(rule.shape, LoomRule):
        return of_parts(rule, rule.shape, shipped_margins())
    from bom.check.example_builds import of_the_bike
    from bom.memory import Memory
    from bom.read.catalogue import read_catalogue

    return of_the_bike(rule, rule.shape, read_catalogue(folder("catalog")), Memory())


def _alike(shown: list[Told], cured: Example) -> list[Told]:
    """Pick of the cured example what was bad before; where nothing compares the same, all of it."""
    subjects = {(told.finding.subject, told.finding.what) for told in shown[:MOST]}
    again = [told for told in cured.told if (told.finding.subject, told.finding.what) in subjects]
    worse = [told for told in cured.told if told.finding.verdict > Verdict.PASS and told not in again]
    return [*worse, *again] or list(cured.told)


def _worked(example: Example, told: list[Told], head: str) -> list[str]:
    lines = wrapped(f"{head}: {example.title}", "    ")
    for given in example.setting:
        lines += wrapped(f"  {given}", "      ")
    for entry in told[:MOST]:
        lines += _comparison(entry)
    if len(told) > MOST:
        lines.append(f"  and {len(told) - MOST} more")
    return lines


def _comparison(told: Told) -> list[str]:
    """Print what is offered and what is needed, how the figures came about, and the answer."""
    finding = told.finding
    subject = "" if finding.part else f"{finding.subject}: "
    compared = f"{finding.offered} offered, {finding.needed} needed ({finding.because})"
    lines = wrapped(f"  {finding.verdict.word.upper()}  {subject}{finding.what}: {compared}", "        ")
    for made in told.made:
        lines += wrapped(f"        {made}", "          ")
    return lines
