"""The view of the control leads for the build sheet."""

from collections.abc import Mapping

from bom.build import Build
from bom.papers.lead_rows import CAP, DASH, LeadRow, lead_rows

View = Mapping[str, object]


def lead_view(build: Build) -> View:
    """Give the leads that join, and those to be capped."""
    rows = lead_rows(build)
    return {
        "leads": [_lead(row) for row in rows if row.second],
        "spares": [_lead(row) for row in rows if not row.second],
    }


def _lead(row: LeadRow) -> View:
    first, second = row.first, row.second
    return {
        "number": row.number,
        "lead": f"{first.device}: {first.lead}",
        "colour": first.colour,
        "joins": f"{second.device}: {second.lead}" if second else CAP,
        "other_colour": second.colour if second else DASH,
        "through": row.through if row.part == DASH else f"{row.through} ({row.part})",
        "part": row.part,
        "way": row.way,
        "do": row.do,
    }
