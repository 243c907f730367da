"""Ohms of everything that current runs through: wires with their joints, contacts, fuses, plugs, resistors."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bom.duties.model import Duty
from bom.judge.loom_view import LoomView
from bom.judge.ratings import cable_ampacity
from bom.loom.model import Bridge, Wire
from bom.parts import Parts
from bom.physics.conductor import copper_resistance_mohm_per_m, copper_temperature_factor
from bom.read.margins import Margins

LEAST_OHM = 1e-6
SENSE_OHM = 1e5  # inputs that only look


@dataclass(frozen=True)
class Strand:
    """A wire as the circuit sees it.

    ohm_20      copper at 20 C, without its joints
    ampacity_a  A it carries for ever where it lies; NaN where not known
    limit_c     temperature its metal, insulation and terminals stand
    cable_c     temperature class of the cable alone; limit_c where it is not known
    bolted      True for a heavy lead, whose ends are lugs on studs
    """

    wire: Wire
    ohm_20: float
    ampacity_a: float
    limit_c: float
    cable_c: float
    bolted: bool


def strand_ohms(some: Sequence[Strand], at_c: Sequence[float], margins: Margins, *, worn: bool) -> list[float]:
    """Give the resistance of wires at their temperatures, with a joint at either end, sound but worn or at its best."""
    bolted = margins.bolted_joint_high_ohm if worn else margins.joint_low_ohm
    plain = margins.joint_high_ohm if worn else margins.joint_low_ohm
    factors = np.asarray(copper_temperature_factor(temperature_c=np.array(at_c, dtype=float))).tolist()
    return [
        max(strand.ohm_20 * factor + 2 * (bolted if strand.bolted else plain), LEAST_OHM)
        for strand, factor in zip(some, factors, strict=True)
    ]


def strand(wire: Wire, part: Parts | None, duty: Duty, margins: Margins, *, bolted: bool) -> Strand:
    """Describe a wire by its cable; where none stands, or its copper is not known, by the drop or copper assumed."""
    area = float(part.number("area_mm2")[0]) if part else float("nan")
    per_m = float(part.number("resistance_mohm_per_m")[0]) if part else float("nan")
    if part is None and duty.has("drop_v", "carry_a") and duty.carry_a.high > 0:
        hot = float(copper_temperature_factor(temperature_c=margins.terminal_c))
        thin = float(copper_resistance_mohm_per_m(area_mm2=margins.unknown_wire_mm2)) * wire.length_m / 1000
        ohm = min(duty.drop_v.low / duty.carry_a.high / hot, thin)
        return Strand(wire, ohm, float("nan"), margins.terminal_c, margins.terminal_c, bolted)
    if np.isnan(per_m):
        if np.isnan(area):
            area = margins.unknown_wire_mm2
        per_m = float(copper_resistance_mohm_per_m(area_mm2=area))
    cable_c = float(part.number("conductor_max_c")[0]) if part else float("nan")
    ampacity = float(cable_ampacity(part, duty, margins).values[0]) if part else float("nan")
    cable_c = margins.terminal_c if np.isnan(cable_c) else cable_c
    limit_c = min(cable_c, margins.terminal_c)
    return Strand(wire, per_m * wire.length_m / 1000, ampacity, limit_c, cable_c, bolted)


def strands(view: LoomView) -> dict[str, Strand]:
    """Describe every wire of a loom that current can reach."""
    heavy = {place.name for place in view.loom.places if place.circuit == "traction"}
    return {
        wire.name: strand(
            wire,
            view.parts.get(wire.name),
            view.duties[wire.name],
            view.facts.margins,
            bolted=wire.name in heavy,
        )
        for wire in view.loom.wires
    }


def bridge_ohm(bridge: Bridge, part: Parts | None, margins: Margins, *, high: bool) -> float:
    """Ohms of a part that current runs through, at its sound worst or at its best."""
    if bridge.kind == "fuse":
        rated = float(part.number("rated_a")[0]) if part else float("nan")
        drop = margins.fuse_drop_high_v if high else margins.fuse_drop_low_v
        return LEAST_OHM if np.isnan(rated) or rated <= 0 else drop / rated
    if bridge.kind == "shunt" and part:
        rated, drop_mv = (float(part.number(name)[0]) for name in ("rated_a", "drop_mv"))
        return max(float(np.nan_to_num(drop_mv / 1000 / rated)), LEAST_OHM)
    if bridge.kind == "resistor":
        ohm = float(part.number("resistance_ohm")[0]) if part else float("nan")
        return 100.0 if np.isnan(ohm) else ohm
    if bridge.kind == "sense":
        return SENSE_OHM
    value: float = getattr(margins, f"{_contact(bridge, part)}_{'high' if high else 'low'}_ohm")
    return value


def _contact(bridge: Bridge, part: Parts | None) -> str:
    """Name the margins of a contact: of a relay, of a heavy pole, or of a thin switch."""
    if part is not None and part.family == "relay":
        return "relay_contact"
    return "heavy_contact" if bridge.kind == "plug" or (part and part.family == "contactor") else "contact"
