"""Findings and open places by their causes, in the order to settle them.

The orders and groups expected here are trade practice, told beside each check, no source.
"""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from bom.build import Build
from bom.check.cause_words import cause_data, cause_lines, places_words
from bom.check.causes import Cause, causes, from_causes, harm_of
from bom.check.cure_words import cure_words
from bom.check.decides import in_order
from bom.check.report import as_json, as_text, summary
from bom.check.why import matching
from bom.judge.finding import Finding
from bom.judge.harm import Harm
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.papers.unknowns import unknowns
from bom.read.catalogue import Catalogue
from bom.read.questions import quick_way
from bom.session import Session, run

Converted = Callable[..., Build]
HERE = Path(__file__).parent
DONORS = sorted((HERE.parent / "donors").glob("*.toml"))
STARTERS = ("street-72", "moped-48", "frame-return-105", "positive-earth-60")
THIN = "CB-1404"  # 60 V class, as printed on its jacket; the street bike's bus goes to 88 V


def settle(build: Build) -> list[Cause]:
    return [cause for cause in build.causes if cause.to_settle]


@pytest.fixture(scope="module")
def cables(converted: Converted) -> Build:
    """Pin one cable of 60 V class to every thin wire of the traction side."""
    sound = converted("street-72")
    thin = [name for name, entry in sound.filled.items() if entry.part_id in ("CB-2103", "CB-2203", "CB-2105")]
    assert len(thin) >= 20
    return converted("street-72", {f"pins.{name}": THIN for name in thin})


def test_one_cable_at_twenty_places_is_one_cause(cables: Build) -> None:
    """A builder has bought one reel of the wrong cable: he hears of it once, with all its places."""
    (cause,) = settle(cables)
    assert cause.title.startswith(f"cable {THIN}, pinned, at {len(cause.places)} places")
    assert cause.count >= 30
    assert set(cause.places) == {name for name, entry in cables.filled.items() if entry.origin == "pinned"}
    volts = next(line for line in cause_lines(cause) if "DC class" in line.text)
    assert "60.0 V, needs at least 88.0 V" in volts.text
    assert "alike at each place" in volts.text
    assert len(volts.keys) == len(cause.places)
    assert all(place in places_words(cause) for place in cause.places)


def test_the_summary_counts_causes(cables: Build, converted: Converted) -> None:
    assert f"{cables.count(Verdict.FAIL)} fail, 0 can't be told, " in summary(cables)
    assert "from one cause" in summary(cables)
    assert from_causes(converted("street-72")) == ""


def test_one_figure_that_lacks_is_one_cause(converted: Converted) -> None:
    """Without the pack's resistance no main fuse can be told to open, nor its holder, nor what a cold start leaves."""
    build = converted("street-72", {"pack.pack_resistance": None})
    (cause,) = settle(build)
    assert cause.title.startswith("find out the pack's resistance")
    assert cause.cure == ""  # two readings settle it: no part to add or to pin
    assert [hole.place.name for hole in cause.holes] == ["main fuse"]
    assert {finding.rule for finding in cause.findings} >= {"holder-knows-its-fuse", "states-stand"}
    assert cause.verdict is Verdict.CANT_TELL


def test_nothing_chosen_is_not_called_open(converted: Converted) -> None:
    """Trade: an open fuse is a blown one, and a contactor that stays open does not pull in."""
    build = converted("street-72", {"wishes.charge_current": "45 A"})
    hole = next(hole for hole in build.holes if hole.place.name == "charger")
    (cause,) = causes(replace(build, findings=(), holes=(hole,)))
    assert cause.title == "no charger chosen: nothing in the catalogue passes"
    many = replace(hole, place=replace(hole.place, name="precharge wire 1 terminals"))
    (cause,) = causes(replace(build, findings=(), holes=(many,)))
    assert cause.title == "none chosen for: precharge wire 1 terminals"
    said = [cause.title, *(line.text for line in cause_lines(cause))]
    assert not any(word in text for text in said for word in ("stays open", "left open"))


