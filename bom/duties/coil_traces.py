"""How the amps of all coils together were counted and raised, for those who ask; `bom.counts` counts them."""

from collections.abc import Sequence
from functools import partial

from bom.arrangement import SLEEPING
from bom.duties.circuits import Counted
from bom.parts import Parts
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, Trace, step


def key_wires_a(job: JobFile, key_at: str, margins: Margins) -> float:
    """Give what the key feeds at 12 V beside coils: the controller's key input, the converter's enable."""
    key_input_a = job.controller.key_current if job.controller.key_input == "12 V" else 0.0
    return key_input_a + (margins.enable_a if key_at == SLEEPING else 0.0)


def counted_traces(relays: int, contactors: int, job: JobFile, key_at: str, margins: Margins) -> tuple[Trace, Trace]:
    """Tell how the coils were counted before any was chosen: holding, and pulling in."""

    def trace(contactor: str) -> Step:
        return step(
            "n_relay * I_relay + n_contactor * I_contactor + I_key + I_enable",
            n_relay=Span.of(float(relays), "", "relays", Origin("loom", "relays")),
            I_relay=margins.of("relay_coil_a", "current"),
            n_contactor=Span.of(float(contactors), "", "contactors", Origin("loom", "contactors")),
            I_contactor=margins.of(contactor, "current"),
            I_key=_key_input(job),
            I_enable=_enable(key_at, margins),
        )

    return partial(trace, "contactor_coil_a"), partial(trace, "contactor_pull_a")


def raised_traces(
    counted: Counted, job: JobFile, key_at: str, margins: Margins, coils: Sequence[Parts]
) -> tuple[Trace, Trace]:
    """Tell how the count was raised to what the chosen parts draw."""

    def trace(before: Span, column: str) -> Step:
        drawn = {f"I_{number}": part.first(column) for number, part in enumerate(coils, start=1)}
        known = {name: figure for name, figure in drawn.items() if figure.low == figure.low}  # a blank is NaN
        total = " + ".join(["I_key", "I_enable", *known])
        inputs = {"I_counted": before, "I_key": _key_input(job), "I_enable": _enable(key_at, margins), **known}
        return Step(f"max(I_counted, {total})", inputs)

    return partial(trace, counted.hold, "coil_hold_a"), partial(trace, counted.pull, "coil_pull_a")


def _key_input(job: JobFile) -> Span:
    control = job.controller
    if control.key_input == "12 V":
        return Span.given(control.key_current, "current", "key input at 12 V", "controller.key_current")
    return Span.given(0.0, "current", "key input not at 12 V", "controller.key_input")


def _enable(key_at: str, margins: Margins) -> Span:
    if key_at == SLEEPING:
        return margins.of("enable_a", "current")
    return Span.fixed(0.0, "current", "no enable on the key")
