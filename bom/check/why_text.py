"""One finding told in short lines, the answer first."""

from collections.abc import Iterable
from textwrap import wrap
from typing import Any

from bom.check.made_of import signs

WIDTH = 100
HANG = " " * 12
NO_BREAK = "\xa0"
MOST = 40  # findings listed where a text may mean several
Node = dict[str, Any]


def as_text(told: list[Node]) -> str:
    """Print the comparisons of one finding, then the words of its rule once."""
    seen: set[str] = set()
    lines = [line for number, data in enumerate(told) for line in _comparison(data, seen, first=number == 0)]
    rule = told[0]["rule"]
    lines += [*labelled("why", rule["why"]), *labelled("source", rule["source"]), *labelled("cure", rule["cure"])]
    return "\n".join(lines)


def _comparison(data: Node, seen: set[str], *, first: bool) -> list[str]:
    """Print one comparison: the answer, then the two figures and their making."""
    lines = [
        *wrapped(f"{data['verdict'].upper()}  {data['finding'].partition(' @ ')[2]}: {data['what']}", "      "),
        *(labelled("asked", data["rule"]["title"]) if first else []),
        *labelled("offered", data["offered_text"] + (f"  ({data['part']})" if data["part"] else "")),
        *labelled("needed", data["needed_text"]),
        *(labelled("find out", data["datum"]) if data["datum"] else []),
        "",
    ]
    for title, key in (("Offered", "offered"), ("Needed", "needed"), ("Margin before a clean pass", "clean_margin")):
        side = _side(data, key, seen)
        lines += [title, *side, ""] if side else []
    return lines


def candidates(text: str, keys: list[str], *, known: bool) -> str:
    """List what a text may mean, or what is nearest to it."""
    many = f'"{text}" names {len(keys)} findings. Say which:'
    none = f'No finding is named by "{text}". The nearest:'
    rest = [f"  and {len(keys) - MOST} more"] if len(keys) > MOST else []
    return "\n".join([many if known else none, *(f"  {key}" for key in keys[:MOST]), *rest])


def _side(data: Node, key: str, seen: set[str]) -> list[str]:
    node = data[key]
    if node is None:
        plain = data.get(f"{key}_text", "")
        because = f"  {data['because']}" if key == "needed" else ""
        return wrapped(f"  {plain}{because}  [words of the rule]", "    ") if plain else []
    return _node(node, "  ", seen)


def _node(node: Node, indent: str, seen: set[str]) -> list[str]:
    """Print a figure, and below it what made it; what was told once is not told again."""
    because = f"  {node['because']}" if node["because"] else ""
    name = f"{node['name']} = " if node["name"] else ""
    head = f"{indent}{name}{node['text']}{because}"
    if "origin" in node:
        told = node["origin"]["where"]
        if len(head) + len(told) + 4 <= WIDTH:
            return [f"{head}  [{told}]"]
        if told in seen:
            return wrapped(f"{head}  [as above]", f"{indent}    ")
        seen.add(told)
        return [*wrapped(head, f"{indent}    "), *wrapped(f"{indent}    [{told}]", f"{indent}     ")]
    if "formula" not in node:
        return wrapped(f"{head}  [nobody said where from]", f"{indent}    ")
    mark = str({key: value for key, value in node.items() if key != "name"})  # the same down to every leaf
    if mark in seen:
        return wrapped(f"{head}  [as above]", f"{indent}    ")
    seen.add(mark)
    lines = [*wrapped(head, f"{indent}    "), *wrapped(f"{indent}  = {signs(node['formula'])}", f"{indent}    ")]
    if not node["agrees"]:
        lines.append(f"{indent}  ! this formula does not give that figure: report it with the job file")
    for entry in node["inputs"]:
        lines += _node(entry, f"{indent}    ", seen)
    return lines


def labelled(label: str, text: str) -> list[str]:
    """Print a text behind its label, in lines of the width."""
    return wrapped(f"{label:<9} {text}", " " * 10)


def block(head: str, texts: Iterable[str]) -> str:
    """Print a head, and below it each text in lines of the width that hang from one column; none of an empty text."""
    lines = wrapped(head, HANG)
    for text in filter(None, texts):
        lines += wrapped(f"{HANG}{text}", f"{HANG}  ")
    return "\n".join(lines)


def unbroken(text: str) -> str:
    """Keep a text that is to be copied in one line when it is wrapped, if it fits into one."""
    return text.replace(" ", NO_BREAK) if len(text) <= WIDTH - len(HANG) - 4 else text


def shortened(text: str) -> str:
    """Cut a text that must stay in one line of the width, at the end of a word."""
    return text if len(text) <= WIDTH else f"{text[: WIDTH - 3].rpartition(' ')[0].rstrip(' ;,:')} ..."


def wrapped(text: str, indent: str) -> list[str]:
    """Break a text into lines of the width; all but the first are indented."""
    lines = wrap(text, WIDTH, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False)
    return [line.replace(NO_BREAK, " ") for line in lines] or [""]