def test_the_papers_are_one_cause_with_a_way_to_each(converted: Converted, catalogue: Catalogue) -> None:
    """One visit to the office asks them all; title, frame, inspector and the two powers are found out by themselves."""
    keys = ("title_clear", "frame_kept", "inspector_asked", "power", "donor_power")
    build = converted("street-72", {f"registration.{key}": None for key in keys})
    (cause,) = settle(build)
    assert cause.title == "papers: donor's power, frame, inspector, motor's power, title"
    assert len(cause.data) == len(keys)
    ways = {quick_way(datum, catalogue.find_out).way for datum in cause.data}
    assert len(ways) == len(keys)
    assert {entry.datum for entry in unknowns(build, catalogue.find_out)} == set(cause.data)


def test_the_pole_that_opens_is_found_with_a_meter(catalogue: Catalogue) -> None:
    """A low-side management leaves the plus joined: volts stand between the two minuses once it has opened."""
    assert "across both poles" in quick_way("which pole the battery management opens", catalogue.find_out).way


def test_many_findings_of_one_datum_are_one_cause(converted: Converted) -> None:
    """One reading settles them all, at whichever part and by whichever rule they are asked."""
    sound = converted("street-72")
    asked = [finding for finding in sound.findings if finding.part][:40]
    untold = [replace(f, verdict=Verdict.CANT_TELL, datum="the pack's resistance") for f in asked]
    (cause,) = causes(replace(sound, findings=tuple(untold)))
    assert cause.count == 40
    assert cause.data == ("the pack's resistance",)
    assert cause.asks


def test_blanks_of_one_part_are_one_cause_of_that_part(converted: Converted) -> None:
    """A contactor that prints nothing: the part is at fault, not each blank of its data sheet."""
    (cause,) = settle(converted("street-72", {"pins.contactor": "CT-0902"}))
    assert cause.part == "CT-0902"
    assert cause.places == ("contactor",)
    assert cause.decides is not None
    assert cause.decides.rule == "coil-stays-on"  # what fails for certain is told before what is not known


def test_dc_volts_decide_of_a_part_and_each_cure_is_told_once(converted: Converted) -> None:
    """Trade: a 32 V fuse on an 88 V bus is no fuse there; its amps and its body are read after that."""
    (cause,) = settle(converted("street-72", {"pins.main fuse": "MF-0912"}))
    assert cause.title.startswith("main fuse MF-0912, pinned: DC volts and ")
    assert cause.decides is not None
    assert cause.decides.rule == "holds-dc-volts"
    assert cause.cure == cause.decides.cure
    first, *others = cause_lines(cause)
    assert first.cure == ""  # the cause tells it
    assert others[0].first is not None
    assert others[0].first.rule == "fuse-breaks-the-fault"
    told = [line.cure for line in others if line.cure]
    assert len(told) == len(set(told))
    assert {cause.cure, *told} == {finding.cure for finding in cause.findings}


def test_after_what_kills_first_the_most_places_decide(converted: Converted) -> None:
    """Of two failures that neither hold off volts nor break them, the one at more places is told first."""
    sound = converted("street-72")
    fuse = [f for f in sound.findings if f.rule == "fuse-saves-its-wire" and f.subject.startswith("main fuse /")]
    one = next(f for f in sound.findings if f.rule == "fuse-holds-the-load" and f.subject == "main fuse")
    made = [replace(f, verdict=Verdict.FAIL, datum="") for f in (one, *fuse)]
    assert len(fuse) > 1
    assert [f.rule for f in in_order(made)] == [*[f.rule for f in fuse], one.rule]


def test_of_a_pair_the_pinned_part_is_at_fault(converted: Converted) -> None:
    """The 200 A strip fuse was pinned, holder and wires were chosen: the fuse goes, not the holder."""
    (cause,) = settle(converted("street-72", {"pins.main fuse": "MF-0205"}))
    assert cause.part == "MF-0205"
    pairs = {finding.subject for finding in cause.findings if " / " in finding.subject}
    assert "main fuse holder / main fuse" in pairs
    assert "main fuse / controller lead" in pairs


