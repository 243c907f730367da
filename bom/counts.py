"""What depends on the parts that stand: coil amps, end of charge, amps of the solved states; only ever raised."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from bom.choose.filled import Filled
from bom.duties.budget import budget
from bom.duties.circuits import Counted, Facts
from bom.duties.coil_traces import counted_traces, key_wires_a, raised_traces
from bom.duties.volts import pack_facts
from bom.judge.loom_view import LoomView
from bom.loom.model import Loom
from bom.loom.relay_names import STOP_RELAY
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.read.states import State

MOST_PASSES = 6


def raised_by_states(counted: Counted, view: LoomView) -> Counted:
    """Raise the amps of each place that a solved state asks more of; never lower them."""
    from bom.circuit.exceeds import exceeds

    over = {excess.place: (excess.amps, excess.state) for excess in exceeds(view)}
    return replace(counted, solved_a={**counted.solved_a, **over}) if over else counted


def facts_of(job: JobFile, margins: Margins, counted: Counted, key_at: str, states: tuple[State, ...]) -> Facts:
    """Give the facts of a job with the coils and the charger as counted."""
    pack = pack_facts(job, margins, counted.charge_end_v)
    return Facts(job, margins, pack, budget(job, margins, counted.hold_a, states), counted, key_at)


def counted_beforehand(loom: Loom, job: JobFile, key_at: str, margins: Margins) -> Counted:
    """Count coils before any is chosen, and a key input at 12 V; the charger is taken to end at full charge."""
    # The stop relay is in only while the chain it opens is dead.
    relays = sum(1 for place in loom.places if place.family == "relay" and place.name != STOP_RELAY)
    contactors = sum(1 for place in loom.places if place.family == "contactor")
    beside = key_wires_a(job, key_at, margins)
    hold = relays * margins.relay_coil_a + contactors * margins.contactor_coil_a + beside
    pull = relays * margins.relay_coil_a + contactors * margins.contactor_pull_a + beside
    because = f"{contactors} contactor coil and {relays} relay coils as counted beforehand"
    hold_trace, pull_trace = counted_traces(relays, contactors, job, key_at, margins)
    return Counted(hold, pull, because, 0.0, hold_trace, pull_trace)


def raised_by_parts(facts: Facts, filled: Mapping[str, Filled]) -> Counted:
    """Raise the count to what the chosen parts draw and reach; never lower it."""
    counted, key_at, margins = facts.counted, facts.key_at, facts.margins
    beside, full_charge_v = key_wires_a(facts.job, key_at, margins), facts.pack.full_charge_v.high
    driven = [entry for entry in filled.values() if entry.place.family in ("relay", "contactor")]
    coils = [entry.part for entry in driven if entry.place.name != STOP_RELAY]
    hold, pull = (
        beside + sum(float(np.nan_to_num(part.number(column)[0])) for part in coils)
        for column in ("coil_hold_a", "coil_pull_a")
    )
    charger = filled.get("charger")
    end_v = float(np.nan_to_num(charger.part.number("end_v")[0])) if charger else 0.0
    if hold <= counted.hold_a and pull <= counted.pull_a and end_v <= max(counted.charge_end_v, full_charge_v):
        return counted
    because = counted.because if hold <= counted.hold_a else "coils of the chosen contactor and relays together"
    traces = raised_traces(counted, facts.job, key_at, margins, coils)
    end_v = max(end_v, counted.charge_end_v)
    return Counted(
        max(hold, counted.hold_a), max(pull, counted.pull_a), because, end_v, *traces, solved_a=counted.solved_a
    )
