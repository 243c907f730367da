"""Reading what can be read of a TOML text with slips in it, so that one slip hides no other fault."""

import re
import tomllib
from dataclasses import dataclass, field
from typing import Any

from bom.errors import Fault

_POSITION = re.compile(r" \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)")
_HEADER = re.compile(r"^\s*(\[.*|[A-Za-z_][\w.\- ]*\]+)\s*(#.*)?$")
_STRICT_HEADER = re.compile(r"^\s*\[{1,2}[\w.\- ]+\]{1,2}\s*(#.*)?$")  # even where a list may have been left open
_KEY = re.compile(r"^\s*([\w.\-]+|\"[^\"]*\"|'[^']*')\s*=")
_QUOTED = re.compile(r"\"(\\.|[^\"\\])*\"|'[^']*'")

# The slips a builder makes most, and what to write instead.
_SLIPS = (
    (re.compile("[“”„‘’]"), "Use straight quotes, as a plain text editor writes them."),
    (re.compile(r"\s//"), "Begin a remark with #."),
    (re.compile(r"=\s*\d{4}-\d{1,2}-\d{1,2}"), "Write a date that exists, as year-month-day, like 2026-11-20."),
    (re.compile(r"=\s*(yes|no|on|off|True|False)\b"), "Write true or false, without quotes."),
    (re.compile(r"=\s*\d{1,2}[./]\d{1,2}[./]\d{2,4}"), "Write a date as year-month-day, like 2026-11-20."),
    (re.compile(r"=\s*\d+,\d"), 'Write a decimal point, and a quantity in quotes with its unit, like "1.8 m".'),
    (re.compile(r"=\s*[-+]?\d[\d.,]*\s*[^\s\d.,#\"']"), 'Put a quantity with its unit in quotes, like "55 W".'),
    (re.compile(r"=\s*[A-Za-z]"), 'Put words in quotes, like kind = "filament".'),
    (re.compile(r"=\s*(#|$)"), "Write a value behind the =, or leave the line out."),
    (re.compile(r"=\s*(\"\"\"|[\"'])[^\"']*$"), "Close the quotes on the same line."),
    (re.compile(r"^[\w\- ]+:"), 'Write = between a key and its value, like power = "55 W".'),
)


@dataclass
class Salvaged:
    """What could be read of a text.

    data     its values, as tomllib gives them
    text     the text with every line that could not be read left blank
    lost     keys whose line could not be read, by the line of their table's heading (0 before the first)
    beheaded  True when the heading of a table could not be read, so that any table may be there
    """

    data: dict[str, Any] = field(default_factory=dict)
    text: str = ""
    lost: dict[int, set[str]] = field(default_factory=dict)
    beheaded: bool = False

    def explains(self, fault: Fault) -> bool:
        """Tell whether something is only missed because its line could not be read."""
        keys = self.lost.get(fault.line, set())
        of_table = "is missing" not in fault.accepted
        missed = bool(keys) and (of_table or fault.place.rpartition(".")[2] in keys)
        return fault.found == "" and (missed or (self.beheaded and not fault.line))


def read_toml(file: str, text: str, faults: list[Fault]) -> Salvaged:
    """Read a TOML text; every line that is not TOML becomes a fault and the rest is still read."""
    try:
        return Salvaged(tomllib.loads(text), text)
    except tomllib.TOMLDecodeError as error:
        found: list[Fault] = []
        salvaged = _Salvage(file, text.split("\n"), found).run()
        if not found:  # each table can be read for itself, but not all of them together
            lines = ["", *text.split("\n")]
            found.append(_fault(file, error, lines, 0, _met(error, len(lines)) + 1))
        faults += found
        return salvaged


