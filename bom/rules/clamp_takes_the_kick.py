"""A clamp must take the coil's kick, and stand beside no other.

Asks:     its peak watts are at least its clamp volts x the coil's pull-in amps; the energy of its one-millisecond
          pulse is at least what the coil holds, 1/2 L I² with L = time constant x coil volts / pull-in amps; its
          clamp volts are at most 60 V; the coil has no suppression of its own.
Why:      a clamp too small shorts or opens at its first kick, and a coil pushes for longer than the pulse its watts
          are printed for; one of 100 V saves no contact; a diode inside the coil makes it slow whatever stands beside.
Harm:     damage.
Says:     fail, can't tell, tight.
Cure:     a two-way clamp of 18 to 30 V and 600 W; or none where the coil has its own.
Ignores:  how often it is switched; what the coil's own copper burns of its energy, which is to the clamp's good.
Source:   the coil's amps go on through the clamp as it opens: algebra; energy of a coil: circuit theory. A pulse of
          10/1000 us holds 1.4 ms of its peak watts (exponential tail); one millisecond is counted. 60 V by common
          practice, the least that thin contacts and closers are made for.
"""

from dataclasses import replace

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, is_word
from bom.judge.rule import PairRule
from bom.judge.verdict import Verdict
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step

MOST_V = 60.0
PULSE_S = 0.001


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare watts, energy and volts of the clamp, and look for another inside the coil."""
    own = is_word("suppressed", second.words_of("suppressed"), ("no",), "one clamp is enough", other=Verdict.TIGHT)
    return [
        at_least("peak watts", first.rating("peak_w").down(), _kick(first, second)),
        at_least("energy of its pulse", _pulse(first).down(), _held(second, margins)),
        at_most(
            "clamp volts",
            first.rating("clamp_v").down(),
            Span.fixed(MOST_V, "voltage", "what thin contacts and closers stand", "V"),
        ),
        replace(own, verdicts=own.verdicts[None, :], offered=own.offered[None, :]),
    ]


def _kick(clamp: Parts, coil: Parts) -> Demand:
    """Give the watts at the moment of opening."""
    watts = clamp.number("clamp_v")[:, None] * coil.number("coil_pull_a")[None, :]

    def traced() -> Step:
        return step("U * I", U=clamp.first("clamp_v"), I=coil.first("coil_pull_a"))

    return Demand.of(watts, "power", "its clamp volts x the coil's pull-in amps", traced)


def _pulse(clamp: Parts) -> Rating:
    """Give the energy of the pulse that the peak watts are printed for."""
    length = Span.fixed(PULSE_S, "time", "of a 10/1000 us pulse, counted short", "makers' pulse sheets, from memory")
    watts = clamp.rating("peak_w")
    return watts.with_values(watts.values * PULSE_S, lambda: step("P * t", P=clamp.first("peak_w"), t=length))


def _held(coil: Parts, margins: Margins) -> Demand:
    """Give the energy a pulled-in coil holds: 1/2 L I^2, and L = tau * U / I."""
    tau = margins.of("coil_time_constant_ms")
    energy = tau.low / 1000 * coil.number("coil_v") * coil.number("coil_pull_a") / 2

    def traced() -> Step:
        return step("tau / 1000 * U * I / 2", tau=tau, U=coil.first("coil_v"), I=coil.first("coil_pull_a"))

    return Demand.of(energy[None, :], "energy", f"1/2 L I² of the coil, its time constant {tau.low:g} ms", traced)


RULE = PairRule("clamps", judge)
