"""What is wrong between the leads of a job: colours of no scheme, labels used twice, joints that lead nowhere."""

from collections.abc import Mapping
from typing import Any

from bom.errors import Fault
from bom.read.cross_checks import Finder
from bom.read.lead_colours import SCHEMES, WORDS, in_words
from bom.read.lead_kinds import TRADE_WORDS
from bom.read.locate import Lines
from bom.read.words import nearest

NOTHING, LOOM = "nothing", "loom"
Table = Mapping[str, Any]


def lead_faults(file: str, data: Mapping[str, object], lines: Lines) -> list[Fault]:
    """Find them in the file as it stands: other faults do not hide these."""
    finder = Finder(file, lines)
    devices = _tables(data.get("devices"))
    _device_names(finder, devices, _others(data))
    known = _known(data, devices)
    for index, device in enumerate(devices):
        leads = _tables(device.get("leads"))
        _ways(finder, index, device, leads)
        for number, lead in enumerate(leads):
            path = ("devices", index, "leads", number)
            _colour(finder, path, lead, device)
            _joint(finder, path, lead, device, known)
        _labels(finder, index, leads)
    return finder.faults


def _tables(value: object) -> list[Table]:
    return [entry if isinstance(entry, dict) else {} for entry in value] if isinstance(value, list) else []


def _label(lead: Table) -> str:
    """Name a lead as the job will: its name, or its function in our word."""
    function = lead.get("function", "")
    return str(lead.get("name") or (TRADE_WORDS.get(function, function) if isinstance(function, str) else ""))


def _others(data: Mapping[str, object]) -> list[str]:
    """List the donor items and loads by name."""
    donor = data.get("donor")
    items = _tables(donor.get("items")) if isinstance(donor, dict) else []
    return [str(entry.get("name", "")) for entry in (*items, *_tables(data.get("loads")))]


def _device_names(finder: Finder, devices: list[Table], others: list[str]) -> None:
    seen: set[str] = set()
    for index, device in enumerate(devices):
        name = device.get("name")
        if not isinstance(name, str):
            continue  # the schema says what is missing or wrong
        path = ("devices", index, "name")
        if name in seen:
            finder.add(path, name, "Give each device its own name.")
        elif name in (*others, LOOM):
            accepted = "A donor item, a load or the loom has this name: give the device another, and name it with to."
            finder.add(path, name, accepted)
        elif not name.strip() or " / " in name or ": " in name or not name.isprintable():
            finder.add(path, name, 'Write a name on one line, without " / " or ": ".')
        seen.add(name)


def _labels(finder: Finder, index: int, leads: list[Table]) -> None:
    seen: set[str] = set()
    for number, lead in enumerate(leads):
        label, key = _label(lead), "name" if lead.get("name") else "function"
        if label in seen:
            accepted = f'This device has a "{label}" already: tell them apart with name = "...".'
            finder.add(("devices", index, "leads", number, key), label, accepted)
        elif " / " in label or ": " in label:
            finder.add(("devices", index, "leads", number, key), label, 'Write a name without " / " or ": ".')
        seen.add(label)


def _colour(finder: Finder, path: tuple[str | int, ...], lead: Table, device: Table) -> None:
    colour, scheme = lead.get("colour"), lead.get("scheme") or device.get("scheme")
    if not isinstance(colour, str) or not colour:
        return
    if scheme is None:
        schemes = ", ".join(f'"{name}"' for name in (*SCHEMES, WORDS))
        accepted = f"Say how it is coded, for the same letters mean other colours elsewhere: scheme = {schemes}."
        finder.add((*path, "colour"), colour, accepted)
    elif scheme in SCHEMES:
        try:
            in_words(colour, str(scheme))
        except ValueError as error:
            finder.add((*path, "colour"), colour, str(error))


def _known(data: Mapping[str, object], devices: list[Table]) -> list[str]:
    """List everything a lead may be joined to."""
    ends = [f"{device.get('name')}: {_label(lead)}" for device in devices for lead in _tables(device.get("leads"))]
    return [*ends, *_others(data), NOTHING]


def _joint(finder: Finder, path: tuple[str | int, ...], lead: Table, device: Table, known: list[str]) -> None:
    to = lead.get("to")
    if not isinstance(to, str) or not to:
        return
    if to not in known:
        accepted = f'Name "device: lead", a donor item, a load, or "{NOTHING}".{nearest(to, known)}'
        finder.add((*path, "to"), to, accepted)
    elif to.startswith(f"{device.get('name')}: "):
        finder.add((*path, "to"), to, "Name a lead of another device.")


def _ways(finder: Finder, index: int, device: Table, leads: list[Table]) -> None:
    """A plug of three ways does not end four leads."""
    ways = device.get("ways")
    ending = [lead for lead in leads if not lead.get("plug") or lead.get("plug") == device.get("plug")]
    if isinstance(ways, int) and len(ending) > ways:
        accepted = f"{len(ending)} of its leads end in this plug: correct one of the two, or name their plug."
        finder.add(("devices", index, "ways"), f"{ways}", accepted)
