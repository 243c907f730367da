"""Shared by the circuit's tests: networks written as text, and a public circuit simulator as an outside judge.

Each line of a network is one element: its kind, its name, its points, its figures.

    reference P                                       counts volts from P
    wire      w1   A B       ohm
    source    pack P M       volts ohm
    amps      horn A B       amount least_v
    watts     ecu  A B       amount least_v
    converter dc   P M A B   output_v limit_a constant|hiccup output_ohm efficiency idle_w lowest_input_v
"""

import re
import shutil
import subprocess
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest

from bom.circuit.network import Converter, Draw, Network, Resistor, Source

Volts = dict[str, dict[str, float]]
REFUSED = re.compile(r"error|warning|singular|no convergence|not available|can't|cannot|failed", re.IGNORECASE)
FIGURE = re.compile(r"^(\S+)\s*=\s*(\S+)", re.MULTILINE)


def read_network(text: str) -> Network:
    """Read a network from its lines."""
    rows = [line.split() for line in text.splitlines() if line.strip()]
    of_kind = {kind: [row[1:] for row in rows if row[0] == kind] for kind in {row[0] for row in rows}}
    unknown = set(of_kind) - {"reference", "wire", "source", "amps", "watts", "converter"}
    assert not unknown, unknown
    return Network(
        resistors=tuple(Resistor(n, a, b, float(ohm)) for n, a, b, ohm in of_kind.get("wire", [])),
        sources=tuple(Source(n, a, b, float(v), float(ohm)) for n, a, b, v, ohm in of_kind.get("source", [])),
        draws=tuple(
            Draw(n, a, b, kind, float(amount), float(least))
            for kind in ("amps", "watts")
            for n, a, b, amount, least in of_kind.get(kind, [])
        ),
        converters=tuple(
            Converter(n, *ends, float(v), float(limit), keeps == "constant", *(float(f) for f in figures))
            for n, *ends, v, limit, keeps, ohm, efficiency, idle, lowest in of_kind.get("converter", [])
            for figures in [(ohm, efficiency, idle, lowest)]
        ),
        references=tuple(row[0] for row in of_kind.get("reference", [])),
    )


def pairs(network: Network) -> list[tuple[str, str]]:
    """Give the points that one element joins."""
    out = [(r.start, r.end) for r in network.resistors]
    out += [(e.plus, e.minus) for e in (*network.sources, *network.draws)]
    for c in network.converters:
        out += [(c.input_plus, c.input_minus), (c.output_plus, c.output_minus)]
    return out


def walk_grounds(network: Network) -> dict[str, str]:
    """Give each point its island's first point in the alphabet, by walking: not by the project's own count."""
    beside: dict[str, set[str]] = {}
    for a, b in pairs(network):
        beside.setdefault(a, set()).add(b)
        beside.setdefault(b, set()).add(a)
    ground: dict[str, str] = {}
    for first in sorted(beside):
        waiting = [] if first in ground else [first]
        while waiting:
            point = waiting.pop()
            ground[point] = first
            waiting += beside[point] - ground.keys()
    return ground


