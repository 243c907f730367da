"""Working a traced figure out again from its formula and its inputs, so that a formula cannot lie."""

import ast
import math
import operator
import re
from collections.abc import Callable, Mapping
from itertools import product
from typing import Any

from bom.span import Span
from bom.trace import Fact, Step

Values = Mapping[str, Any]
_SIGNS: Mapping[type[ast.AST], Callable[..., Any]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
    ast.USub: operator.neg,
}
# More uncertain figures than this meet in no formula: each doubles the corners to be tried.
_MOST_LOOSE = 10


def replayed(step: Step) -> tuple[float, float]:
    """Give the lowest and the highest figure that a step's formula makes of its inputs.

    "highest(X)" and "lowest(X)" are an end of X. Inputs known only between two ends are tried at both: right for
    formulas that rise or fall all the way.
    """
    loose = re.fullmatch(r"(highest|lowest)\((\w+)\)", step.formula)
    if loose:
        figure = step.inputs[loose[2]]
        assert isinstance(figure, Span)  # a word has no ends
        end = figure.high if loose[1] == "highest" else figure.low
        return end, end
    low, _, high = step.formula.partition(" to ")
    lows = _corners(low, step.inputs)
    highs = _corners(high, step.inputs) if high else lows
    return min(lows), max(highs)


def agrees(step: Step, low: float, high: float) -> bool:
    """Tell whether a step makes these ends; NaN agrees with NaN."""
    again = replayed(step)
    return all(
        math.isclose(a, b, rel_tol=1e-6, abs_tol=1e-9) or (math.isnan(a) and math.isnan(b))
        for a, b in zip(again, (low, high), strict=True)
    )


def _corners(formula: str, inputs: Mapping[str, Span | Fact]) -> list[float]:
    tree = ast.parse(formula.strip(), mode="eval").body
    used = [name for name in inputs if any(isinstance(n, ast.Name) and n.id == name for n in ast.walk(tree))]
    ends = [_ends(inputs[name]) for name in used]
    if sum(len(end) > 1 for end in ends) > _MOST_LOOSE:
        raise ValueError(f"too many loose inputs: {formula}")
    return [float(_value(tree, dict(zip(used, corner, strict=True)))) for corner in product(*ends)]


def _ends(entry: Span | Fact) -> tuple[Any, ...]:
    if isinstance(entry, Fact):
        return (entry.value,)
    return (entry.low,) if entry.known or math.isnan(entry.low) else (entry.low, entry.high)


def _value(node: ast.AST, values: Values) -> Any:
    match node:
        case ast.Constant(value=int() | float() as number):
            return number
        case ast.Name(id=name) if name in values:
            return values[name]
        case ast.BinOp(left=left, op=sign, right=right):
            return _SIGNS[type(sign)](_value(left, values), _value(right, values))
        case ast.UnaryOp(op=sign, operand=operand):
            return _SIGNS[type(sign)](_value(operand, values))
        case ast.Call(func=ast.Name(id=name), args=arguments):
            from bom.replay_functions import FUNCTIONS

            return FUNCTIONS[name](*(_value(argument, values) for argument in arguments))
    raise ValueError(f"a formula may not hold {ast.dump(node)}")
