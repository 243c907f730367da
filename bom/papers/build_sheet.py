"""The build sheet: a Markdown page for the bench. The template only formats; its view is made here."""

import re

from bom.data import folder
from bom.papers.build_view import view
from bom.session import Session

SPECIAL = re.compile(r"([\\`*_\[\]<>|~&])")
# What would begin a list, a heading or a quotation at the start of a text.
BEGINS = re.compile(r"^([-+#>=]|\d+(?=[.)]\s))")


def build_sheet(session: Session) -> str:
    """Give the whole page."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    world = Environment(  # no HTML is made here: `finalize` guards every value instead
        loader=FileSystemLoader(folder("templates")),
        undefined=StrictUndefined,
        autoescape=False,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        finalize=plain,
    )
    page = world.get_template("build_sheet.md.j2").render(view(session))
    return re.sub(r"\n{3,}", "\n\n", page).rstrip("\n") + "\n"


def plain(value: object) -> object:
    """Make a value read as plain text anywhere in Markdown, table cells included."""
    if not isinstance(value, str):
        return value
    text = " ".join(value.split())
    text = "".join(letter for letter in text if letter.isprintable())
    text = SPECIAL.sub(r"\\\1", text)
    return BEGINS.sub(lambda match: f"{match[1]}\\" if match[1].isdigit() else f"\\{match[1]}", text)
