"""Break every physical constant of bom/physics once, and list those that no test notices.

    python tests/mutate_constants.py                 all modules
    python tests/mutate_constants.py air fuse        some modules
    python tests/mutate_constants.py --change 0.97   another change

Each number is made 3 % larger, one at a time; the tests of tests/physics and tests/published that import its
module run until the first failure. A constant with a right test cannot move by 3 %: published figures have two
to four digits. Exit status 1 when one survives.

Works on a copy of the tree in a temporary folder, and there in memory: the broken module is never written.

Not broken, because a change means nothing or is no physics:
- zero (3 % of it is zero), and True and False;
- limits of ranges: arguments of check_range and check_order, and arguments named low or high;
- counts and positions: arguments of range, and anything inside square brackets after a name;
- a line that ends in a comment "# numerics: ..." (steps, guards against overflow).
"""

import argparse
import ast
import importlib.abc
import importlib.util
import os
import shutil
import signal
import sys
import tempfile
import traceback
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, ModuleType

import hypothesis
import pytest

TREE = Path(__file__).resolve().parent.parent
PACKAGE = "bom.physics"
LONGEST_TEST_RUN_S = 300
_LIMIT_CALLS = {"check_range", "check_order", "range"}
_LIMIT_NAMES = {"low", "high"}


def constants(source: str) -> list[ast.Constant]:
    """Numbers of a module that are physics, in the order in which they stand."""
    lines = source.splitlines()
    return [node for node in _numbers(ast.parse(source)) if "# numerics:" not in lines[node.lineno - 1]]


def _numbers(node: ast.AST) -> Iterator[ast.Constant]:
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int | float) and not isinstance(node.value, bool) and node.value != 0:
            yield node
        return
    for name, field in ast.iter_fields(node):
        if isinstance(node, ast.Subscript) and name == "slice":
            continue
        if isinstance(node, ast.Call) and getattr(node.func, "id", None) in _LIMIT_CALLS:
            continue
        if isinstance(node, ast.keyword) and node.arg in _LIMIT_NAMES:
            continue
        for child in field if isinstance(field, list) else [field]:
            if isinstance(child, ast.AST):
                yield from _numbers(child)


def broken(source: str, number: int, change: float) -> CodeType:
    """The module with one of its constants changed."""
    tree = ast.parse(source)
    lines = source.splitlines()
    kept = [node for node in _numbers(tree) if "# numerics:" not in lines[node.lineno - 1]]
    kept[number].value *= change
    return compile(tree, "<broken>", "exec")


def tests_of(tree: Path) -> dict[str, list[Path]]:
    """Test files by the physics module that they bear on, those that import it themselves first."""
    modules = {path.stem: _imports(path) for path in (tree / "bom/physics").glob("*.py") if path.stem != "__init__"}
    direct, indirect = defaultdict(list), defaultdict(list)
    for path in sorted([*(tree / "tests/physics").glob("test_*.py"), *(tree / "tests/published").glob("test_*.py")]):
        named = _imports(path) & set(modules)
        reached = set(named)
        while more := {name for each in reached for name in modules[each]} & set(modules) - reached:
            reached |= more
        for name in reached:
            (direct if name in named else indirect)[name].append(path)
    # The file that asks every formula the same is slow and notices no figure: last.
    return {name: sorted(direct[name], key=lambda path: "every" in path.stem) + indirect[name] for name in modules}


def _imports(path: Path) -> set[str]:
    """Names of physics modules that a file imports, in either spelling."""
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module == PACKAGE:
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith(PACKAGE + "."):
            names.add((node.module or "").rpartition(".")[2])
    return names


class _Broken(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Hands out the broken module in place of the one on disk."""

    def __init__(self, name: str, code: CodeType) -> None:
        self.name, self.code = name, code

    def find_spec(self, fullname: str, path: object = None, target: object = None):
        return importlib.util.spec_from_loader(fullname, self) if fullname == self.name else None

    def exec_module(self, module: ModuleType) -> None:
        exec(self.code, module.__dict__)


def started(tests: list[Path], replaced: _Broken | None) -> int:
    """Run tests in a child process, to their first failure; its process number."""
    child = os.fork()
    if child:
        return child
    signal.alarm(LONGEST_TEST_RUN_S)
    with open(os.devnull, "w", encoding="utf-8") as nowhere:
        os.dup2(nowhere.fileno(), 1)
    status = 1
    try:
        if replaced:
            sys.meta_path.insert(0, replaced)
        status = int(pytest.main(["-x", "-q", "-p", "no:cacheprovider", "--assert=plain", *map(str, tests)]))
    except BaseException:
        traceback.print_exc()
    os._exit(status)


def noticed(tests: list[Path], replacements: list[_Broken | None]) -> list[bool]:
    """For each replacement, whether a test fails with it."""
    answers, running = [True] * len(replacements), {}
    for number, replaced in enumerate(replacements):
        if len(running) == (os.cpu_count() or 1):
            child, status = os.wait()
            answers[running.pop(child)] = status != 0
        running[started(tests, replaced)] = number
    for child, number in running.items():
        answers[number] = os.waitpid(child, 0)[1] != 0
    return answers


def survivors_of(tree: Path, module: str, tests: list[Path], change: float) -> list[str]:
    """Constants of one module whose change no test notices."""
    source = (tree / f"bom/physics/{module}.py").read_text(encoding="utf-8")
    numbers = constants(source)
    if not numbers:
        return []
    if not tests or noticed(tests, [None])[0]:
        return [f"{module}: {'no test imports it' if not tests else 'its tests fail as they stand'}"]
    name = f"{PACKAGE}.{module}"
    caught = noticed(tests, [_Broken(name, broken(source, each, change)) for each in range(len(numbers))])
    missed = [node for node, seen in zip(numbers, caught, strict=True) if not seen]
    print(f"{module}: {len(numbers) - len(missed)} of {len(numbers)} constants noticed", flush=True)
    return [
        f"bom/physics/{module}.py:{node.lineno}: {node.value} x {change:g} is noticed by no test" for node in missed
    ]


def _load_libraries() -> None:
    """Load what the program imports once, then forget the program itself, so that each child starts sooner."""
    importlib.import_module("bom.convert")
    importlib.import_module("bom.read.catalogue")
    for name in [name for name in sys.modules if name.partition(".")[0] == "bom"]:
        del sys.modules[name]


def main() -> int:
    """Copy the tree, break each constant in turn, print the survivors."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("modules", nargs="*", help="names in bom/physics, without .py; all when none is given")
    parser.add_argument("--change", type=float, default=1.03)
    asked = parser.parse_args()
    # A slow machine must not look like a test that noticed.
    hypothesis.settings.register_profile("mutate", deadline=None, derandomize=True, database=None)
    hypothesis.settings.load_profile("mutate")
    with tempfile.TemporaryDirectory() as folder:
        tree = Path(folder) / "tree"
        shutil.copytree(TREE, tree, ignore=shutil.ignore_patterns(".*", "output", "__pycache__"))
        os.chdir(tree)
        sys.path.insert(0, str(tree))
        sys.dont_write_bytecode = True
        _load_libraries()
        tests = tests_of(tree)
        survivors = [
            line
            for module in asked.modules or sorted(tests)
            for line in survivors_of(tree, module, tests[module], asked.change)
        ]
    print("\n".join(survivors) or "none survives")
    return 1 if survivors else 0


if __name__ == "__main__":
    sys.exit(main())
