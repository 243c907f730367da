"""How leads are held and bent, on the build sheet."""

import re

from bom.papers.build_sheet import build_sheet
from bom.papers.routing import routing
from bom.session import Session


def test_the_bend_of_each_heavy_cable_is_five_times_its_outside(sound: Session) -> None:
    """Worked: 5 x 12.2 mm outside is 61 mm. HD 516 asks 4 x where laid, 6 x where moved (from memory)."""
    view = routing(sound.build)
    assert view["support"] == "150 mm"
    rows = view["bends"]
    assert isinstance(rows, list)
    assert rows
    for row in rows:
        outside = float(row["outside"].removesuffix(" mm"))
        radius = float(row["radius"].removesuffix(" mm"))
        assert 5 * outside <= radius < 5 * outside + 1
        assert 4 * outside <= radius <= 6 * outside


def test_every_heavy_lead_is_in_one_row(sound: Session) -> None:
    rows = routing(sound.build)["bends"]
    assert isinstance(rows, list)
    named = [lead for row in rows for lead in row["leads"].split(", ")]
    heavy = [w.name for w in sound.build.loom.wires if sound.build.loom.place(w.name).circuit in ("traction", "phase")]
    assert sorted(named) == sorted(heavy)


def test_the_sheet_asks_for_supports_bends_and_paint(sound: Session) -> None:
    text = build_sheet(sound)
    assert "within **150 mm** of each crimp" in text
    assert re.search(r"radius \*\*\d+ mm\*\* or more", text)
    assert "paint across nut and stud" in text
