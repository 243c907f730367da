"""Lets `python -m bom` run the command."""

import sys

from bom.cli import run

if __name__ == "__main__":
    sys.exit(run())
