"""What the run of a wire, and the stud, the air and the water of a place ask."""

from bom.duties.circuits import Facts, Needs
from bom.loom.builder import BUS_SENSE, PILOT
from bom.loom.lengths import length_figure
from bom.loom.model import Place, Wire
from bom.loom.precharge import FIRST_CLOSING
from bom.loom.strings import STRINGS
from bom.read.families import BY_NAME
from bom.span import Span
from bom.trace import Origin, step

DROP = {
    "precharge": "drop_tap_fraction",
    "traction": "drop_pack_fraction",
    STRINGS: "drop_pack_fraction",
    "converter input": "drop_tap_fraction",
    "key input": "drop_tap_fraction",
    "meter": "drop_tap_fraction",
    "charging": "drop_tap_fraction",
    BUS_SENSE: "drop_tap_fraction",
    PILOT: "drop_tap_fraction",
}


def ambient(zone: str, facts: Facts) -> Span:
    """Give the hottest air of a zone."""
    key = zone.replace(" ", "_")
    value: float = getattr(facts.job.ambient, key)
    return Span.given(value, "temperature", f"hottest air, {zone}", f"ambient.{key}")


def weather(place: Place, facts: Facts) -> Needs:
    """Ask the water digit of a zone of what has an IP code; a holder used at the first closing alone rides nowhere."""
    margin = f"ip_water_{place.zone.replace(' ', '_')}"
    asked = facts.margins.of(margin, "", f"splash reaches it, {place.zone}")
    coded = any(column.name == "ip_code" for column in BY_NAME[place.family].columns)
    return {"water_x": asked} if coded and asked.low and place.name != FIRST_CLOSING else {}


def wire_needs(place: Place, wire: Wire, needs: Needs, facts: Facts) -> Needs:
    """Give a wire's length, how many lie together, its least copper, and its share of the volts that may be lost."""
    margins = facts.margins
    out = {
        "length_m": length_figure(wire.length_m, "run as given, one way", wire.name),
        "together": counted(float(wire.together), "", "loaded wires lying together", wire.name),
    }
    if not wire.guard and wire.name.endswith(" stub"):
        out["least_area_mm2"] = margins.of("stub_mm2", "area", "least copper of a wire that no fuse guards")
    if place.circuit == "phase" or "carry_a" not in needs:
        return out
    allowed = margins.of(DROP.get(place.circuit, "drop_lamp_fraction"))
    fraction = allowed.low
    pack_side = place.circuit in DROP
    supply = facts.pack.lowest_rest_v.low if pack_side else margins.rail_volts
    share = wire.length_m / wire.part_of_m
    out["drop_v"] = Span.of(
        fraction * supply * share,
        "voltage",
        f"{fraction:.0%} of {supply:g} V over {wire.part_of_m:g} m, this wire's share",
        lambda: step(
            "p * U * L / L_all",
            p=allowed,
            U=facts.pack.lowest_rest_v if pack_side else margins.of("rail_volts", "voltage"),
            L=out["length_m"],
            L_all=length_figure(wire.part_of_m, "there and back", wire.name),
        ),
    )
    return out


def counted(value: float, dimension: str, because: str, name: str) -> Span:
    """Give a figure that the loom was laid out with, or that was counted in it."""
    return Span.of(value, dimension, because, Origin("loom", name))


def stud(place: Place, facts: Facts) -> Needs:
    """Give the bolt of the terminal that a lug ends on."""
    studs = {"pack": facts.job.pack.stud, "controller": facts.job.controller.stud, "motor": facts.job.motor.stud}
    studs["frame"] = int(facts.margins.frame_bolt_m)
    if place.end not in studs:
        return {}
    because = f"{place.end} terminal, M{studs[place.end]}"
    if place.end == "frame":
        return {"stud_m": Span.of(float(studs["frame"]), "", because, Origin("margin", "frame_bolt_m", unit="mm"))}
    return {"stud_m": Span.given(float(studs[place.end]), "", because, f"{place.end}.stud")}
