"""What is to be read at each plug of a bike before its halves are mated the first time."""

from collections.abc import Iterator, Mapping

from bom import units
from bom.build import Build
from bom.choose.filled import NONE
from bom.leads.model import Join
from bom.loom.beside import BAR_PLUG, PACK_PLUG, PHASE_JOINT
from bom.loom.model import Place
from bom.read.lead_kinds import LEVELS

CHARGE_PORT, CHARGER = "charge port", "charger"
LOOKS = ("body", "keying", "plug_form", "plug")
Row = Mapping[str, str]


def plug_volts(build: Build) -> list[Row]:
    """Give a row for each plug: what it looks like, the volts to be read, and which way round."""
    families = ("power_connector", "signal_connector", "charge_port")
    places = [place for place in build.loom.places if place.family in families]
    return [_row(place, build) for place in places] + list(_charger(build))


def _row(place: Place, build: Build) -> Row:
    volts, way_round = _reading(place, build)
    return {"plug": place.name, "look": _look(place.name, build), "volts": volts, "way_round": way_round}


def _look(place: str, build: Build) -> str:
    """Name the part with its body and keying, where its family has them."""
    entry = build.filled.get(place)
    if not entry:
        return NONE
    words = [entry.part.word(name)[0] for name in LOOKS if name in entry.part.words]
    return ", ".join([entry.part_id, *(word for word in words if word)])


def _reading(place: Place, build: Build) -> tuple[str, str]:
    if place.name == PHASE_JOINT:
        return "0 V", "each lead to each other and to the frame; wheel still"
    if place.name in (PACK_PLUG, CHARGE_PORT):
        half = ", on the pack's half" if place.name == PACK_PLUG else ""
        return _pack(build), f"red on its plus reads positive{half}"
    if place.name == BAR_PLUG:
        return _rail(build), f"black on the minus rail, key on: {_wires(place.name, build)}"
    ways = [join for join in build.loom.leads.joins if join.plug == place.name]
    return "by way", "; ".join(_way(join) for join in sorted(ways, key=lambda join: join.way))


def _charger(build: Build) -> Iterator[Row]:
    """Tell what the charger's own plug must show before it meets the bike."""
    entry = build.filled.get(CHARGER)
    if entry:
        end = units.show(float(entry.part.number("end_v")[0]), "voltage")
        way_round = "red on its plus reads positive; some show nothing until a pack is joined"
        yield {
            "plug": "plug of the charger",
            "look": _look(CHARGER, build),
            "volts": f"{end} or less",
            "way_round": way_round,
        }


def _pack(build: Build) -> str:
    pack = build.facts.pack
    ends = (pack.lowest_rest_v.low, pack.full_charge_v.high)
    return " to ".join(units.show(end, "voltage") for end in ends)


def _rail(build: Build) -> str:
    margins = build.facts.margins
    return f"{margins.rail_low_v:g} to {margins.rail_high_v:g} V on feeds, 0 V on returns"


def _wires(plug: str, build: Build) -> str:
    return ", ".join(link.second for link in build.loom.links if link.kind == "takes wire" and link.first == plug)


def _way(join: Join) -> str:
    """Tell the volts of one way by the end that says more of them."""
    levels = [end.level for end in join.ends if end.level is not None]
    volts = LEVELS[max(levels)] if levels else "volts not known"
    return f"way {join.way}, {join.first.label}: {volts}"
