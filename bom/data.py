"""The only place that knows where the shipped catalogue and templates live."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def folder(name: str) -> Path:
    """Return the shipped folder `name` ("catalog" or "templates").

    An installed wheel carries it inside the package; a checkout or an editable
    install has it beside the package.
    """
    inside = PACKAGE / "_data" / name
    return inside if inside.is_dir() else PACKAGE.parent / name