def test_two_pinned_parts_are_two_causes(converted: Converted) -> None:
    """300 A before 10 mm2: what it does to every wire is the fuse's, what the lead lacks alone its own."""
    found = settle(converted("street-72", {"pins.main fuse": "MF-0312", "pins.controller lead": "CB-2108"}))
    assert [cause.part for cause in found] == ["MF-0312", "CB-2108"]


def test_a_common_minus_converter_is_one_cause(converted: Converted) -> None:
    """Frame return and a common minus on a 105 V pack: the short through the frame, and the way home, come of it."""
    build = converted("frame-return-105", {"pins.converter": "CV-0103"})
    cause = next(cause for cause in settle(build) if cause.part == "CV-0103")
    assert {"converter-keeps-the-frame-apart", "shorts-burn-no-wire", "lost-minus-finds-no-thin-way"} <= {
        finding.rule for finding in cause.findings
    }
    assert cause.decides is not None
    assert cause.decides.rule == "converter-keeps-the-frame-apart"
    assert "isolated converter" in cause.cure


def test_a_converter_too_small_is_one_cause(converted: Converted) -> None:
    """Trade: 10 A for 18 A of loads; dips, coils, dark lamps and shorts that it cannot feed are not mended one by one.

    Its 13 mA with the key off are the most of what drains the parked pack.
    """
    (cause,) = settle(converted("street-72", {"pins.converter": "CV-0302"}))
    assert cause.part == "CV-0302"
    assert {
        "converter-feeds-the-loads",
        "coils-hold-through-a-rush",
        "states-stand",
        "shorts-burn-no-wire",
        "parked-pack-lasts",
    } <= {finding.rule for finding in cause.findings}


def test_a_clamp_that_lacks_comes_of_its_converter(converted: Converted) -> None:
    """A common minus on 88 V and no clamp: an isolated converter mends both."""
    build = converted("street-72", {"pins.converter": "CV-0302", "wishes.rail_clamp": False})
    cause = next(cause for cause in settle(build) if cause.part == "CV-0302")
    assert "shorted-converter-is-clamped" in {finding.rule for finding in cause.findings}


def test_a_figure_of_a_part_that_is_not_chosen_waits_for_it(converted: Converted) -> None:
    """No charger stands there: whoever asks for a figure of it is told to choose one first."""
    build = converted("street-72", {"wishes.charge_current": "45 A"})
    some = next(finding for finding in build.findings if not finding.part)
    asks = replace(some, verdict=Verdict.CANT_TELL, datum="the charger's idle amps", at_fault=())
    cause = next(c for c in causes(replace(build, findings=(asks,))) if "charger" in {h.place.name for h in c.holes})
    assert asks in cause.findings


def test_a_lock_at_pack_volts_is_one_cause(converted: Converted) -> None:
    """One ignition lock fails by volts, by what it breaks and by what it closes on: one part to replace."""
    (cause,) = settle(converted("frame-return-105"))
    assert cause.title.startswith("key switch, the donor's original ignition lock")
    assert cause.count == 3


def test_a_key_that_does_not_pass_is_told_the_way_that_does(
    project: Path, tmp_path: Path, converted: Converted
) -> None:
    """No key switch of the catalogue closes onto empty capacitors at 88 V; the key at 12 V is built and priced."""
    text = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    job = tmp_path / "bike.toml"
    job.write_text(text.replace('\nkey = "12 V" ', '\nkey = "pack volts" '), encoding="utf-8")
    session = run(job, project / "catalog", lambda told: None)
    cause = next(cause for cause in session.build.causes if "key switch" in cause.places)
    total = converted("street-72").bill.total
    assert cure_words(cause, session).startswith(f'wishes.key = "12 V" passes, parts {total:,.2f} EUR; or: ')
    (hole,) = cause.holes
    assert "AC" not in hole.sentence  # a switch that prints nothing of direct current is not near


