"""Known mistakes of the trade, put into a starter job on purpose: each must be caught by the rule that is there for it.

The mistakes are common practice, no source, unless a rule names one. A pinned part stands whatever the rules say,
so that the check itself must speak. "open" means that no part of the catalogue passes and the place stays open.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

import pytest

from bom.build import Build
from bom.check.finding import Finding
from bom.check.judge_build import judge_build
from bom.check.loom_view import LoomView
from bom.duties.circuits import Facts
from bom.duties.envelope import envelope
from bom.errors import Fault
from bom.loom.layout import lay_out
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile

Converted = Callable[..., Build]
Edited = Callable[..., JobFile]


class Mistake(NamedTuple):
    """A bad build: which starter job, what is edited in it, and what must be said about it.

    place    where the rule must speak (one side of a pair is enough)
    verdict  the word it must say, or a worse one
    """

    name: str
    starter: str
    edits: dict[str, object]
    rule: str
    place: str
    verdict: str = "fail"


# 14 cells x 4.20 V = 58.8 V, 16 x 4.20 = 67.2 V, 24 x 4.20 = 100.8 V, 20 x 4.20 = 84.0 V.
FOURTEEN = {
    "pack.series": 14,
    "pack.bms.low_cut": None,
    "controller.regen": None,
    "controller.over_voltage": None,
    "controller.supply_min": "30 V",
}
TWENTY_FOUR = {"pack.series": 24, "controller.supply_max": "120 V", "controller.over_voltage": "102 V"}

PINNED = [
    Mistake("80 V strip fuse on 84 V", "street-72", {"pins.main fuse": "MF-0205"}, "holds-dc-volts", "main fuse"),
    Mistake(
        "70 V strip fuse of 2.5 kA on a strong pack",
        "street-72",
        {"pins.main fuse": "MF-0107", "pack.pack_resistance": "20 mohm"},
        "fuse-breaks-the-fault",
        "main fuse",
    ),
    Mistake(
        "fuse that opens on a short only",
        "street-72",
        {"pins.main fuse": "MF-0902"},
        "fuse-guards-its-wire",
        "main fuse",
    ),
    Mistake(
        "AC-only cartridge in a pack tap",
        "street-72",
        {"pins.converter fuse": "TF-0901"},
        "holds-dc-volts",
        "converter fuse",
        "can't tell",
    ),
    Mistake(
        "breaking amps of a cheap fuse not known",
        "street-72",
        {"pins.converter fuse": "TF-0907"},
        "fuse-breaks-the-fault",
        "converter fuse",
        "can't tell",
    ),
    Mistake(
        "fuse chosen for the load, not the cable",
        "street-72",
        {"pins.main fuse": "MF-0312", "pins.controller lead": "CB-2108"},
        "fuse-guards-its-wire",
        "controller lead",
    ),
    Mistake(
        "contactor that says what it carries, not what it breaks",
        "street-72",
        {"pins.contactor": "CT-0901"},
        "contact-breaks-dc",
        "contactor",
        "can't tell",
    ),
    Mistake(
        "starter relay as main contactor, cooks",
        "street-72",
        {"pins.contactor": "CT-0902"},
        "coil-stays-on",
        "contactor",
    ),
    Mistake(
        "starter relay as main contactor, volts not known",
        "street-72",
        {"pins.contactor": "CT-0902"},
        "holds-dc-volts",
        "contactor",
        "can't tell",
    ),
    Mistake(
        "48 V contactor sold for 72 V",
        "street-72",
        {"pins.contactor": "CT-0903"},
        "holds-dc-volts",
        "contactor",
    ),
    Mistake(
        "coil for pack volts on a 12 V loom",
        "street-72",
        {"pins.contactor": "CT-0304"},
        "coil-fits-the-rail",
        "contactor",
    ),
    Mistake(
        "coil that may not pull in on 11 V",
        "street-72",
        {"pins.contactor": "CT-0905", "margins.rail_low_v": 10},
        "coil-fits-the-rail",
        "contactor",
    ),
    Mistake(
        "contactor broken backwards, nothing printed",
        "street-72",
        {"pins.contactor": "CT-0905"},
        "contact-breaks-reverse",
        "contactor",
        "can't tell",
    ),
    Mistake(
        "polarised contactor and strong regeneration",
        "street-72",
        {"pins.contactor": "CT-0301", "controller.regen": "41 A"},
        "contact-breaks-reverse",
        "contactor",
    ),
    Mistake(
        "plain diode across the coil",
        "street-72",
        {"pins.contactor clamp": "CL-0301", "pins.contactor": "CT-0312"},
        "clamp-suits-the-coil",
        "contactor clamp",
    ),
    Mistake(
        "cube relay switching pack volts",
        "street-72",
        {"pins.key input relay": "RL-0102"},
        "holds-dc-volts",
        "key input relay",
    ),
    Mistake(
        "cube relay opening the precharge, no point at those volts",
        "street-72",
        {"pins.precharge relay": "RL-0102"},
        "relay-opens-the-precharge",
        "precharge relay",
        "can't tell",
    ),
    Mistake(
        "precharge resistor copied from another build",
        "street-72",
        {"pins.precharge resistor": "PR-0022"},
        "precharge-fills-in-time",
        "precharge resistor",
    ),
    Mistake(
        "film resistor burns on a stuck start",
        "street-72",
        {"pins.precharge resistor": "PR-0902"},
        "precharge-survives",
        "precharge resistor",
    ),
    Mistake(
        "polarised breaker with regeneration",
        "street-72",
        {"wishes.isolator": "breaker", "pins.isolator": "IS-0901"},
        "breaker-suits-both-ways",
        "isolator",
    ),
    Mistake(
        "household AC breaker as main switch",
        "street-72",
        {"wishes.isolator": "breaker", "pins.isolator": "IS-0902"},
        "holds-dc-volts",
        "isolator",
        "can't tell",
    ),
    Mistake(
        "48 V battery key as main switch",
        "street-72",
        {"wishes.isolator": "hand switch", "pins.isolator": "IS-0903"},
        "holds-dc-volts",
        "isolator",
    ),
    Mistake(
        "link plug pulled under load, no contactor",
        "street-72",
        {"wishes.contactor": False, "pins.isolator": "IS-0102"},
        "isolator-opens-under-load",
        "isolator",
        "can't tell",
    ),
    Mistake(
        "90 V converter where regeneration goes to 88 V",
        "street-72",
        {"pins.converter": "CV-0353"},
        "converter-survives-full-charge",
        "converter",
    ),
    Mistake(
        "converter sold for 72 V, no window printed",
        "street-72",
        {"pins.converter": "CV-0901"},
        "converter-survives-full-charge",
        "converter",
        "can't tell",
    ),
    Mistake(
        "105 V converter on 24 cells",
        "street-72",
        {**TWENTY_FOUR, "pins.converter": "CV-0453"},
        "converter-survives-full-charge",
        "converter",
    ),
    Mistake(
        "converter that stops above the sagged pack",
        "street-72",
        {"pins.converter": "CV-0652"},
        "converter-runs-on-a-sagged-pack",
        "converter",
    ),
    Mistake(
        "converter's label amps taken for real",
        "street-72",
        {"pins.converter": "CV-0452"},
        "converter-feeds-the-loads",
        "converter",
    ),
    Mistake(
        "hiccup converter and a cold filament",
        "street-72",
        {"pins.converter": "CV-0451"},
        "converter-rides-a-cold-lamp",
        "converter",
    ),
    Mistake(
        "common-minus converter and frame return above 60 V",
        "frame-return-105",
        {"pins.converter": "CV-0503"},
        "converter-keeps-the-frame-apart",
        "converter",
    ),
    Mistake(
        "common-minus converter and frame return below 60 V",
        "moped-48",
        {"pins.converter": "CV-0102"},
        "converter-keeps-the-frame-apart",
        "converter",
    ),
    Mistake(
        "common-minus converter on a positive earth",
        "moped-48",
        {"pins.converter": "CV-0102", "donor.earth": "positive", "donor.lamp_return": "wire"},
        "converter-keeps-the-frame-apart",
        "converter",
    ),
    Mistake(
        "sold as isolated, no isolation volts",
        "frame-return-105",
        {"pins.converter": "CV-0903"},
        "converter-isolation-holds",
        "converter",
        "can't tell",
    ),
    Mistake(
        "12.0 V converter and a lead buffer battery",
        "street-72",
        {"wishes.buffer_battery": True, "pins.converter": "CV-0902", "pins.buffer battery": "BB-0101"},
        "buffer-charges",
        "converter",
    ),
    Mistake(
        "thermal flasher with LED indicators",
        "frame-return-105",
        {"pins.flasher": "FL-0101"},
        "flasher-suits-the-lamps",
        "flasher",
    ),
    Mistake(
        "100 V meter on 24 cells",
        "street-72",
        {**TWENTY_FOUR, "pins.meter": "MT-0902"},
        "meter-shows-full-charge",
        "meter",
    ),
    Mistake(
        "4 to 30 V meter across the pack",
        "street-72",
        {"pins.meter": "MT-0101"},
        "meter-is-fed-right",
        "meter",
    ),
    Mistake(
        "meter whose minus bonds pack and frame",
        "street-72",
        {"wishes.meter": "volts and amps", "pins.meter": "MT-0403"},
        "meter-is-fed-right",
        "meter",
    ),
    Mistake(
        "shunt of the wrong millivolts",
        "street-72",
        {"wishes.meter": "volts and amps", "pins.meter": "MT-0401", "pins.shunt": "SH-0109"},
        "shunt-suits",
        "shunt",
    ),
    Mistake(
        "87.6 V charger on an 84.0 V pack",
        "street-72",
        {"pins.charger": "CH-0118"},
        "charger-ends-at-full-charge",
        "charger",
    ),
    Mistake(
        "charger that is not isolated from the mains",
        "street-72",
        {"pins.charger": "CH-0902"},
        "charger-is-isolated",
        "charger",
    ),
    Mistake(
        "kill switch made to ground a magneto",
        "street-72",
        {"pins.stop switch": "SS-0901"},
        "stop-opens",
        "stop switch",
    ),
    Mistake(
        "stop mushroom with an AC print only",
        "street-72",
        {"pins.stop switch": "SS-0902"},
        "contact-breaks-dc",
        "stop switch",
        "can't tell",
    ),
    Mistake(
        "reed contact too small for the coils",
        "street-72",
        {"pins.stop switch": "SS-0903"},
        "contact-carries",
        "stop switch",
    ),
    Mistake(
        "bare bullet as pack plug",
        "street-72",
        {"pins.pack plug": "PC-0901"},
        "live-half-is-covered",
        "pack plug",
    ),
    Mistake(
        "plug's headline amps with the wire really in it",
        "street-72",
        {"pins.pack plug": "PC-0101"},
        "connector-carries",
        "pack plug",
    ),
    Mistake(
        "lug hole and stud differ",
        "street-72",
        {"pins.contactor": "CT-0404", "pins.lead to contactor lug at contactor": "LG-0808"},
        "lug-fits-the-stud",
        "contactor",
    ),
]

WHOLE = [
    Mistake(
        "battery management below the controller's amps",
        "street-72",
        {"pack.bms.discharge": "100 A"},
        "battery-management-holds",
        "battery management",
    ),
    Mistake(
        "regeneration over the charge limit",
        "street-72",
        {"pack.bms.charge": "20 A"},
        "regeneration-has-room",
        "regeneration",
    ),
    Mistake(
        "long unfused lead at the pack", "street-72", {"runs.pack_to_fuse": "0.5 m"}, "pack-lead-is-short", "pack lead"
    ),
    Mistake(
        "nothing opens the pack by hand",
        "street-72",
        {"wishes.isolator": "none", "wishes.pack_plug": False},
        "hand-break-exists",
        "pack",
    ),
    Mistake("parallel strings without fuses", "street-72", {"pack.strings": 2}, "strings-are-fused", "pack"),
    Mistake(
        "a trip of the battery management means darkness",
        "street-72",
        {"wishes.buffer_battery": False},
        "lights-survive-a-trip",
        "12 V supply",
        "tight",
    ),
    Mistake(
        "always-on parts empty the pack in storage",
        "street-72",
        {"pins.converter": "CV-0906"},
        "parked-pack-lasts",
        "parked bike",
        "tight",
    ),
    Mistake(
        "over-full bus kills the controller",
        "street-72",
        {"controller.supply_max": "80 V"},
        "controller-takes-the-pack",
        "controller",
    ),
    Mistake(
        "12 V ignition lock switching pack volts",
        "frame-return-105",
        {},
        "holds-dc-volts",
        "key switch",
    ),
    Mistake(
        "ignition lock welded by capacitor inrush",
        "frame-return-105",
        {},
        "contact-makes-inrush",
        "key switch",
    ),
    Mistake(
        "ignition lock opening pack volts",
        "frame-return-105",
        {},
        "contact-breaks-dc",
        "key switch",
    ),
    Mistake(
        "contactor closes without precharge",
        "street-72",
        {"wishes.precharge": False, "pins.contactor": "CT-0402"},
        "contact-makes-inrush",
        "contactor",
    ),
]

WORDS = ("pass", "tight", "can't tell", "fail")
ALWAYS = ("converter", "meter")


@pytest.fixture
def findings(
    catalogue: Catalogue, edited: Edited, converted: Converted, facts_of: Callable[..., Facts]
) -> Callable[[Mistake], list[Finding]]:
    """Put the pinned parts among those the sound build chose, and check the place and all it bears on."""

    def check(mistake: Mistake) -> list[Finding]:
        job = edited(mistake.starter, mistake.edits)
        sound = converted(mistake.starter)
        faults: list[Fault] = []
        margins = catalogue.margins.overridden(job.margins, "job", {}, faults)
        facts = replace(facts_of(job, sound.arrangement), margins=margins)
        loom = lay_out(job, margins, sound.arrangement)
        links = [link for link in loom.links if mistake.place in (link.first, link.second)]
        near = {mistake.place, *ALWAYS}.union(*({link.first, link.second} for link in links))
        parts = {name: entry.part for name, entry in sound.filled.items() if name in near}
        for name, part in job.pins.items():
            table = catalogue.families[loom.place(name).family]
            parts[name] = table.take([table.index(part)])
        found = judge_build(LoomView(loom, facts, parts), envelope(loom, facts))
        return [f for f in found if f.rule == mistake.rule and mistake.place in f.subject.split(" / ")]

    return check


@pytest.mark.parametrize("mistake", [*PINNED, *WHOLE], ids=lambda mistake: mistake.name)
def test_mistake_is_caught(mistake: Mistake, findings: Callable[[Mistake], list[Finding]]) -> None:
    found = findings(mistake)
    assert found, f"{mistake.rule} said nothing about {mistake.place}"
    assert max((finding.verdict.word for finding in found), key=WORDS.index) == mistake.verdict


def test_a_pinned_mistake_stands_and_is_not_sound(converted: Converted) -> None:
    """The whole way: 80 V fuse on 84 V with the rest of the bike chosen around it."""
    build = converted("street-72", {"pins.main fuse": "MF-0205"})
    assert build.filled["main fuse"].part_id == "MF-0205"
    assert build.filled["main fuse"].origin == "pinned"
    assert not build.sound
    assert ("holds-dc-volts", "main fuse") in {(f.rule, f.subject) for f in build.findings if f.verdict.word == "fail"}


def test_a_mistake_that_no_part_survives_leaves_the_place_open(converted: Converted) -> None:
    """Without precharge no contactor closes on 84.0 V / (0.9 x 0.038 ohm) = 2456 A."""
    build = converted("street-72", {"wishes.precharge": False})
    hole = next(hole for hole in build.holes if hole.place.name == "contactor")
    assert hole.verdict.word == "fail"
    assert "2.46 kA" in hole.sentence
    assert not build.sound
