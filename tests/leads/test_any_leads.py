"""Whatever leads a job names: each is joined or unused, once; nothing stops the program; unknown is never a pass."""

import functools
from collections.abc import Callable
from typing import Any, get_args

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, rules
from bom.judge.verdict import Verdict
from bom.leads.pairing import pair
from bom.loom.layout import lay_out
from bom.read.job import JobFile
from bom.read.job_devices import Device
from bom.read.lead_kinds import Function, SignalName
from bom.read.margins import Margins

KINDS = get_args(Device.model_fields["kind"].annotation)
ABOUT_LEADS = ("lead", "supply-pin", "button-has", "lost-throttle")
TARGETS = ("", "", "", "nothing", "horn", "front brake switch", "kill switch", "d0: l0", "d1: l1")


def leads(device: int) -> st.SearchStrategy[list[dict[str, Any]]]:
    one = st.fixed_dictionaries(
        {"function": st.sampled_from(get_args(Function)), "to": st.sampled_from(TARGETS)},
        optional={
            "signal": st.sampled_from(get_args(SignalName)),
            "low": st.sampled_from(["0 V", "0.8 V", "4.5 V"]),
            "high": st.sampled_from(["4.2 V", "12 V", "84 V"]),
            "supply": st.just("40 mA"),
            "draws": st.just("30 mA"),
            "momentary": st.booleans(),
        },
    )

    def named(found: list[dict[str, Any]]) -> list[dict[str, Any]]:
        own = f"d{device}: "
        return [
            {**lead, "name": f"l{at}", "to": "" if lead["to"].startswith(own) else lead["to"]}
            for at, lead in enumerate(found)
        ]

    return st.lists(one, max_size=5).map(named)


def device(number: int) -> st.SearchStrategy[dict[str, Any]]:
    kind = st.just("controller") if number == 0 else st.sampled_from(KINDS)
    return st.fixed_dictionaries({"name": st.just(f"d{number}"), "kind": kind, "leads": leads(number)})


@functools.cache
def about_leads() -> tuple[LoomRule, ...]:
    return tuple(
        rule.shape
        for rule in rules()
        if isinstance(rule.shape, LoomRule) and any(word in rule.name for word in ABOUT_LEADS)
    )


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(devices=st.tuples(*(device(number) for number in range(4))))
def test_any_leads(
    devices: tuple[dict[str, Any], ...],
    edited: Callable[..., JobFile],
    facts_of: Callable[..., Any],
    margins: Margins,
) -> None:
    job = edited("street-72", {"devices": list(devices)})
    found = pair(job)
    assert found == pair(job)
    joined = [end.name for join in found.joins for end in join.ends if not end.outside]
    unused = [end.name for end in found.unused]
    assert sorted({*joined, *unused}) == sorted(f"{d['name']}: {lead['name']}" for d in devices for lead in d["leads"])
    assert not set(joined) & set(unused)
    assert len(unused) == len(set(unused))
    for join in found.joins:
        assert join.first.device != join.second.device
    view = LoomView(lay_out(job, margins, "12 V"), facts_of(job), {}, {})
    for shape in about_leads():
        for answer in shape.judge(view):
            assert (answer.verdict is Verdict.CANT_TELL) == bool(answer.datum)
            if "not known" in answer.offered:
                assert answer.verdict is not Verdict.PASS
    unknown = {end.name for join in found.joins for end in join.ends if not end.signal}
    passed = [
        answer.subject
        for shape in about_leads()
        for answer in shape.judge(view)
        if answer.what == "volts on the joint" and answer.verdict is Verdict.PASS
    ]
    assert not {name for subject in passed for name in subject.split(" to ")} & unknown
