"""Published: limits of joints, from data/joints.csv, and volts at which contacts soften and melt."""

import csv
from pathlib import Path

import pytest

from bom.physics.joint import blade_fuse_span_ohm, contact_spot_c, greatest_joint_ohm, least_joint_ohm
from bom.physics.joint_limits import FRAME_BOND_OHM

with (Path(__file__).parent / "data" / "joints.csv").open(encoding="utf-8", newline="") as stream:
    ROWS = list(csv.DictReader(stream))
BLOCKS = [row for row in ROWS if row["joint"] == "terminal block"]
PLUGS = [row for row in ROWS if row["joint"].startswith("plug contact")]


# Published: IEC 60947-7-1, 3.2 mV at a tenth of the current; read second-hand on a public page.
@pytest.mark.parametrize("row", BLOCKS, ids=lambda row: row["area_mm2"])
def test_terminal_blocks(row):
    ohm = greatest_joint_ohm(kind="terminal block", area_mm2=float(row["area_mm2"]))
    assert ohm * float(row["value"]) / 10 == pytest.approx(3.2e-3)


# Published, as above: good blocks are up to 60 % below the limit.
def test_good_terminal_blocks():
    limits = {"kind": "terminal block", "area_mm2": 2.5}
    assert least_joint_ohm(**limits) / greatest_joint_ohm(**limits) == pytest.approx(1 - 0.60)


@pytest.mark.parametrize("row", PLUGS, ids=lambda row: row["area_mm2"])
def test_plug_contacts(row):
    amps = float(row["joint"].removeprefix("plug contact at ").removesuffix(" A"))
    ohm = greatest_joint_ohm(kind="plug contact", area_mm2=float(row["area_mm2"]))
    assert ohm * amps * 1000 == pytest.approx(float(row["value"]))
    assert least_joint_ohm(kind="plug contact", area_mm2=float(row["area_mm2"])) == 0.0


# Published: a 10 A blade fuse drops 1 mV at 0.130 A, that is 7.7 mohm cold; read second-hand on a public page.
# Makers' cold figures: 17.85 mohm at 5 A, 1.97 mohm at 30 A; full-load drops 84 to 128 mV; from memory.
@pytest.mark.parametrize(("rated_a", "cold_ohm"), [(5.0, 17.85e-3), (10.0, 7.7e-3), (30.0, 1.97e-3)])
def test_blade_fuses(rated_a, cold_ohm):
    low_ohm, high_ohm = blade_fuse_span_ohm(rated_a=rated_a)
    assert low_ohm <= 1.001 * cold_ohm < high_ohm
    assert 0.128 < high_ohm * rated_a == pytest.approx(0.15)


def test_the_least_blade_fuse_is_the_largest_one():
    assert blade_fuse_span_ohm(rated_a=30.0)[0] == pytest.approx(1.97e-3, rel=0.005)


# Published: FAA AC 43.13-1B, bonding jumpers at most 0.003 ohm; from memory.
def test_frame_bond():
    assert FRAME_BOND_OHM == (0.0, 0.003)


# Published: Holm, Electric Contacts, 4th edition 1967, volts across a contact at which its metal melts, from a body
# at room temperature; from memory. (Copper's printed 0.43 V lies past what the theoretical Lorenz number gives, by
# 4 %: 0.41 V; copper's 0.12 V at softening, 190 C, by 7 %: 0.11 V.)
@pytest.mark.parametrize(
    ("metal", "volts", "temperature_c", "tolerance"),
    [
        ("tin melts", 0.13, 232.0, 0.005),
        ("silver melts", 0.37, 961.0, 0.005),
        ("copper melts", 0.43, 1083.0, 0.02),
        ("copper softens", 0.12, 190.0, 0.01),
    ],
)
def test_contact_volts(*, metal, volts, temperature_c, tolerance):
    assert contact_spot_c(drop_v=volts - tolerance, body_c=20.0) < temperature_c
    assert contact_spot_c(drop_v=volts + tolerance, body_c=20.0) > temperature_c


# Worked: body 60 C = 333.15 K; 0.1 V: 0.01 / (4 x 2.44e-8) = 102 459; sqrt(110 989 + 102 459) = 462.0 K = 188.9 C.
def test_worked_spot(agrees):
    assert agrees(contact_spot_c(drop_v=0.1, body_c=60.0), "188.9")
