"""What must hold in every network, whatever is in it: Kirchhoff's laws, energy, superposition, order."""

from collections import defaultdict
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.circuit.network import Converter, Draw, Network, Resistor, Source
from bom.circuit.solve import Solution, solve

LEAK_S = 1e-9  # what the solver puts beside every draw and converter


def ohms(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).map(lambda exponent: float(f"{10**exponent:.3g}"))


@st.composite
def networks(draw: st.DrawFn, *, linear: bool = False, most_watts: float = 3000.0) -> Network:
    """Two trees of wires with a pack between, loops, loads, draws past collapse or not, converters to a third tree."""
    plus, minus, low = ([f"{side}{k}" for k in range(draw(st.integers(1, 6)))] for side in ("plus", "minus", "low"))
    volts = draw(st.floats(10, 120))
    sources = [Source("pack", plus[0], minus[0], volts, draw(ohms(-3, -0.5)))]
    resistors = [
        Resistor(f"wire {tree[k]}", tree[k], tree[draw(st.integers(0, k - 1))], draw(ohms(-4, -0.5)))
        for tree in (plus, minus, low)
        for k in range(1, len(tree))
    ]
    a, b, c = st.sampled_from(plus), st.sampled_from(minus), st.sampled_from(low)
    resistors += [Resistor(f"loop {k}", draw(a), draw(a), draw(ohms(-3, 1))) for k in range(draw(st.integers(0, 2)))]
    resistors += [Resistor(f"load {k}", draw(a), draw(b), draw(ohms(-3, 6))) for k in range(draw(st.integers(0, 3)))]
    resistors += [Resistor(f"lamp {k}", draw(c), draw(b), draw(ohms(-2, 3))) for k in range(draw(st.integers(1, 3)))]
    sources += [Source("second", draw(a), draw(b), volts * 0.95, 0.1)] * draw(st.integers(0, 1))
    sources += [Source("buffer", low[0], minus[0], draw(st.floats(10, 14)), 0.05)] * draw(st.integers(0, 1))
    if linear:
        return Network(tuple(resistors), tuple(sources), references=(minus[0],))
    draws = [
        Draw(
            f"draw {k}",
            draw(a),
            draw(b),
            kind,
            draw(st.floats(-most_watts, -0.1) | st.floats(0.1, most_watts)) / {"watts": 1, "amps": 50}[kind],
            volts / 3,
        )
        for k, kind in enumerate(draw(st.lists(st.sampled_from(("watts", "amps")), max_size=4)))
    ]
    converters = [
        Converter(
            f"converter {k}", draw(a), draw(b), draw(c), draw(b), draw(st.floats(11, 15)), draw(st.floats(1, 30)),
            draw(st.booleans()), 0.01, draw(st.floats(0.7, 1)), draw(st.floats(0, 5)), volts / 2,
        )
        for k in range(draw(st.integers(0, 2)))
    ]  # fmt: skip
    return Network(tuple(resistors), tuple(sources), tuple(draws), tuple(converters), (minus[0],))


def input_a(solution: Solution, converter: Converter) -> float:
    """Give what a converter takes by its own definition: what it gives, over its efficiency, and its idle watts."""
    if converter.name in solution.let_go:
        return 0.0
    given_w = solution.amps[converter.name] * solution.at(converter.output_plus, converter.output_minus)
    watts = max(given_w, 0.0) / converter.efficiency + converter.idle_w
    return watts / solution.at(converter.input_plus, converter.input_minus)


def flows(solution: Solution) -> list[tuple[str, str, float]]:
    """Give each element's amps, from where they leave the network to where they come back."""
    net, amps = solution.compiled.network, solution.amps
    out = [(r.start, r.end, amps[r.name]) for r in net.resistors]
    out += [(s.minus, s.plus, amps[s.name]) for s in net.sources]
    out += [(d.plus, d.minus, amps[d.name]) for d in net.draws]
    for c in net.converters:
        out += [(c.output_minus, c.output_plus, amps[c.name]), (c.input_plus, c.input_minus, input_a(solution, c))]
    return out