class Deck:
    """A network in the simulator's words. Every island's ground is its node 0: one joint carries nothing."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.ground = walk_grounds(network)
        self.names = {p: "0" if g == p else f"n{k}" for k, (p, g) in enumerate(sorted(self.ground.items()))}

    def across(self, a: str, b: str) -> str:
        return f"(V({self.names[a]})-V({self.names[b]}))"

    def lines(self, start_v: Mapping[str, float] | None) -> list[str]:
        """Give the lines; the open circuit without draws where no starting volts are known."""
        n, out = self.names, ["network", ".options reltol=1e-6 abstol=1e-9 vntol=1e-8 itl1=500"]
        out += [f"R{k} {n[r.start]} {n[r.end]} {r.ohm!r}" for k, r in enumerate(self.network.resistors)]
        for k, s in enumerate(self.network.sources):
            out += [f"V{k} i{k} {n[s.minus]} {s.volts!r}", f"RS{k} i{k} {n[s.plus]} {s.ohm!r}"]
        for k, c in enumerate(self.network.converters):
            out += self._converter(k, c, loaded=start_v is not None)
        if start_v is not None:
            out += [self._draw(k, d) for k, d in enumerate(self.network.draws)]
            out += [f".nodeset v({n[p]})={v!r}" for p, v in start_v.items()]
        return [*out, ".end"]

    def _draw(self, number: int, d: Draw) -> str:
        v = self.across(d.plus, d.minus)
        above, low = (f"{d.amount!r}/{v}", d.least_v**2) if d.kind == "watts" else (f"{d.amount!r}", d.least_v)
        current = f"{v} >= {d.least_v!r} ? {above} : {d.amount!r}*{v}/{low!r}"
        return f"BD{number} {self.names[d.plus]} {self.names[d.minus]} I = {current}"

    def _converter(self, number: int, c: Converter, *, loaded: bool) -> list[str]:
        """Write two ports: at the output volts behind ohms up to the limit, at the input the power it takes."""
        out_v, n = self.across(c.output_plus, c.output_minus), self.names
        if not loaded:
            plus, minus = n[c.output_plus], n[c.output_minus]
            return [f"VO{number} j{number} {minus} {c.output_v!r}", f"RO{number} j{number} {plus} {c.output_ohm!r}"]
        given = f"max(0,min({c.limit_a!r},({c.output_v!r}-{out_v})/{c.output_ohm!r}))"
        taken = f"({out_v}*{given}/{c.efficiency!r}+{c.idle_w!r})"
        in_v = self.across(c.input_plus, c.input_minus)
        return [
            f"BO{number} {n[c.output_minus]} {n[c.output_plus]} I = {given}",
            f"BI{number} {n[c.input_plus]} {n[c.input_minus]} I = {taken}/max({in_v},1)",
        ]


def run_simulator(folder: Path, commands: Sequence[str]) -> str:
    """Run commands in one process and give what it prints; any complaint is a failure, for its exit code is 0."""
    program = shutil.which("ngspice")
    if program is None:
        pytest.skip("ngspice is not installed: the solver is not compared with a circuit simulator")
    script = folder / "run.cir"
    script.write_text("\n".join(["run", ".control", "set numdgt=12", *commands, "quit 0", ".endc", ".end", ""]))
    done = subprocess.run(
        [program, "-b", str(script)], stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=120, check=False
    )
    complaints = [line for line in (done.stderr + done.stdout).splitlines() if REFUSED.search(line)]
    assert not complaints, complaints
    return done.stdout


def _operating_points(folder: Path, decks: Mapping[str, Deck], start: Volts | None) -> Volts:
    commands: list[str] = []
    for k, (name, deck) in enumerate(decks.items()):
        (folder / f"{k}.cir").write_text("\n".join(deck.lines(start[name] if start else None)))
        wanted = " ".join(f"v({n})" for n in deck.names.values() if n != "0")
        commands += [f"source {folder}/{k}.cir", "op", f"echo -=-{k}-=-", f"print {wanted}", "destroy all", "remcirc"]
    printed = re.split(r"^-=-\d+-=-$", run_simulator(folder, commands), flags=re.MULTILINE)[1:]
    out: Volts = {}
    for (name, deck), text in zip(decks.items(), printed, strict=True):
        found = {key.lower(): float(value) for key, value in FIGURE.findall(text)}
        out[name] = {p: 0.0 if n == "0" else found[f"v({n})"] for p, n in deck.names.items()}
    return out


@pytest.fixture(scope="session")
def network_of() -> Callable[[str], Network]:
    return read_network


@pytest.fixture(scope="session")
def grounds() -> Callable[[Network], dict[str, str]]:
    return walk_grounds


@pytest.fixture(scope="session")
def simulated(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Mapping[str, Network]], Volts]:
    """Give the simulator's volts of each point against its island's ground; it starts from the open circuit."""

    def run(networks: Mapping[str, Network]) -> Volts:
        decks = {name: Deck(network) for name, network in networks.items()}
        folder = tmp_path_factory.mktemp("simulator")
        return _operating_points(folder, decks, _operating_points(folder, decks, None))

    return run


@pytest.fixture(scope="session")
def measured(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., dict[str, float]]:
    """Run one circuit over time and give what its `meas` lines find."""

    def run(elements: Sequence[str], tran: str, measures: Sequence[str]) -> dict[str, float]:
        folder = tmp_path_factory.mktemp("over_time")
        options = ".options reltol=1e-7 abstol=1e-9 vntol=1e-7 method=trap"
        (folder / "net.cir").write_text("\n".join(["network", options, *elements, ".end", ""]))
        meas = [f"meas tran {line}" for line in measures]
        printed = run_simulator(folder, [f"source {folder}/net.cir", f"tran {tran} uic", *meas])
        found = {key: float(value) for key, value in FIGURE.findall(printed) if key in {m.split()[0] for m in measures}}
        assert len(found) == len(measures), printed
        return found

    return run
