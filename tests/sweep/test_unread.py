"""The columns that no rule judges are listed for contributors, each with its reason, and no rule judges them."""

from pathlib import Path

from bom.read.families import BY_NAME
from tests.sweep.builds import BUILDS
from tests.sweep.judged import Bike, columns_read
from tests.sweep.table import directions

HEAD = "<!-- by hand, compared by tests/sweep -->"


def listed() -> dict[str, list[str]]:
    """Give columns by reason, as DEVELOPERS.md is to print them."""
    found: dict[str, list[str]] = {}
    for (family, column), entry in directions().items():
        if entry.way == "no rating":
            found.setdefault(entry.why, []).append(f"`{family}.{column}`")
    return found


def test_the_list_for_contributors_is_whole(project: Path) -> None:
    text = (project / "DEVELOPERS.md").read_text(encoding="utf-8")
    lines = [f"- {', '.join(columns)}: {why}." for why, columns in listed().items()]
    assert HEAD + "\n\n" + "\n".join(lines) in text, "\n".join(["put this list under the remark:", *lines])


def test_no_rule_compares_what_is_said_to_be_no_rating(converted: object) -> None:
    read: set[tuple[str, str]] = set()
    for name, job in BUILDS.items():
        bike = Bike(name, converted(*job))  # type: ignore[operator]
        for places in bike.groups().values():
            part = bike.parts[places[0]]
            read |= {(part.family, column) for column in columns_read(bike.bench(places[0]), part)}
    unread = {key for key, entry in directions().items() if entry.way == "no rating"}
    assert not {key for key in read & unread if key[0] in BY_NAME}