@given(networks())
def test_no_amps_are_lost_at_any_point(network):
    solution = solve(network)
    assert solution.settled
    left: defaultdict[str, float] = defaultdict(float)
    for start, end, amps in flows(solution):
        left[start] -= amps
        left[end] += amps
    greatest = max(abs(amps) for _, _, amps in flows(solution))
    leak_a = LEAK_S * 200 * (len(network.draws) + len(network.converters) * 2)
    assert max(map(abs, left.values())) <= 1e-6 * greatest + leak_a + 1e-9


@given(networks())
def test_no_energy_is_lost(network):
    """What sources give is what wires, loads, draws and the inner ohms and losses of sources and converters take."""
    solution = solve(network)
    given_w = sum(s.volts * solution.amps[s.name] for s in network.sources)
    heat_w = sum(r.ohm * solution.amps[r.name] ** 2 for r in network.resistors)
    inner_w = sum(s.ohm * solution.amps[s.name] ** 2 for s in network.sources)
    drawn_w = sum(solution.at(d.plus, d.minus) * solution.amps[d.name] for d in network.draws)
    lost_w = 0.0
    for c in network.converters:
        output_w = solution.at(c.output_plus, c.output_minus) * solution.amps[c.name]
        input_w = solution.at(c.input_plus, c.input_minus) * input_a(solution, c)
        assert input_w >= output_w - 1e-6  # no converter makes energy
        lost_w += input_w - output_w
    turned_over_w = (
        heat_w + inner_w + sum(abs(solution.at(d.plus, d.minus) * solution.amps[d.name]) for d in network.draws)
    )
    assert given_w == pytest.approx(heat_w + inner_w + drawn_w + lost_w, rel=1e-6, abs=1e-6 * turned_over_w + 1e-4)


@given(networks())
def test_every_draw_and_converter_does_what_it_is_said_to_do(network):
    solution = solve(network)
    for d in network.draws:
        volts, amps = solution.at(d.plus, d.minus), solution.amps[d.name]
        full = d.amount if d.kind == "amps" else d.amount / volts
        stands_v = max(volts, 0.0) if d.amount < 0 else volts
        low = d.amount * stands_v / (d.least_v if d.kind == "amps" else d.least_v**2)
        may_sag = d.kind == "amps" or d.amount < 0  # told as let go are draws of watts alone
        has_gone = d.name in solution.let_go or (may_sag and volts < d.least_v)
        assert amps == pytest.approx(low if has_gone else full, rel=1e-6, abs=1e-9)
        assert has_gone or volts >= d.least_v * (1 - 1e-9)
    for c in network.converters:
        volts, amps = solution.at(c.output_plus, c.output_minus), solution.amps[c.name]
        if c.name in solution.let_go:
            assert amps == 0.0
        else:
            held_a = (c.output_v - volts) / c.output_ohm
            assert amps == pytest.approx(min(max(held_a, 0.0), c.limit_a), rel=1e-6, abs=2e-6)
            assert (c.name in solution.limiting) == (held_a > c.limit_a)


@given(networks(linear=True))
def test_sources_add_up_where_all_is_linear(network):
    """Superposition: the volts are the sum of those that each source gives with the other ones at 0 V."""
    whole = solve(network)
    parts = [
        solve(replace(network, sources=tuple(s if s is one else replace(s, volts=0.0) for s in network.sources)))
        for one in network.sources
    ]
    reference = whole.compiled.points[0]
    for point in whole.compiled.points:
        total = sum(part.at(point, reference) for part in parts)  # NaN in another island, as the whole
        assert whole.at(point, reference) == pytest.approx(total, rel=1e-7, abs=1e-7, nan_ok=True)


@given(networks())
def test_the_order_of_elements_changes_nothing(network):
    there = solve(network)
    turned = Network(
        network.resistors[::-1],
        network.sources[::-1],
        network.draws[::-1],
        network.converters[::-1],
        network.references,
    )
    back = solve(turned)
    assert set(there.let_go) == set(back.let_go)
    assert set(there.limiting) == set(back.limiting)
    assert back.amps == pytest.approx(there.amps, rel=1e-6, abs=1e-6)


@given(networks(most_watts=1.0))
def test_light_loads_never_let_go(network):
    solution = solve(replace(network, resistors=tuple(r for r in network.resistors if not r.name.startswith("load"))))
    assert not [name for name in solution.let_go if name.startswith("draw")]
