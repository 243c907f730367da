"""How amps and watts of loads were worked out, for those who ask; `bom.duties.budget` makes the figures."""

import re
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from bom.read.job import Load
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, step

if TYPE_CHECKING:
    from bom.duties.budget import LoadAmps
    from bom.duties.circuits import Facts


def symbol(letter: str, name: str) -> str:
    """Make a name for a formula out of what a builder calls a thing."""
    return f"{letter}_{re.sub(r'[^0-9A-Za-z]+', '_', name).strip('_')}"


def together(parts: Sequence[tuple[str, Span]]) -> Origin | Step:
    """Add figures, each under a name of its own."""
    if not parts:
        return Origin("loom", "none is on")
    inputs: dict[str, Span] = {}
    for name, figure in parts:
        inputs[name if name not in inputs else f"{name}_{len(inputs)}"] = figure
    return Step(" + ".join(inputs), inputs)


def printed_watts(lamps: Sequence[Load]) -> Origin | Step:
    """Add the watts printed on lamps that burn together."""
    return together([(symbol("P", load.name), _printed(load)) for load in lamps])


def power_key(load: Load) -> str:
    """Name the key of a load's watts: those the donor had there, where it is judged as it was."""
    return "loads.was" if load.was is not None and load.power == load.was else "loads.power"


def _printed(load: Load) -> Span:
    each = load.power or 0.0
    if load.power is None:
        return Span.fixed(0.0, "power", f"{load.name}: no watts given, amps only")
    watts = Span.given(each, "power", f"{load.name}, each", "loads.power", load.name)
    number = Span.given(float(load.count), "", "that burn together", "loads.count", load.name)
    return Span.of(each * load.count, "power", f"{load.name} together", lambda: step("P * n", P=watts, n=number))


def load_figure(entry: "LoadAmps", margins: Margins) -> Span:
    """Give one load's amps at the volts of the 12 V side, all its pieces together."""
    load = entry.load
    number = Span.given(float(load.count), "", "that burn together", "loads.count", load.name)

    def trace() -> Step:
        if load.current is not None:
            return step("I * n", I=Span.given(load.current, "current", "each", "loads.current", load.name), n=number)
        return step(
            "P * n / U_rail", P=each_watts(entry, margins), n=number, U_rail=margins.of("rail_volts", "voltage")
        )

    return Span.of(entry.amps, "current", load.name, trace)


def each_watts(entry: "LoadAmps", margins: Margins) -> Span:
    """Give the watts of one piece at the volts of the 12 V side."""
    from bom.duties.budget import greatest

    load, rail = entry.load, margins.of("rail_volts", "voltage")
    if load.power is None:
        amps = Span.given(load.current or 0.0, "current", "each", "loads.current", load.name)
        return Span.of(entry.each_w, "power", "one piece", lambda: step("I * U_rail", I=amps, U_rail=rail))
    printed = Span.given(load.power, "power", "as printed, each", power_key(load), load.name)
    if load.kind != "filament":
        return Span.fixed(entry.each_w, "power", "most it may take", entry.source) if load.category else printed
    upper = greatest(load)
    most = Span.of(
        upper.watts, "power", f"most it may take: {upper.source}", lambda: step("greatest_watts(P)", P=printed)
    )
    if load.category:
        most = Span.fixed(upper.watts, "power", "most its category may take", upper.source)
    test = Span.fixed(upper.test_v, "voltage", "test volts of that category", upper.source)
    return Span.of(
        entry.each_w,
        "power",
        "one piece at the rail",
        lambda: step("P_most * (U_rail / U_test) ** 1.6", P_most=most, U_rail=rail, U_test=test),
    )


def loads_together(facts: "Facts", names: Iterable[str]) -> Origin | Step:
    """Add the amps of some loads."""
    known = facts.budget.loads
    return together([(symbol("I", name), load_figure(known[name], facts.margins)) for name in names if name in known])


def state_figure(facts: "Facts", name: str) -> Span:
    """Give the 12 V amps of an operating state: its loads, and the coils while the key is on."""
    from bom.duties.budget import burning

    state = next(state for state in facts.budget.kinds if state.name == name)

    def trace() -> Origin | Step:
        on = [(symbol("I", entry.load.name), load_figure(entry, facts.margins)) for entry in _on()]
        return together([*on, *([("I_coils", facts.counted.hold)] if state.key else [])])

    def _on() -> list["LoadAmps"]:
        return burning(state, facts.budget.loads.values())

    return Span.of(facts.budget.states[name], "current", f"12 V amps: {name}", trace)


def filament_figure(facts: "Facts") -> Span:
    """Give the amps of the largest filament load."""
    filaments = [entry for entry in facts.budget.loads.values() if entry.load.kind == "filament"]
    if not filaments:
        return Span.fixed(0.0, "current", "no filament lamp")
    return load_figure(max(filaments, key=lambda entry: entry.amps), facts.margins)


def one_shell(facts: "Facts", names: Iterable[str]) -> Origin | Step:
    """Add the amps of the lights in one lamp, one lamp of each load."""
    return together([(symbol("I", name), _each(facts.budget.loads[name], facts.margins)) for name in names])


def _each(entry: "LoadAmps", margins: Margins) -> Span:
    load, whole = entry.load, load_figure(entry, margins)
    number = Span.given(float(load.count), "", "that burn together", "loads.count", load.name)
    return Span.of(
        entry.amps / load.count, "current", f"{load.name}, one lamp", lambda: step("I / n", I=whole, n=number)
    )
