"""Rules about control leads, on small edits of the devices of conftest; figures worked by hand beside each case."""

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from bom.build import Build
from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, rules
from bom.judge.verdict import Verdict
from bom.loom.layout import lay_out
from bom.read.margins import Margins

VOLTS, RANGES, SUPPLY = "leads-keep-their-volts", "lead-ranges-meet", "supply-pin-feeds-its-leads"
GROUND, LOST, APART, CAPPED = (
    "button-has-its-ground",
    "lost-throttle-ground-stops",
    "leads-keep-the-sides-apart",
    "spare-leads-are-capped",
)
SIGNAL = "grip: throttle signal"
WIRED = {"lever: brake ground": {"to": "control: 12 V output"}}  # the lever brings 12 V to the brake input
HIGH = {"control: brake": {"signal": "12 V high-active"}}
FROM_DONOR = {"control: brake": {"signal": "12 V high-active", "to": "front brake switch"}}

# rule, changes of the devices, a lead of the joint, what is compared, verdict
CASES: list[tuple[str, Mapping[str, Any], str, str, str]] = [
    (VOLTS, {}, "lever: brake", "volts on the joint", "pass"),
    # Trade: 12 V on a ground-active input, which is held at 5 V inside, kills the controller's 5 V side
    (VOLTS, WIRED, "lever: brake", "volts on the joint", "fail"),
    (VOLTS, WIRED | HIGH, "lever: brake", "volts on the joint", "pass"),
    (VOLTS, {"control: brake": {"to": "front brake switch"}}, "control: brake", "volts on the joint", "fail"),
    (VOLTS, FROM_DONOR, "control: brake", "volts on the joint", "pass"),
    (VOLTS, {"control: throttle supply": {"signal": "12 V supply"}}, "grip: throttle supply", "volts", "fail"),
    (VOLTS, {"control: throttle supply": {"signal": "pack-volts supply"}}, "grip: throttle supply", "volts", "fail"),
    (VOLTS, {"control: 12 V output": {"signal": "pack-volts supply"}}, "display: meter supply", "volts", "fail"),
    (VOLTS, {"control: 12 V output": {"signal": "5 V supply"}}, "display: meter supply", "volts", "pass"),
    (VOLTS, {SIGNAL: {"signal": None}}, SIGNAL, "volts on the joint", "can't tell"),
    # a supply joined to a ground is a short; two supplies feed each other
    (VOLTS, {"grip: throttle ground": {"to": "control: 12 V output"}}, "grip: throttle ground", "volts", "fail"),
    (VOLTS, {"display: meter supply": {"signal": "12 V supply"}}, "display: meter supply", "volts", "fail"),
    (VOLTS, {"control": {"plug": "16-way"}}, "control", "plug with pack volts", "not asked"),
    (
        VOLTS,
        {"control": {"plug": "16-way"}, "control: reverse": {"signal": "pack-volts enable"}},
        "control",
        "plug with pack volts",
        "tight",
    ),
    # 0.8 to 4.2 V against 1.0 to 4.0 V
    (RANGES, {}, SIGNAL, "volts at rest", "pass"),
    (RANGES, {}, SIGNAL, "volts wide open", "pass"),
    (RANGES, {SIGNAL: {"low": "1.0 V"}}, SIGNAL, "volts at rest", "pass"),
    (RANGES, {SIGNAL: {"low": "1.1 V"}}, SIGNAL, "volts at rest", "fail"),
    (RANGES, {SIGNAL: {"high": "4.0 V"}}, SIGNAL, "volts wide open", "pass"),
    (RANGES, {SIGNAL: {"high": "3.9 V"}}, SIGNAL, "volts wide open", "tight"),
    (RANGES, {SIGNAL: {"high": "0.9 V"}}, SIGNAL, "range", "fail"),
    (RANGES, {SIGNAL: {"low": "4.1 V"}}, SIGNAL, "range", "fail"),
    (RANGES, {SIGNAL: {"low": None}}, SIGNAL, "range", "can't tell"),
    (RANGES, {"control: throttle signal": {"high": None}}, SIGNAL, "range", "can't tell"),
    # 4.8 to 5.2 V inside 4.5 to 5.5 V
    (RANGES, {}, "grip: throttle supply", "supply inside its window", "pass"),
    (RANGES, {"grip: throttle supply": {"high": "5.2 V"}}, "grip: throttle supply", "supply", "pass"),
    (RANGES, {"grip: throttle supply": {"high": "5.1 V"}}, "grip: throttle supply", "supply", "fail"),
    (RANGES, {"grip: throttle supply": {"low": "4.9 V"}}, "grip: throttle supply", "supply", "fail"),
    (RANGES, {"grip: throttle supply": {"low": None}}, "grip: throttle supply", "supply", "can't tell"),
    # pulses are no level, and a supply is no signal
    (RANGES, {SIGNAL: {"signal": "5 V pulse"}}, SIGNAL, "kind of signal", "fail"),
    (
        RANGES,
        {SIGNAL: {"signal": "5 V pulse"}, "control: throttle signal": {"signal": "5 V pulse"}},
        SIGNAL,
        "kind of signal",
        "pass",
    ),
    (RANGES, {"lever: brake": {"signal": "5 V supply"}}, "lever: brake", "kind of signal", "fail"),
    # an input wants something that moves it
    (RANGES, HIGH, "lever: brake", "what drives it", "fail"),
    (RANGES, WIRED | HIGH, "lever: brake", "what drives it", "pass"),
    (RANGES, {"control: brake": {"to": "kill switch"}}, "control: brake", "what drives it", "not asked"),
    (
        RANGES,
        {"lever": None, "control: brake": {"to": "kill switch", "signal": "12 V high-active"}},
        "control: brake",
        "what drives it",
        "can't tell",
    ),
    (RANGES, {"lever: brake": {"signal": "ground"}}, "lever: brake", "what drives it", "fail"),
    (RANGES, {"lever: brake": {"signal": "ground-active"}}, "lever: brake", "what drives it", "fail"),
    # 10 mA of 40 mA; 60 mA of 100 mA
    (SUPPLY, {}, "control: throttle supply", "amps", "pass"),
    (SUPPLY, {"grip: throttle supply": {"draws": "40 mA"}}, "control: throttle supply", "amps", "pass"),
    (SUPPLY, {"grip: throttle supply": {"draws": "41 mA"}}, "control: throttle supply", "amps", "fail"),
    (SUPPLY, {"grip: throttle supply": {"draws": None}}, "control: throttle supply", "amps", "can't tell"),
    (SUPPLY, {"control: throttle supply": {"supply": None}}, "control: throttle supply", "amps", "can't tell"),
    # 60 mA and 10 mA on 100 mA; on 69 mA
    (SUPPLY, {"grip: throttle supply": {"to": "control: 12 V output"}}, "control: 12 V output", "amps", "pass"),
    (
        SUPPLY,
        {"grip: throttle supply": {"to": "control: 12 V output"}, "control: 12 V output": {"supply": "69 mA"}},
        "control: 12 V output",
        "amps",
        "fail",
    ),
    (GROUND, {}, "lever: brake", "ground of the contact", "pass"),
    (GROUND, {"lever: brake ground": None}, "lever: brake", "ground of the contact", "fail"),
    (GROUND, {"lever: brake ground": {"to": "control: throttle ground"}}, "lever: brake", "ground", "tight"),
    (GROUND, {"lever: brake ground": {"to": "control: signal ground"}}, "lever: brake", "ground", "pass"),
    (GROUND, {}, "button: reverse", "ground of the contact", "pass"),
    (GROUND, {"button: button ground": {"to": "control: brake ground"}}, "button: reverse", "ground", "tight"),
    (GROUND, {"button: button ground": {"to": "horn"}}, "button: reverse", "ground of the contact", "fail"),
    # Trade: with its ground open a hall throttle's signal rises to 4 V and more
    (LOST, {}, SIGNAL, "what a lost ground does", "pass"),
    (LOST, {"control": {"stops_on_high_throttle": False}}, SIGNAL, "what a lost ground does", "fail"),
    (LOST, {"control": {"stops_on_high_throttle": None}}, SIGNAL, "what a lost ground does", "can't tell"),
    (LOST, {}, SIGNAL, "ground of the throttle", "pass"),
    (LOST, {"grip: throttle ground": None}, SIGNAL, "ground of the throttle", "fail"),
    (LOST, {"grip: throttle ground": {"to": "nothing"}}, SIGNAL, "ground of the throttle", "fail"),
    # the controller's leads belong to pack minus; the donor's brake switch brings the 12 V side
    (APART, {}, "control", "pack and 12 V side", "not asked"),
    (APART, FROM_DONOR, "control", "pack and 12 V side", "can't tell"),
    (APART, FROM_DONOR | {"control": {"keeps_apart": True}}, "control", "pack and 12 V side", "pass"),
    (APART, FROM_DONOR | {"control": {"keeps_apart": False}}, "control", "pack and 12 V side", "fail"),
    (APART, {"display: meter supply": {"to": "horn"}}, "display", "pack and 12 V side", "can't tell"),
    (APART, {"control: brake": {"to": "kill switch"}}, "control", "pack and 12 V side", "not asked"),
    # none stands in a loom that nothing was chosen for
    (CAPPED, {"control: reverse": {"to": "nothing"}}, "control: reverse", "end of the unused lead", "fail"),
    (CAPPED, {}, "control: reverse", "end of the unused lead", "not asked"),
]
WORDS = ("not asked", "pass", "tight", "can't tell", "fail")