def test_the_worst_harm_is_told_first(converted: Converted) -> None:
    """What burns is read before what strands the bike; what only lacks its margin comes after all that fails."""
    sound = converted("street-72")
    by_harm = {rule.harm: rule for rule in reversed(rules())}
    some = next(finding for finding in sound.findings if not finding.part)

    def finding(harm: Harm, verdict: Verdict) -> Finding:
        place = f"{harm.word} {verdict.word}"
        told = {"because": place, "needed": place, "at_fault": (), "datum": ""}
        return replace(some, rule=by_harm[harm].name, subject=place, verdict=verdict, **told)

    made = [
        finding(harm, verdict)
        for harm in reversed(list(by_harm))
        for verdict in (Verdict.TIGHT, Verdict.CANT_TELL, Verdict.FAIL)
    ]
    got = [
        (cause.verdict > Verdict.TIGHT, cause.harm, cause.verdict)
        for cause in causes(replace(sound, findings=tuple(made)))
    ]
    settled = [(True, harm, verdict) for harm in sorted(by_harm) for verdict in (Verdict.FAIL, Verdict.CANT_TELL)]
    assert got == [*settled, *((False, harm, Verdict.TIGHT) for harm in sorted(by_harm))]


def test_a_lesser_answer_does_not_lend_its_harm(cables: Build) -> None:
    """The harm told is one of an answer as grave as the cause: a wire that is only tight burns nothing."""
    for cause in cables.causes:
        grave = {harm_of(f.rule) for f in cause.findings if (f.verdict > Verdict.TIGHT) == cause.to_settle}
        assert cause.harm in grave or cause.holes


def test_the_order_does_not_hang_on_the_order_of_findings(cables: Build) -> None:
    turned = replace(cables, findings=cables.findings[::-1])
    assert [cause.title.split(":")[0] for cause in causes(turned)] == [c.title.split(":")[0] for c in cables.causes]


@pytest.mark.parametrize("starter", STARTERS)
def test_every_trouble_of_a_starter_has_one_cause(starter: str, converted: Converted) -> None:
    holds_each_once(converted(starter))


@pytest.mark.parametrize("path", DONORS, ids=lambda path: path.stem)
def test_every_trouble_of_a_donor_bike_has_one_cause(path: Path, project: Path) -> None:
    session = run(path, project / "catalog", lambda text: None)
    for build in session.builds:
        holds_each_once(build)


def holds_each_once(build: Build) -> None:
    told = [id(finding) for cause in build.causes for finding in cause.findings]
    assert sorted(told) == sorted(id(finding) for finding in build.findings if finding.verdict > Verdict.PASS)
    left = [hole.place.name for cause in build.causes for hole in cause.holes]
    assert sorted(left) == sorted(hole.place.name for hole in build.holes)
    for cause in build.causes:
        assert cause.verdict == max([f.verdict for f in cause.findings] + [h.verdict for h in cause.holes])
        assert sum(max(1, len(line.keys)) for line in cause_lines(cause)) <= cause.count
        assert {key for line in cause_lines(cause) for key in line.keys} == {f.key for f in cause.findings}


def test_the_text_prints_a_key_that_why_takes(session_of: Callable[[str], Session]) -> None:
    session = session_of("frame-return-105")
    text = as_text(session, everything=False)
    keys = [line.rpartition("[")[2].removesuffix("]") for line in text.splitlines() if line.endswith("]")]
    assert len(keys) >= len(session.build.causes)
    for key in keys:
        assert matching(session.build, key) == [key]


def test_the_data_name_findings_that_are_listed(session_of: Callable[[str], Session]) -> None:
    session = session_of("frame-return-105")
    told = as_json(session, everything=False)
    listed = {f"{entry['rule']} @ {entry['subject']}" for entry in told["findings"]}  # type: ignore[attr-defined]
    named = {key for cause in told["causes"] for key in cause["findings"]}  # type: ignore[attr-defined]
    assert named == listed
    assert told["causes"] == [cause_data(cause) for cause in session.build.causes]
