"""Which plugs lie beside each other at other volts."""

from collections.abc import Callable

from bom.loom.layout import lay_out
from bom.loom.model import Loom
from bom.read.job import JobFile
from bom.read.margins import Margins


def beside(loom: Loom) -> set[frozenset[str]]:
    return {frozenset((link.first, link.second)) for link in loom.links if link.kind == "beside"}


def test_plugs_at_other_volts_are_linked(edited: Callable[..., JobFile], margins: Margins) -> None:
    """Worked: the bar plug is at 12 V, the grip's at 5 V, the display's at 12 V and 5 V, two switches' at 5 V."""
    found = beside(lay_out(edited("moped-48"), margins, "12 V"))
    assert frozenset(("bar plug", "twist grip lead plug")) in found
    assert frozenset(("speed display lead plug", "twist grip lead plug")) in found
    assert frozenset(("boost button lead plug", "brake lever switch lead plug")) not in found


def test_the_pack_plug_lies_beside_the_phase_joint(edited: Callable[..., JobFile], margins: Margins) -> None:
    """Trade: pack and phase leads are as thick as each other, and meet at the controller."""
    assert beside(lay_out(edited("street-72"), margins, "12 V")) == {frozenset(("pack plug", "phase joint"))}