@pytest.mark.parametrize(("rule", "changes", "of", "what", "verdict"), CASES)
def test_case(
    rule: str,
    changes: Mapping[str, Any],
    of: str,
    what: str,
    verdict: str,
    edited: Callable[..., Any],
    devices: Callable[..., Any],
    facts_of: Callable[..., Any],
    margins: Margins,
) -> None:
    job = edited("street-72", {"devices": devices(changes)})
    view = LoomView(lay_out(job, margins, "12 V"), facts_of(job), {}, {})
    entry = next(entry for entry in rules() if entry.name == rule)
    assert isinstance(entry.shape, LoomRule)
    answers = entry.shape.judge(view)
    assert {answer.verdict for answer in answers} <= {Verdict.PASS, *entry.says}
    found = [
        answer.verdict.word for answer in answers if of in answer.subject.split(" to ") and answer.what.startswith(what)
    ]
    assert max(found, key=WORDS.index, default="not asked") == verdict


@pytest.fixture
def moped(converted: Callable[..., Build]) -> Build:
    return converted("moped-48")


def test_the_starter_fails_nowhere_about_leads(moped: Build) -> None:
    subjects = {join.name for join in moped.loom.leads.joins} | set(moped.loom.leads.fitting_of)
    asked = [finding for finding in moped.findings if finding.subject in subjects]
    assert len(asked) > 40
    assert {finding.verdict for finding in asked} == {Verdict.PASS}


def test_plugs_contacts_seals_and_caps_are_on_the_bill(moped: Build) -> None:
    """Counted by hand: 11 joints, one of them the key's own wire, so 10 ways and as many contacts and seals."""
    leads = moped.loom.leads
    bought = {entry.name: moped.filled[entry.name].part for entry in leads.fittings}
    ways = sum(join.plug != "" for join in leads.joins)
    assert ways == 10
    plug = bought["twist grip lead plug"]
    contact, seal = plug.word("contact_part")[0], plug.word("seal_part")[0]
    lines = {line.part_id: line for line in moped.bill.lines}
    for part in (contact, seal):
        assert lines[part].quantity >= ways
        assert {"twist grip lead plug", "boost button lead plug"} <= set(lines[part].places)
    caps = lines[bought["motor controller lead caps"].ids[0]]
    assert (caps.quantity, caps.cost > 0) == (3, True)


def test_caps_make_unused_leads_safe(moped: Build) -> None:
    capped = {finding.subject: finding for finding in moped.findings if finding.rule == CAPPED}
    assert set(capped) == {
        "motor controller: brake high",
        "motor controller: self-learning",
        "motor controller: anti-theft",
    }
    assert "throttle signal" in capped["motor controller: self-learning"].because
