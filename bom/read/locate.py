"""Where in a TOML file a key stands, so that every fault can name its line."""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tree_sitter import Node

Path = tuple[str | int, ...]

_KEYS = {"bare_key", "quoted_key", "dotted_key"}


@dataclass(frozen=True)
class Lines:
    """The line of every key, table and list item of one TOML text, and the name of each that has one."""

    by_path: dict[Path, int]
    names: dict[Path, str] = field(default_factory=dict)

    @classmethod
    def of(cls, text: str) -> "Lines":
        """Find the lines of a TOML text; what cannot be understood is left out."""
        # Imported here because only a faulty file needs its lines.
        import tree_sitter_toml
        from tree_sitter import Language, Parser

        tree = Parser(Language(tree_sitter_toml.language())).parse(text.encode())
        walk = _Walk()
        walk.document(tree.root_node)
        return cls(walk.found, walk.names)

    def line(self, path: Path) -> int:
        """1-based line of the path, else of its nearest parent that exists, else 0.

        Keys are given as tomllib names them; items of lists and of arrays of tables count from 0.
        """
        for length in range(len(path), 0, -1):
            if path[:length] in self.by_path:
                return self.by_path[path[:length]]
        return 0

    def also(self, old: Path, new: Path) -> None:
        """Know everything under one path under another as well."""
        for path in [path for path in self.by_path if path[: len(old)] == old]:
            self.by_path[(*new, *path[len(old) :])] = self.by_path[path]
        for path in [path for path in self.names if path[: len(old)] == old]:
            self.names[(*new, *path[len(old) :])] = self.names[path]

    def place(self, path: Path) -> str:
        """Print a path for people: "loads[2] (tail lamp).power", counted from 1."""
        place = ""
        for length, step in enumerate(path, 1):
            if isinstance(step, int):
                name = self.names.get(path[:length])
                place += f"[{step + 1}] ({name})" if name else f"[{step + 1}]"
            else:
                place += f".{step}" if place else step
        return place


@dataclass
class _Walk:
    """One pass over the syntax tree."""

    found: dict[Path, int] = field(default_factory=dict)
    tables_in: dict[Path, int] = field(default_factory=dict)
    names: dict[Path, str] = field(default_factory=dict)

    def document(self, root: "Node") -> None:
        for node in root.named_children:
            if node.type == "pair":
                self.pair((), node)
            elif node.type in ("table", "table_array_element"):
                self.table(node)

    def table(self, node: "Node") -> None:
        parts = _key(node)
        if not parts:
            return
        path: Path = ()
        for part in parts[:-1]:
            path = self.latest((*path, part))
            self.found.setdefault(path, _line(node))
        path = (*path, parts[-1])
        if node.type == "table_array_element":
            self.found.setdefault(path, _line(node))
            self.tables_in[path] = self.tables_in.get(path, 0) + 1
            path = self.latest(path)
        # A header outranks an earlier line that only implied the table.
        self.found[path] = _line(node)
        for child in node.named_children:
            if child.type == "pair":
                self.pair(path, child)

    def latest(self, path: Path) -> Path:
        """Enter the newest table of an array of tables; other paths stay as they are."""
        count = self.tables_in.get(path, 0)
        return (*path, count - 1) if count else path

    def pair(self, base: Path, node: "Node") -> None:
        path = base
        for part in _key(node):
            path = (*path, part)
            self.found.setdefault(path, _line(node))
        if path != base:
            self.value(path, node.named_children[-1])

    def value(self, path: Path, node: "Node") -> None:
        if path[-1] == "name" and node.type == "string":
            self.names[path[:-1]] = _string(node)
        if node.type == "inline_table":
            for child in node.named_children:
                if child.type == "pair":
                    self.pair(path, child)
        elif node.type == "array":
            for index, item in enumerate(_items(node)):
                self.found[(*path, index)] = _line(item)
                self.value((*path, index), item)


def _items(array: "Node") -> Iterator["Node"]:
    return (child for child in array.named_children if child.type != "comment")


def _string(node: "Node") -> str:
    """The text of a string with quotes and escapes resolved; "" if it cannot stand on one line."""
    try:
        text = str(tomllib.loads(f"text = {(node.text or b'').decode()}")["text"])
    except tomllib.TOMLDecodeError:
        return ""
    return text if text.isprintable() else ""


def _line(node: "Node") -> int:
    return node.start_point[0] + 1


def _key(node: "Node") -> tuple[str, ...]:
    """The parts of a pair's or a header's key, with quotes and escapes resolved; () if unreadable."""
    key = next((child for child in node.named_children if child.type in _KEYS), None)
    if key is None or key.text is None:
        return ()
    try:
        table: object = tomllib.loads(f"{key.text.decode()} = 0")
    except tomllib.TOMLDecodeError:
        return ()
    parts: list[str] = []
    while isinstance(table, dict):
        part, table = next(iter(table.items()))
        parts.append(part)
    return tuple(parts)
