"""Which lug, terminal or plug is said to sit on which end of a wire."""

from dataclasses import replace

import pytest

from bom.loom.model import Link, Loom, Place, Wire
from bom.papers.wire_ends import wire_ends
from bom.papers.wire_rows import wire_rows
from bom.session import Session


def ends(papers: Session, start: str, end: str, crimps: dict[str, float], takers: list[str]) -> tuple[str, str]:
    wire = Wire("lead", start, end, 1.0, 1, "", 1.0)
    places = [Place(name, "lug", name, "traction", "frame", count) for name, count in crimps.items()]
    places += [Place(name, "fuse_holder", name, "traction", "frame", 1) for name in takers]
    links = [Link("crimped on", name, "lead") for name in crimps] + [
        Link("takes wire", name, "lead") for name in takers
    ]
    build = replace(papers.build, loom=Loom("12 V", tuple(places), (wire,), tuple(links)), filled={})
    first, second = wire_ends(wire, build)
    return first.replace(": none chosen", ""), second.replace(": none chosen", "")


@pytest.mark.parametrize(("start", "end", "crimps", "takers", "expected"), [
    ("pack plus", "main fuse in", {"lead lug at pack": 1, "lead lug at main fuse": 1}, [],
     ("lead lug at pack", "lead lug at main fuse")),
    ("plug minus out", "pack minus", {"lead lug at pack": 1}, ["pack plug"], ("into pack plug", "lead lug at pack")),
    ("converter minus", "minus post", {"lead lug at minus post": 1, "terminals": 1}, [],
     ("terminals", "lead lug at minus post")),
    ("converter fuse out", "converter in", {"terminals": 1}, ["converter fuse holder"],
     ("into converter fuse holder", "terminals")),
    ("charge port plus", "charge fuse out", {}, ["charge port", "charge fuse holder"],
     ("into charge port", "into charge fuse holder")),
    ("key out", "stop in", {"terminals": 2}, ["bar plug"], ("terminals", "terminals through bar plug")),
    ("a", "b", {}, [], ("bare", "bare")),
])  # fmt: skip
def test_each_end_gets_its_own(
    sound: Session, start: str, end: str, crimps: dict[str, float], takers: list[str], expected: tuple[str, str]
) -> None:
    assert ends(sound, start, end, crimps, takers) == expected


def test_no_end_of_the_starter_job_is_bare(sound: Session) -> None:
    bare = [row.name for row in wire_rows(sound.build) if "bare" in (row.first_end, row.second_end)]
    assert bare == []
