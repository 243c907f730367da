"""The generated parts of the documents: `python -m bom.docs` writes them, `--check` compares.

A generated part stands between two comment lines that name it; everything else is written by hand.
"""

import argparse
import re
import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.mistakes.entries import Mistake

PROJECT = Path(__file__).resolve().parent.parent
DOCUMENTS = ("README.md", "DEVELOPERS.md", "tests/mistakes/README.md")
REPAIR = "python -m bom.docs"


def main(arguments: list[str]) -> int:
    """Write or check the generated parts; 1 when a check finds one stale."""
    stale = []
    for name in DOCUMENTS:
        path = PROJECT / name
        text = path.read_text(encoding="utf-8")
        fresh = refreshed(text)
        if fresh != text:
            stale.append(name)
            if "--check" not in arguments:
                path.write_text(fresh, encoding="utf-8", newline="\n")
    if stale and "--check" in arguments:
        print(f"{', '.join(stale)}: generated parts are stale. Run: {REPAIR}")
        return 1
    return 0


def refreshed(text: str) -> str:
    """Fill in every generated part of a document."""

    def fill(match: re.Match[str]) -> str:
        name = match.group(1)
        return f"<!-- begin: {name} -->\n{PARTS[name]()}\n<!-- end: {name} -->"

    return re.sub(r"<!-- begin: (.+?) -->\n.*?<!-- end: \1 -->", fill, text, flags=re.DOTALL)


def command_help() -> str:
    """List every command with its arguments, from the parser itself."""
    from bom.cli import parser

    lines = ["| command | argument | meaning |", "|---|---|---|"]
    for action in parser()._actions:
        if not isinstance(action, argparse._SubParsersAction):
            continue
        for choice in action._choices_actions:
            lines.append(f"| `donorbill {choice.dest}` | | {choice.help} |")
            for argument in action.choices[choice.dest]._actions:
                if argument.help not in (argparse.SUPPRESS, None) and argument.dest != "help":
                    name = ", ".join(argument.option_strings) or argument.metavar
                    lines.append(f"| | `{name}` | {argument.help} |")
    return "\n".join(lines)


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Lay out a table in Markdown."""
    return "\n".join([_row(heads), "|---" * len(heads) + "|", *map(_row, rows)])


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def rule_table() -> str:
    """List every rule with its words."""
    from bom.judge.rule import rules

    rows = [
        (f"`{each.name}`", each.asks, "; ".join(each.places), each.severity, each.harm.word, each.cure, each.source)
        for each in rules()
    ]
    return _table(("rule", "asks", "places", "severity", "harm", "cure", "source"), rows)


def harm_table() -> str:
    """List the harms, the worst first."""
    from bom.judge.harm import Harm

    rows = [(str(harm.value), harm.word, harm.meaning) for harm in sorted(Harm)]
    return _table(("rank", "harm", "what goes wrong"), rows)


def trade_tags() -> str:
    """Set the trade's four tags beside the words of this program."""
    from bom.judge.harm import TRADE_TAGS

    return _table(("tag", "here"), TRADE_TAGS.items())


def known_mistakes() -> str:
    """List every mistake of the trade's list."""
    from tests.mistakes.entries import known

    return _mistakes(known())


def further_mistakes() -> str:
    """List the further mistakes."""
    from tests.mistakes.entries import further

    return _mistakes(further())


def _mistakes(mistakes: "Iterable[Mistake]") -> str:
    """Say of each mistake how it is met, by what, where, with which answer, and the figures by hand."""
    rows = []
    for mistake in mistakes:
        rule = f"`{mistake.rule}`" if mistake.rule else "build sheet"
        answer = "printed" if mistake.how == "step printed" else mistake.expected
        answer += f": {mistake.because}" if mistake.because else ""
        met = (mistake.name, mistake.tag, mistake.how)
        rows.append((*met, rule, mistake.place or "–", answer, mistake.by_hand))
    return _table(("mistake", "tag", "met by", "rule", "place", "answer", "by hand"), rows)


def family_table() -> str:
    """List every part family with its number of columns' names."""
    from bom.read.families import FAMILIES

    rows = [
        (f"`{family.name}` {family.title}", family.words, ", ".join(f"`{column.name}`" for column in family.columns))
        for family in FAMILIES
    ]
    return _table(("family", "also called", "columns"), rows)


def job_keys() -> str:
    """List every key of the job file with its default and meaning."""
    from bom.read.job import JobFile
    from bom.read.job_keys import keys_of

    rows = [(f"`{key.path}`", key.default, key.meaning) for key in keys_of(JobFile)]
    return _table(("key", "unsaid", "meaning"), rows)


def lead_functions() -> str:
    """List every function of a control lead with the trade's other words for it."""
    from typing import get_args

    from bom.read.lead_kinds import TRADE_WORDS, Function

    meant = {
        function: ", ".join(word for word, other in TRADE_WORDS.items() if other == function)
        for function in get_args(Function)
    }
    return _table(("function", "also read"), [(function, words or "–") for function, words in meant.items()])


def record_keys() -> str:
    """Show the keys of the JSON record."""
    text = (PROJECT / "templates" / "record.md").read_text(encoding="utf-8").strip()
    return text.removeprefix("# Keys of the record").strip()


PARTS: Mapping[str, Callable[[], str]] = {
    "command help": command_help,
    "rules": rule_table,
    "harms": harm_table,
    "trade tags": trade_tags,
    "known mistakes": known_mistakes,
    "further mistakes": further_mistakes,
    "families": family_table,
    "job keys": job_keys,
    "lead functions": lead_functions,
    "record keys": record_keys,
}

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
