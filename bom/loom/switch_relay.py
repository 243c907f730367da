"""Switches that pull in a relay: the relay stands in the loads' feed, the switch carries only its coil.

The relay sits beside the fuse box. Its coil is fed from the fuse of its loads; a live switch lies ahead of the coil,
one on the earth side behind it.
"""

from bom.loom.builder import Builder
from bom.loom.model import UNLIT, Bridge
from bom.loom.relay_names import RELAY_COIL, opens_its_relay, relay_of
from bom.read.job import Item


def lay_out_switch_relay(build: Builder, item: Item, fuse: str, run_m: float, *, wired: bool) -> None:
    """Place the relay of one switch, lead its coil through the switch and home.

    run_m  from the fuse box to the switch
    wired  it comes home by wire, else an earth-side switch joins the frame
    """
    relay, tail_m = relay_of(item), build.margin_m("tail_m")
    build.relay(relay, f"relay that the {item.name} pulls in", f"switch {item.name}", "under seat")
    build.link("pulls", f"switch {item.name}", relay)
    plus, minus, switch = f"{relay} coil plus", f"{relay} coil minus", f"{item.name} "
    home = "12 V rail minus"
    if item.side == "earth":
        legs = [("feed", f"{fuse} out", plus, tail_m), ("lead", minus, f"{switch}in", run_m)]
        legs += [("return", f"{switch}out", home, run_m)] if wired else []
    else:
        legs = [("feed", f"{fuse} out", f"{switch}in", run_m), ("lead", f"{switch}out", plus, run_m)]
        legs.append(("return", minus, home, tail_m))
    for name, start, end, length_m in legs:
        wire = f"{relay} {name}"
        build.wire(
            wire,
            f"{start} to {end}",
            RELAY_COIL,
            "bar",
            (start, end),
            length_m,
            guard=fuse,
            part_of_m=2 * run_m + tail_m,
            together=build.margins.bundle_wires,
        )
        build.finish(wire)
    ends_at = "frame" if item.side == "earth" and not wired else f"{switch}out"
    gate = UNLIT if opens_its_relay(item) else "lit"
    ends = (f"{switch}in", ends_at)
    build.bridges.append(Bridge(item.name, "contact", *ends, f"switch {item.name}", gate, tuple(item.feeds)))
