"""The verdict of every kind of donor thing in every case, against a table written by hand before the shipped one.

Trade: what builders keep, change and drop, common practice without a source. A six-volt switch carries, but whether
it breaks 13.5 V nobody printed: test first. A case that says nothing changes nothing.
"""

from collections.abc import Callable
from pathlib import Path
from typing import get_args

import pytest

from bom.build import Build
from bom.check.donor import _joined, light_kind
from bom.check.donor_words import DonorVerdict
from bom.check.gates import cells_of, open_gates
from bom.errors import Fault
from bom.read.catalogue import Catalogue
from bom.read.donor_matrix import GATES, LAMP_KINDS, read_donor_matrix
from bom.read.job import ItemKind, JobFile

Converted = Callable[..., Build]
WORDS = {"S": "stays", "C": "stays if", "T": "test first", "G": "goes"}

# kind: always, common minus, positive earth, 6 V, AC-lit, LED lamps, key at pack volts, two-wire,
# electronic
EXPECTED = {
    "key switch": "SSSTCSGSC",
    "kill switch": "SSCTCSSCC",
    "start button": "CCCTCCCCC",
    "light switch": "SSSTCSSST",
    "dip switch": "SSCTCCSST",
    "indicator switch": "SSSTSSSST",
    "horn button": "SSSTSSSCC",
    "brake switch": "SCCTCSSSC",
    "flasher": "SSTGTGSSG",
    "horn": "SSSGTSSCC",
    "head lamp": "SSSGCCSCC",
    "tail lamp": "SSCGCCSCC",
    "indicators": "SSCGSCSCC",
    "dash lamps": "SSCGCCSCG",
    "fuse box": "CCCCCCCCC",
    "regulator": "GGGGGGGGG",
    "alternator": "GGGGGGGGG",
    "ignition": "GGGGGGGGG",
    "starter relay": "GGGGGGGGG",
    "starter motor": "GGGGGGGGG",
    "battery": "GGGGGGGGG",
    "ammeter": "GGGGGGGGG",
    "oil switch": "GGGGGGGGG",
    "rev counter": "GGGGGGGGG",
    "fuel gauge": "CCCCCCCCG",
    "speedometer": "CCCCCCCCG",
    "neutral switch": "CCCCCCCCC",
    "side-stand switch": "CCCTCCCCT",
    "clutch switch": "CCCTCCCCT",
    "loom": "CCCCCCCGG",
    "earth strap": "CCCCCCCGC",
}
CELLS = [(kind, gate, WORDS[letter]) for kind, row in EXPECTED.items() for gate, letter in zip(GATES, row, strict=True)]


@pytest.mark.parametrize(("kind", "gate", "verdict"), CELLS)
def test_every_cell(kind: str, gate: str, verdict: str, catalogue: Catalogue) -> None:
    blank = DonorVerdict("it", kind, "if it passes", "", "", "")
    gates = ("always",) if gate == "always" else ("always", gate)
    told = _joined(None, blank, cells_of(catalogue.donor_matrix, kind, gates))
    assert told.verdict == verdict
    assert told.reason
    if verdict == "test first":
        assert told.test
    if verdict == "stays if":
        assert told.change


def test_every_kind_of_thing_is_in_the_table() -> None:
    assert set(EXPECTED) == {*get_args(ItemKind), *LAMP_KINDS}


def test_numbers_that_are_worse_stand_over_the_table(converted: Converted) -> None:
    """Worked: a lock that served 0.5 A is asked for 2.3 A of coils: it goes, whatever the table says."""
    build = converted("street-72", {"donor.items.ignition lock.served": "0.5 A"})
    lock = next(item for item in build.donor if item.name == "ignition lock")
    assert lock.verdict == "goes"
    assert lock.gate == ""


def test_a_six_volt_donor_drops_its_lamps_and_tests_its_switches(converted: Converted) -> None:
    build = converted("street-72", {"donor.supply": "6 V"})
    told = {item.name: item.verdict for item in build.donor}
    assert told["headlamp"] == told["horn"] == told["flasher can"] == "goes"
    assert told["light switch"] == "test first"


def test_a_common_minus_asks_more_of_the_brake_switch(converted: Converted, below_60_v: dict[str, object]) -> None:
    build = converted("street-72", below_60_v)
    brake = next(item for item in build.donor if item.name == "front brake switch")
    assert (brake.verdict, brake.gate) == ("stays if", "common minus")
    assert "free of the frame" in brake.change


def test_two_wires_where_lamps_returned_by_the_frame_take_the_loom(converted: Converted) -> None:
    build = converted("frame-return-105", {"wishes.two_wire": True})
    loom = next(item for item in build.donor if item.kind == "loom")
    assert loom.verdict == "goes"
    assert "two-wire" in open_gates_of(build)


def open_gates_of(build: Build) -> tuple[str, ...]:
    return open_gates(build.walks.bike.view, [])


@pytest.mark.parametrize(
    ("load", "kind"),
    [("headlamp", "head lamp"), ("tail lamp", "tail lamp"), ("stop lamp", "tail lamp"), ("horn", "horn")],
)
def test_lights_are_known_by_what_they_are_for(load: str, kind: str, edited: Callable[..., JobFile]) -> None:
    found = next(entry for entry in edited("street-72").loads if entry.name == load)
    assert light_kind(found) == kind


def test_a_table_with_slips_says_them_all(tmp_path: Path) -> None:
    text = (Path(__file__).parents[2] / "catalog/settings/donor_matrix.csv").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("ammeter")]
    lines += [lines[1], lines[1].replace("key switch,always,stays", "key swich,allways,remains")]
    path = tmp_path / "donor_matrix.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    faults: list[Fault] = []
    read_donor_matrix(path, faults)
    told = " ".join(str(fault) for fault in faults)
    for slip in ("once", "key swich", "allways", "remains", "ammeter"):
        assert slip in told


def test_a_mixed_bike_asks_of_its_lamps_what_an_alternating_one_asks(converted: Converted) -> None:
    """Trade: small bikes feed head and tail lamp from the coils, signals and horn from the battery."""
    build = converted("street-72", {"donor.lighting": "mixed"})
    told = {item.name: item for item in build.donor}
    for name in ("headlamp", "tail lamp", "dash lamps", "ignition lock", "loom"):
        assert told[name].verdict in ("stays if", "goes"), name
        assert told[name].change, name
    assert told["light switch"].verdict == "test first"  # what it carried of alternating current proves nothing
    assert told["horn"].verdict == told["stop lamp"].verdict == told["horn button"].verdict == "stays"
    assert told["flasher can"].gate == ""
    rule = {f.subject: f.offered for f in build.findings if f.rule == "donor-loads-suit-the-rail"}
    assert (rule["headlamp"], rule["horn"]) == ("12 V AC", "12 V DC")


def test_electronic_switchgear_served_milliamps(converted: Converted) -> None:
    """Trade: a switch that told a module of the lamps never carried them, whatever it feeds in the new loom."""
    build = converted("street-72", {"donor.switchgear": "electronic"})
    told = {item.name: item for item in build.donor}
    assert told["light switch"].verdict == told["horn button"].verdict == "test first"
    assert told["flasher can"].verdict == told["loom"].verdict == "goes"
    assert (told["headlamp"].verdict, told["headlamp"].gate) == ("stays if", "electronic")