@dataclass
class _Salvage:
    """One pass over the tables of a text, each read for itself and put beside the others."""

    file: str
    lines: list[str]
    faults: list[Fault]
    out: Salvaged = field(default_factory=Salvaged)
    headings: dict[str, int] = field(default_factory=dict)
    doubled: set[str] = field(default_factory=set)

    def run(self) -> Salvaged:
        self.doubled = {line.partition("#")[0].strip() for line in self.lines if line.lstrip().startswith("[[")}
        starts: list[int] = []
        for index, line in enumerate(self.lines):
            inside = bool(_left_open(["", *self.lines[starts[-1] + 1 if starts else 0 : index]]))
            if (_STRICT_HEADER if inside else _HEADER).match(line):
                starts.append(index)
        for start, end in zip([0, *starts], [*starts, len(self.lines)], strict=True):
            if start != end:
                self._table(start, end)
        self.out.text = "\n".join(self.lines)
        return self.out

    def _table(self, start: int, end: int) -> None:
        headed = bool(_HEADER.match(self.lines[start]))
        heading = self._heading(start) if headed else ""
        if headed and not heading:
            self.lines[start:end] = [""] * (end - start)
            self.out.beheaded = True
            return
        body = [heading, *self.lines[start + headed : end]]
        table = self._body(body, start + headed)
        self.lines[start + headed : end] = body[1:]
        if not _merged(self.out.data, table):
            accepted = "Write [[ ]] around the heading of every entry of a list, [ ] around that of a single table."
            self._told(start + 1, self.lines[start], accepted)

    def _heading(self, index: int) -> str:
        """Read a table's heading, or guess what was meant; "" where there is nothing to guess from."""
        written = self.lines[index].strip()
        plain = written.partition("#")[0].strip()
        try:
            tomllib.loads(plain)
        except tomllib.TOMLDecodeError:
            name = ".".join(re.findall(r"[\w\-]+", plain))
            accepted = "Write the heading of a table like [pack], that of a list's entry like [[loads]]."
            self._told(index + 1, written, accepted)
            if not name:
                return ""
            plain = f"[[{name}]]" if "[[" in plain or "]]" in plain else f"[{name}]"
            self.lines[index] = plain
        if f"[{plain}]" in self.doubled:
            self._told(index + 1, written, f"Write [{plain}]: it is one entry of a list.")
            self.lines[index] = plain = f"[{plain}]"
        first = self.headings.setdefault(plain, index + 1)
        if first != index + 1 and not plain.startswith("[["):
            list_of = f"or write [{plain}] each time if it is a list"
            accepted = f"{plain} stands in line {first} already: move these keys there, {list_of}."
            self._told(index + 1, written, accepted)
        return plain

    def _body(self, body: list[str], offset: int) -> dict[str, Any]:
        """Read one table with its heading; blank, in `body`, the lines that cannot be read."""
        while True:
            try:
                return tomllib.loads("\n".join(body))
            except tomllib.TOMLDecodeError as error:
                first, last = _blamed(body, error)
                twice = _first_with_key(body, first)
                if twice and body[0].startswith("[[") and not body[first - 1].strip():
                    self._told(
                        offset + first,
                        body[first],
                        f"A new entry begins here: write its heading above it, like {body[0]}.",
                    )
                    body[first - 1] = body[0]
                    continue
                if twice:
                    self._told(offset + first, body[first], f"This key stands in line {offset + twice} already.")
                else:
                    self.faults.append(_fault(self.file, error, body, offset, first))
                    self.out.lost.setdefault(offset, set()).add(_key(body[first]))
                body[first : last + 1] = [""] * (last + 1 - first)

    def _told(self, line: int, written: str, accepted: str) -> None:
        self.faults.append(Fault(self.file, line, "", written.strip(), accepted))


def _key(line: str) -> str:
    """Give the key of a line, or what seems meant for it."""
    key = _KEY.match(line)
    return key[1].strip("\"'") if key else line.strip().partition(" ")[0].rstrip(":=")


def _blamed(body: list[str], error: tomllib.TOMLDecodeError) -> tuple[int, int]:
    """Find the lines to blame for an error: where the reader met it, or where a list or text was left open."""
    line = _met(error, len(body))
    opener = _left_open(body[:line])
    if opener and (line == len(body) or _KEY.match(body[line])):
        return opener, line - 1
    written = [index for index, text in enumerate(body) if index and text.strip()]
    last = max((index for index in written if index <= line), default=written[0] if written else 0)
    return last, last


def _met(error: tomllib.TOMLDecodeError, end: int) -> int:
    """Give the 0-based line on which the reader met an error; the end where it says no line."""
    position = _POSITION.search(str(error))
    return int(position["line"]) - 1 if position and position["line"] else end


def _left_open(lines: list[str]) -> int:
    """Find the line on which a list, inline table or long text was opened and not closed again; 0 for none."""
    opener = depth = 0
    for index, line in enumerate(lines):
        if index == 0:
            continue  # the heading
        if line.count('"""') % 2 or line.count("'''") % 2:
            depth, opener = (0, 0) if depth else (1, index)
            continue
        bare = _QUOTED.sub("", line).partition("#")[0]
        if not depth and not _KEY.match(line):
            continue
        opener = opener if depth else index
        depth = max(0, depth + sum(bare.count(sign) for sign in "[{") - sum(bare.count(sign) for sign in "]}"))
    return opener if depth else 0


def _first_with_key(body: list[str], index: int) -> int:
    """Find the earlier line of the same entry that has the same key as this one; 0 for none."""
    if not _KEY.match(body[index]):
        return 0
    start = max(other for other in range(index) if other == 0 or body[other] == body[0])
    key = _key(body[index])
    return next((n for n in range(start + 1, index) if _KEY.match(body[n]) and _key(body[n]) == key), 0)


def _fault(file: str, error: tomllib.TOMLDecodeError, body: list[str], offset: int, index: int) -> Fault:
    """Turn the TOML reader's complaint into a fault, with a hint at the slip where it is a common one."""
    reason = _POSITION.sub("", str(error))
    written = body[index].strip() if index < len(body) else ""
    hint = next((hint for pattern, hint in _SLIPS if pattern.search(written)), "")
    if '"""' not in written and _left_open(["", written]):
        hint = "Close the bracket, and put a comma between two entries of a list."
    accepted = hint or f'Write a TOML key and value, like power = "55 W" ({reason}).'
    return Fault(file, offset + index, "", written, accepted)


def _merged(into: dict[str, Any], new: dict[str, Any]) -> bool:
    """Put a table's values beside those read before, which stand; False where a list meets a single table."""
    fits = True
    for key, value in new.items():
        old = into.setdefault(key, value)
        if old is value:
            continue
        if isinstance(old, list) and isinstance(value, list):
            old += value
        elif isinstance(old, list) and isinstance(value, dict) and old and isinstance(old[-1], dict):
            fits &= _merged(old[-1], value)  # a table inside the newest entry of a list
        elif isinstance(old, dict) and isinstance(value, dict):
            fits &= _merged(old, value)
        elif isinstance(old, list | dict) or isinstance(value, list | dict):
            fits = False
    return fits
