"""The documents are kept fresh by the code they describe."""

import re

import pytest

from bom.docs import DOCUMENTS, PARTS, PROJECT, REPAIR, refreshed


@pytest.mark.parametrize("name", DOCUMENTS)
def test_generated_parts_are_fresh(name: str) -> None:
    text = (PROJECT / name).read_text(encoding="utf-8")
    assert refreshed(text) == text, f"{name} is stale. Run: {REPAIR}"


def test_every_generated_part_is_used_once() -> None:
    text = "".join((PROJECT / name).read_text(encoding="utf-8") for name in DOCUMENTS)
    assert sorted(re.findall(r"<!-- begin: (.+?) -->", text)) == sorted(PARTS)


def test_readme_names_the_commands_that_exist() -> None:
    text = (PROJECT / "README.md").read_text(encoding="utf-8")
    for command in (
        "donorbill new",
        "donorbill check",
        "donorbill build",
        "donorbill why",
        "donorbill rules",
        "python3 -m bom.start test",
    ):
        assert command in text
