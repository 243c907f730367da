"""A lamp must keep its light and its life at the volts that reach it.

Asks:     in every solved state a filament lamp has the volts for 70 % of its light at test volts, and no more than
          leave half of its life; an LED lamp stands within 9 to 16 V.
Why:      a tenth of the volts lost takes a third of the light; 6 % over takes half the life.
Harm:     dark.
Says:     can't tell, tight.
Cure:     for light, thicker wire, a clean contact, or a relay near the lamp; for life, a converter of 13.5 V.
Ignores:  dirt, age and shake; the converter's own spread; how an LED lamp regulates between its ends.
Source:   UN R37 test volts; light ~ V^3.4, from memory, life ~ V^-12, UN R128 Annex 4, read second-hand on a public
          page; the fractions are common practice, an estimate.
"""

from collections.abc import Iterator
from functools import partial
from typing import TYPE_CHECKING

from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.physics.lamp import FLUX_EXPONENT, LED_HIGH_V, LED_LOW_V, LED_SOURCE, LIFE_EXPONENT
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step

if TYPE_CHECKING:
    from bom.circuit.lights import Light


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare each lamp's volts with both ends; less light or life is worse, not dangerous."""
    return [answer for light in view.walks.lights for answer in _asked(light, view.facts.margins)]


def _asked(light: "Light", margins: Margins) -> Iterator[LoomAnswer]:
    least, most = _ends(light, margins)
    low = solved(light.low_v, "voltage", f"volts at the {light.load}", light.low_state)
    high = solved(light.high_v, "voltage", f"volts at the {light.load}", light.high_state)
    verdict = Verdict.PASS if light.low_v >= least.low else Verdict.TIGHT
    datum = ""
    if light.assumed and light.kind == "filament":
        verdict, datum = Verdict.CANT_TELL, f"copper area: {light.assumed}"
    seen = f"{light.low_state}; {least.because}"
    yield LoomAnswer(light.load, verdict, "fewest volts", str(low), f"at least {least}", seen, datum, low, least)
    verdict = Verdict.PASS if light.high_v <= most.high else Verdict.TIGHT
    seen = f"{light.high_state}; {most.because}"
    yield LoomAnswer(light.load, verdict, "most volts", str(high), f"at most {most}", seen, "", high, most)


def _ends(light: "Light", margins: Margins) -> tuple[Span, Span]:
    """Give the fewest and the most volts a lamp may have."""
    if light.kind == "LED":
        fixed = partial(Span.fixed, dimension="voltage", because="window of LED light sources", source=LED_SOURCE)
        return fixed(LED_LOW_V), fixed(LED_HIGH_V)
    test = Span.fixed(light.test_v, "voltage", "test volts of its category", "UN R37 03 series")
    bright = margins.of("lamp_light_fraction", "", "light wanted, over that at test volts")
    lasting = margins.of("lamp_life_fraction", "", "life wanted, over that at test volts")

    def least() -> Step:
        return step("U_test * q ** (1 / n)", U_test=test, q=bright, n=Span.fixed(FLUX_EXPONENT, "", "power of light"))

    def most() -> Step:
        return step("U_test * q ** (1 / n)", U_test=test, q=lasting, n=Span.fixed(LIFE_EXPONENT, "", "power of life"))

    return (
        Span.of(light.test_v * bright.low ** (1 / FLUX_EXPONENT), "voltage", f"{bright.low:.0%} of its light", least),
        Span.of(light.test_v * lasting.low ** (1 / LIFE_EXPONENT), "voltage", f"{lasting.low:.0%} of its life", most),
    )


RULE = LoomRule(judge)
