"""Switches on the earth side that a job cannot mean: one lamp of two returns, two of a kind on both sides."""

from collections.abc import Callable, Mapping

Table = Mapping[str, object]
Add = Callable[[tuple[str | int, ...], str, str], None]


def side_faults(add: Add, loads: list[Table], items: list[Table]) -> None:
    """Find switches on the earth side that would leave a light dark, or burning."""
    _of_one_lamp(add, loads, items)
    _of_one_kind(add, items)


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
        side = item.get("side") or "live"
        for fed in _feeds(item):
            name, first = sides.setdefault((str(item.get("kind")), fed), (item.get("name"), side))
            if first != side:
                accepted = f'Write "{first}", as the {name} has it: both switch the {fed}, side by side.'
                add(("donor", "items", index, "side"), str(side), accepted)


def _feeds(item: Table) -> list[str]:
    feeds = item.get("feeds")
    return [fed for fed in feeds if isinstance(fed, str)] if isinstance(feeds, list) else []
