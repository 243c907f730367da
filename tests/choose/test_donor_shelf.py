"""What old bikes need stands on the shelf, and passes the rules that judge it.

Trade: the lamps and flashers of donors, common practice without a source; bases by their IEC 60061 names, from memory.
"""

import pytest

from bom.duties.model import GLOSSARY, Duty
from bom.judge.ask import passing
from bom.judge.verdict import Verdict
from bom.read.catalogue import Catalogue
from bom.span import Span

TWELVE, SIX = (11.0, 14.4), (5.5, 7.4)


def duty(earth: str = "negative", **needs: float) -> Duty:
    spans = {name: Span.fixed(value, GLOSSARY[name][0], "the case", "") for name, value in needs.items()}
    return Duty(spans, {"earth": earth})


@pytest.mark.parametrize(("rail", "watts", "earth", "wanted"), [
    # Worked: two lamps a side and a 3.4 W telltale
    (TWELVE, 23.4, "negative", "FL-0103"),
    (TWELVE, 45.4, "negative", "FL-0104"),
    (TWELVE, 20.0, "positive", "FL-0102"),
    (TWELVE, 3.0, "positive", "FL-0202"),
    (TWELVE, 3.0, "negative", "FL-0206"),
    (TWELVE, 20.0, "negative", "FL-0207"),
    (SIX, 20.0, "negative", "FL-0303"),
    (SIX, 36.0, "positive", "FL-0302"),
])  # fmt: skip
def test_a_flasher_for_each_kind_of_donor(
    rail: tuple[float, float], watts: float, earth: str, wanted: str, catalogue: Catalogue
) -> None:
    table = catalogue.families["flasher"]
    asked = duty(earth, flasher_w=watts, rail_low_v=rail[0], rail_high_v=rail[1])
    found = {table.ids[index] for index in passing(table, asked, catalogue.margins, Verdict.PASS)}
    assert wanted in found
    assert wanted in catalogue.offers
    assert not found & {"FL-0901", "FL-0902"}  # nothing is known of them


@pytest.mark.parametrize(("purpose", "base", "watts", "volts"), [
    ("head", "BA20d", 25, 12), ("head", "BA20d", 35, 12), ("head", "BA20d", 45, 12), ("head", "P45t", 45, 12),
    ("head", "P45t", 60, 12), ("head", "P43t", 60, 12), ("head", "P15d", 35, 12),
    ("head", "BA20d", 25, 6), ("head", "P45t", 45, 6), ("head", "P26s", 15, 6),
    ("tail and stop", "BAY15d", 21, 12), ("tail and stop", "BA15s", 5, 12), ("tail and stop", "BA15s", 21, 12),
    ("tail and stop", "BAY15d", 18, 6), ("tail and stop", "BA15s", 5, 6),
    ("indicator", "BA15s", 21, 12), ("indicator", "BA15s", 10, 12), ("indicator", "BAU15s", 10, 12),
    ("indicator", "BA15s", 10, 6), ("indicator", "BA15s", 21, 6),
    ("telltale", "BA9s", 3, 12), ("instrument", "W2x4.6d", 1.2, 12), ("position", "BA9s", 4, 6),
])  # fmt: skip
def test_a_bulb_for_each_holder(purpose: str, base: str, watts: float, volts: float, catalogue: Catalogue) -> None:
    table = catalogue.families["lamp"]
    rows = zip(
        table.ids,
        table.word("purpose"),
        table.word("base"),
        table.word("technology"),
        table.number("power_w"),
        table.number("supply_min_v"),
        table.number("supply_max_v"),
        strict=True,
    )
    found = [
        part
        for part, is_for, fits, kind, power, low, high in rows
        if (is_for, fits, kind, power) == (purpose, base, "filament", watts) and low <= volts <= high
    ]
    assert [part for part in found if part in catalogue.offers]


def test_only_the_diode_and_the_clamp_pass_where_each_belongs(catalogue: Catalogue) -> None:
    """Worked: a 3 W telltale takes 0.26 A; the 0.15 A diode is too small, the one without volts is not known."""
    table = catalogue.families["clamp"]
    of = {table.ids[i] for i in passing(table, duty(carry_a=0.26, blocks_v=14.4), catalogue.margins, Verdict.PASS)}
    coil = {table.ids[i] for i in passing(table, duty(clamps_v=14.4), catalogue.margins, Verdict.PASS)}
    assert {"CL-0301", "CL-0305", "CL-0306"} <= of
    assert not of & {"CL-0307", "CL-0902"}
    assert not of & coil
    assert {"CL-0101", "CL-0102"} <= coil


def test_every_part_can_be_bought(catalogue: Catalogue) -> None:
    assert [part for table in catalogue.families.values() for part in table.ids if part not in catalogue.offers] == []
