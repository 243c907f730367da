"""Switches on the earth side that cannot be meant are told at once, by their place."""

import pytest
from pydantic import ValidationError

from bom.read.job import Item
from bom.read.side_faults import side_faults

STOP = {"name": "stop lamp", "same_lamp_as": "tail lamp"}
TAIL = {"name": "tail lamp"}


def told(loads: list[dict[str, object]], items: list[dict[str, object]]) -> list[tuple[tuple[str | int, ...], str]]:
    found: list[tuple[tuple[str | int, ...], str]] = []
    side_faults(lambda path, _, accepted: found.append((path, accepted)), loads, items)
    return found


def test_lights_of_one_lamp_share_their_minus() -> None:
    """Trade: the shell of a tail and stop lamp is the minus of both filaments."""
    switch = {"name": "brake switch", "kind": "brake switch", "side": "earth", "feeds": ["stop lamp"]}
    ((path, accepted),) = told([TAIL, STOP], [switch])
    assert path == ("donor", "items", 0, "side")
    assert "one lamp" in accepted
    assert told([TAIL, STOP], [{**switch, "feeds": ["stop lamp", "tail lamp"]}]) == []
    assert told([TAIL, STOP], [{**switch, "side": "live"}]) == []


def test_two_of_a_kind_lie_on_one_side() -> None:
    front = {"name": "front", "kind": "brake switch", "side": "earth", "feeds": ["stop lamp"]}
    rear = {"name": "rear", "kind": "brake switch", "feeds": ["stop lamp"]}
    ((path, accepted),) = told([], [front, rear])
    assert path == ("donor", "items", 1, "side")
    assert "earth" in accepted
    assert told([], [front, {**rear, "side": "earth"}]) == []


def test_what_is_no_name_is_left_to_the_schema() -> None:
    assert told([], [{"kind": ["x"], "feeds": [{}, 3]}, {"feeds": "horn"}]) == []


def test_a_kill_switch_through_a_relay_is_insisted_on() -> None:
    """A tight part is taken only where the owner insists, and only one that closes to stop pulls in a relay."""
    kill = {"name": "kill", "kind": "kill switch", "contact": "closes to stop", "relay": True}
    assert Item.model_validate({**kill, "keep": "yes"}).relay
    for slip in ({}, {"keep": "yes", "contact": "opens to stop"}):
        with pytest.raises(ValidationError, match="tight at best"):
            Item.model_validate({**kill, **slip})
