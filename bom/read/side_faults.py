"""Switches on the earth side that a job cannot mean: one lamp of two returns, two of a kind on both sides."""

from collections.abc import Callable, Mapping

Table = Mapping[str, object]
Add = Callable[[tuple[str | int, ...], str, str], None]


def side_faults(add: Add, loads: list[Table], items: list[Table]) -> None:
    """Find switches on the earth side that would leave a light dark, or burning; relays that would join two fuses."""
    _of_one_lamp(add, loads, items)
    _of_one_kind(add, items)
    _of_one_circuit(add, loads, items)


def _of_one_lamp(add: Add, loads: list[Table], items: list[Table]) -> None:
    """Lights of one lamp share its minus, so that a switch there switches all of them."""
    for load in loads:
        lamp = load.get("same_lamp_as")
        for index, item in enumerate(items):
            named = [name for name in (load.get("name"), lamp) if name in _feeds(item)]
            if lamp and item.get("side") == "earth" and len(named) == 1:
                accepted = f'Write "live": {load.get("name")} and {lamp} are one lamp with one minus.'
                add(("donor", "items", index, "side"), "earth", accepted)


def _of_one_kind(add: Add, items: list[Table]) -> None:
    """Two of a kind that feed one load lie side by side, and so on one side of it."""
    sides: dict[tuple[str, str], tuple[object, object]] = {}
    for index, item in enumerate(items):
        side = "through a relay" if item.get("relay") else item.get("side") or "live"
        for fed in _feeds(item):
            name, first = sides.setdefault((str(item.get("kind")), fed), (item.get("name"), side))
            if first != side:
                key = "relay" if "through a relay" in (first, side) else "side"
                accepted = f'Write "{first}", as the {name} has it: both switch the {fed}, side by side.'
                add(("donor", "items", index, key), str(side), accepted.replace('"through a relay"', "relay = true"))


def _of_one_circuit(add: Add, loads: list[Table], items: list[Table]) -> None:
    """A relay has one contact: what a switch feeds through it has one fuse."""
    circuits = {load.get("name"): str(load.get("circuit") or load.get("name")) for load in loads}
    for index, item in enumerate(items):
        named = sorted({circuits[fed] for fed in _feeds(item) if fed in circuits})
        if item.get("relay") and len(named) > 1:
            accepted = f"Let it feed loads of one circuit; now these: {', '.join(named)}."
            add(("donor", "items", index, "relay"), "true", accepted)


def _feeds(item: Table) -> list[str]:
    feeds = item.get("feeds")
    return [fed for fed in feeds if isinstance(fed, str)] if isinstance(feeds, list) else []
