"""The command line: new, build, check, donor, why, rules."""

import argparse
import gc
import io
import json
import os
import shutil
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from bom import __version__
from bom.arrangement import ALL
from bom.data import folder
from bom.errors import InputError, RangeError

if TYPE_CHECKING:
    from bom.session import Session

GOOD, UNSOUND, BROKEN = 0, 1, 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and give its exit code: 0 good, 1 fails or can't be told, 2 bad input or a crash."""
    _speak_utf8()
    options = parser().parse_args(arguments)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # nothing here is large enough to be worth starting threads
    try:
        code: int = options.run(options)
    except InputError as error:
        count = len(error.faults)
        print(f"{error}\n{count} fault{'s' if count != 1 else ''}. Nothing was written.", file=sys.stderr)
        return BROKEN
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # whoever read has had enough
        return BROKEN
    except OSError as error:
        print(f"{error.filename or 'file'}: {error.strerror}. Nothing more was written.", file=sys.stderr)
        return BROKEN
    except RangeError as error:
        print(f"A figure lies outside what a formula takes: {error}. Nothing more was written.", file=sys.stderr)
        if options.trace:
            raise
        return BROKEN
    except Exception as error:
        print(f"donorbill stopped on a fault of its own: {type(error).__name__}: {error}", file=sys.stderr)
        if options.trace:
            raise
        print("Run again with --trace for the details, and report them with the job file.", file=sys.stderr)
        return BROKEN
    return code


def run() -> int:
    """Run as a program of its own: a short one, in which looking for rubbish takes a fifth and finds little."""
    gc.disable()
    code = main()
    gc.freeze()  # nor at the end
    return code


