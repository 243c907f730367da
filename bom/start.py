"""First run on a fresh machine, with nothing but Python: `python -m bom.start` and `python -m bom.start test`.

Makes the virtual environment .venv beside the project, installs the project into it, then runs
the main job on a starter job, or the tests. The same words work in every shell.
"""

import subprocess
import sys
import venv
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
ENVIRONMENT = PROJECT / ".venv"
STARTER = Path("templates") / "jobs" / "street-72.toml"


def main(arguments: list[str]) -> int:
    """Set up and run; give the exit code of what was run."""
    if arguments not in ([], ["test"]):
        print('Write "python -m bom.start" for a first build, or "python -m bom.start test" for the tests.')
        return 2
    python = _environment()
    _run(python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--editable", ".[test]")
    if arguments == ["test"]:
        return _run(python, "-m", "pytest", "-n", "auto", "--dist", "loadfile", check=False)
    code = _run(python, "-m", "bom", "build", str(STARTER), check=False)
    print(f"\nYour own bike next:\n  {python} -m bom new mybike\n  {python} -m bom build mybike.toml")
    return code


def _environment() -> Path:
    """Make the virtual environment once and give its Python, relative to the project."""
    folder = ("Scripts", "python.exe") if sys.platform == "win32" else ("bin", "python")
    python = ENVIRONMENT.joinpath(*folder)
    if not python.exists():
        print("Making .venv and installing; a minute on the first run.", flush=True)
        venv.create(ENVIRONMENT, with_pip=True)
    return python.relative_to(PROJECT)


def _run(python: Path, *arguments: str, check: bool = True) -> int:
    return subprocess.run([PROJECT / python, *arguments], cwd=PROJECT, check=check).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
