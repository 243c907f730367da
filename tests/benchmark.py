"""Time the whole cold command against a floor: a Python that only imports what the command needs.

Run: python tests/benchmark.py [runs]. Prints CPU seconds, least of the runs, and the ratio to the floor.
"""

import os
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
FLOOR = "import jinja2, numpy, openpyxl, pydantic, tree_sitter, tree_sitter_toml"

# An installed package has its modules compiled; some shells forbid writing that down.
AS_INSTALLED = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def cpu_seconds(arguments: list[str]) -> float:
    """Run a command and give the CPU time it and its children took, user and system."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run([sys.executable, *arguments], cwd=PROJECT, check=False, capture_output=True, env=AS_INSTALLED)
    if done.returncode not in (0, 1):  # 1 tells that something fails on the bike
        raise RuntimeError(done.stderr.decode())
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    """Time floor, check and build in turn, several times over, and print the least of each."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    jobs = sorted((PROJECT / "templates" / "jobs").glob("*.toml"))
    with tempfile.TemporaryDirectory() as out:
        AS_INSTALLED["PYTHONPYCACHEPREFIX"] = f"{out}/compiled"
        commands = {"floor: imports alone": ["-c", FLOOR]}
        for job in jobs:
            commands[f"check {job.stem}"] = ["-m", "bom", "check", str(job)]
            commands[f"build {job.stem}"] = ["-m", "bom", "build", str(job), "--out", out]
        least = dict.fromkeys(commands, float("inf"))
        for _ in range(runs):
            for name, arguments in commands.items():
                least[name] = min(least[name], cpu_seconds(arguments))
    floor = least["floor: imports alone"]
    print("| command | CPU s | ratio to the floor |\n|---|---|---|")
    for name, seconds in least.items():
        print(f"| {name} | {seconds:.2f} | {seconds / floor:.1f} |")


if __name__ == "__main__":
    main()