def _speak_utf8() -> None:
    """Write UTF-8 whatever the machine's habit: a pipe on Windows would refuse an ohm sign."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper) and not stream.isatty():
            stream.reconfigure(encoding="utf-8")
        elif isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def parser() -> argparse.ArgumentParser:
    """Describe the command, its subcommands and their options."""
    parser = argparse.ArgumentParser(
        prog="donorbill", description="Parts list and compatibility check for a motorcycle turned battery-electric."
    )
    parser.add_argument("--version", action="version", version=f"donorbill {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    new = commands.add_parser("new", help="write a starter job to fill in")
    new.add_argument("name", metavar="NAME", help="name of the new job; NAME.toml is written")
    new.add_argument("--like", choices=_starters(), default="street-72", help="which starter job (default street-72)")
    new.add_argument("--catalog", metavar="DIR", type=Path, help="copy the demonstration catalogue to DIR too")
    new.set_defaults(run=_new)
    build = commands.add_parser("build", help="choose, check and price the parts, and write the papers")
    _common(build)
    build.add_argument("--out", metavar="DIR", type=Path, help="where the papers go (default output/<job>/)")
    build.add_argument("--strict", action="store_true", help="exit 1 when something fails or can't be told")
    build.set_defaults(run=_build)
    check = commands.add_parser("check", help="print what fails, can't be told or is tight, by its causes")
    _common(check)
    check.add_argument("--json", action="store_true", help="print them as JSON")
    check.add_argument("--all", action="store_true", help="print what passes too")
    check.set_defaults(run=_check)
    donor = commands.add_parser("donor", help="print what of the donor stays, and what it takes")
    _common(donor)
    donor.set_defaults(run=_donor)
    why = commands.add_parser("why", help="tell where every figure of one finding comes from")
    why.add_argument("job", metavar="JOB", type=Path, help="job file (TOML)")
    why.add_argument("finding", metavar="FINDING", help='"rule @ subject" of a finding, or any part that names one')
    why.add_argument("--catalog", metavar="DIR", type=Path, help="catalogue folder of your own")
    why.add_argument("--key", metavar="WHERE", help=f"key arrangement to ask in: {', '.join(ALL)}")
    why.add_argument("--json", action="store_true", help="print it as JSON")
    why.set_defaults(run=_why)
    rules = commands.add_parser("rules", help="list the rules by what goes wrong, or explain one with an example")
    rules.add_argument(
        "name", metavar="NAME", nargs="*", help="the rule to explain, a slip is read as meant; or a harm to list"
    )
    rules.set_defaults(run=_rules)
    for command in (new, build, check, donor, why, rules):
        command.add_argument("--trace", action="store_true", help=argparse.SUPPRESS)
    return parser


def _common(command: argparse.ArgumentParser) -> None:
    command.add_argument("job", metavar="JOB", type=Path, help="job file (TOML)")
    command.add_argument("--catalog", metavar="DIR", type=Path, help="catalogue folder of your own")


def _starters() -> list[str]:
    return sorted(path.stem for path in (folder("templates") / "jobs").glob("*.toml"))


def _new(options: argparse.Namespace) -> int:
    target = Path(f"{options.name.removesuffix('.toml')}.toml")
    if not target.parent.is_dir():
        print(f"There is no folder {target.parent}. Make it first, or choose another name.", file=sys.stderr)
        return BROKEN
    text = (folder("templates") / "jobs" / f"{options.like}.toml").read_text(encoding="utf-8")
    try:
        with target.open("x", encoding="utf-8", newline="\n") as handle:
            handle.write(text)
    except FileExistsError:
        print(f"{target} is there already and was left alone. Choose another name.", file=sys.stderr)
        return BROKEN
    more = ""
    if options.catalog is not None:
        more = f" --catalog {_quoted(options.catalog)}"
        if options.catalog.exists():
            print(f"{options.catalog} is there already and was left alone.")
        else:
            shutil.copytree(folder("catalog"), options.catalog)
            print(f"Copied the demonstration catalogue to {options.catalog}. Put your own parts and prices there.")
    print(f"Wrote {target}. Fill it in, then: donorbill build {_quoted(target)}{more}")
    return GOOD


def _quoted(path: Path) -> str:
    """Quote a path that a shell would take for several words."""
    return f'"{path}"' if " " in str(path) else str(path)


def _session(options: argparse.Namespace) -> "Session":
    from bom.session import run

    return run(options.job, options.catalog or folder("catalog"), _progress())


def _progress() -> Callable[[str], None]:
    """Say on a terminal what takes long; stay silent in a pipe."""
    if not sys.stderr.isatty():
        return lambda text: None
    return lambda text: print(text, file=sys.stderr)


def _build(options: argparse.Namespace) -> int:
    from bom.check.report import summary
    from bom.papers.papers import write_papers

    session = _session(options)
    out = options.out or Path("output") / session.loaded.name
    for path in write_papers(session, out):
        print(path)
    for note in session.notes:
        print(note)
    print(summary(session.build))
    return UNSOUND if options.strict and not session.build.sound else GOOD


def _check(options: argparse.Namespace) -> int:
    from bom.check.donor_text import donor_brief
    from bom.check.report import as_json, as_text, summary
    from bom.check.why_text import wrapped

    session = _session(options)
    if options.json:
        print(json.dumps(as_json(session, everything=options.all), indent=2, ensure_ascii=False))
    else:
        outcome = "\n".join(wrapped(summary(session.build), "    "))
        told = (as_text(session, everything=options.all), donor_brief(session.build, _quoted(options.job)))
        notes = ("\n".join(wrapped(note, "    ")) for note in session.notes)
        print("\n".join(filter(None, (outcome, *told, *notes, outcome))))
    return GOOD if session.build.sound else UNSOUND


def _donor(options: argparse.Namespace) -> int:
    from bom.check.donor_text import donor_text
    from bom.check.gates_text import gates_text

    session = _session(options)
    print(gates_text(session.build))
    print(donor_text(session))
    if not session.build.donor:
        print("The job names nothing of the donor: write it under [[donor.items]].")
    return GOOD


def _why(options: argparse.Namespace) -> int:
    from bom.check.why import accounts, matching, nearest_keys, told_otherwise
    from bom.check.why_text import as_text, candidates
    from bom.check.why_tree import as_data

    session = _session(options)
    wanted = options.key or session.build.arrangement
    build = next((build for build in session.builds if build.arrangement == wanted), None)
    if build is None:
        names = ", ".join(f'"{build.arrangement}"' for build in session.builds)
        print(f'This bike has no build with the key at "{wanted}". Name one of {names}.', file=sys.stderr)
        return BROKEN
    keys = matching(build, options.finding)
    if len(keys) != 1:
        otherwise = "" if keys else told_otherwise(build, options.finding)
        near = keys or nearest_keys(build, options.finding)
        print(otherwise or candidates(options.finding, near, known=bool(keys)), file=sys.stderr)
        return BROKEN
    told = [as_data(account, session, build.arrangement) for account in accounts(build, keys[0])]
    if options.json:
        print(json.dumps(told, indent=2, ensure_ascii=False))
    else:
        print(as_text(told))
    return GOOD


def _rules(options: argparse.Namespace) -> int:
    from bom.check.explain import explained, harm_meant, listed, meant, not_meant

    name = " ".join(options.name)
    harm = harm_meant(name)
    if not name or harm:
        print(listed(harm))
        return GOOD
    rule = meant(name)
    if rule is None:
        print(not_meant(name), file=sys.stderr)
        return BROKEN
    print(explained(rule))
    return GOOD
