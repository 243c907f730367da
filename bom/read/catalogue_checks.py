"""What is wrong between the tables of a catalogue: names that lead nowhere, and figures that stand twice."""

from collections.abc import Iterable, Mapping, Sequence

from bom.errors import Fault
from bom.read.families import CURVES, EVIDENCE, STANDS_ONCE
from bom.read.tables import Table, check_known


def check_curves(curves: Mapping[str, Table], tables: Mapping[str, Table], faults: list[Fault]) -> None:
    """Find curves of no part, parts that name no curve, and two rows of a curve for one figure."""
    for name, table in curves.items():
        key = CURVES[name][0].name
        if key == "part_id":
            check_known(table, key, tables.values(), "No part table holds this id.", faults)
        for parts in tables.values() if key != "part_id" else ():
            if any(key in row for row in parts.rows):
                check_known(parts, key, (table,), f"Name a curve of {name}.csv.", faults)
        _check_once(table, (key, *STANDS_ONCE[name]), faults)


def check_kits(tables: Mapping[str, Table], faults: list[Fault]) -> None:
    """Find plugs whose contact or seal is in no table, or whose contact does not take the wires they are sold for."""
    plugs, contacts, seals = (tables[name] for name in ("signal_connector", "contact", "seal"))
    if not (contacts.readable and seals.readable):
        return
    takes = {row["part_id"]: (row["wire_min_mm2"], row["wire_max_mm2"]) for row in contacts.rows}
    known = {"contact_part": takes.keys() | contacts.dropped, "seal_part": {row["part_id"] for row in seals.rows}}
    known["seal_part"] |= seals.dropped
    for row, line in zip(plugs.rows, plugs.lines, strict=True):
        for column, ids in known.items():
            if row[column] and row[column] not in ids:
                accepted = f"Name a part of {column.removesuffix('_part')}.csv."
                faults.append(Fault(plugs.file, line, column, str(row[column]), accepted))
        least, most = (float(str(end)) for end in takes.get(row["contact_part"], ("nan", "nan")))
        for column in ("wire_min_mm2", "wire_max_mm2"):
            own = float(str(row[column]))
            if own < least or own > most:
                accepted = f"Its contact {row['contact_part']} takes {least:g} to {most:g} mm²."
                faults.append(Fault(plugs.file, line, column, f"{own:g}", accepted))


def _check_once(table: Table, columns: Sequence[str], faults: list[Fault]) -> None:
    """No formula can choose between two rows for one figure."""
    seen: dict[tuple[object, ...], int] = {}
    for row, line in zip(table.rows, table.lines, strict=True):
        figure = tuple(row[column] for column in columns)
        first = seen.setdefault(figure, line)
        if first != line:
            accepted = f"{row[columns[0]]} has a row for this figure already, line {first}: keep one of them."
            faults.append(Fault(table.file, line, columns[1], f"{row[columns[1]]}", accepted))


def check_exceptions(file: str, line: int, text: str, known: set[str], faults: list[Fault]) -> None:
    """Find exceptions that name no column or no evidence."""
    for entry in filter(None, (part.strip() for part in text.split(";"))):
        column, _, evidence = (piece.strip() for piece in entry.partition("="))
        if column not in known or evidence not in EVIDENCE:
            faults.append(
                Fault(
                    file,
                    line,
                    "exceptions",
                    entry,
                    f"Write column=evidence, evidence being one of: {', '.join(EVIDENCE)}.",
                )
            )


def check_offers(offers: Table, prices: Table, suppliers: Table, parts: Iterable[Table], faults: list[Fault]) -> None:
    """Find names that lead nowhere, or stand twice, between the tables of offers and parts."""
    check_known(offers, "part_id", parts, "No part table holds this id.", faults)
    check_known(offers, "supplier", (suppliers,), "Name a supplier of suppliers.csv.", faults)
    check_known(offers, "offer_id", (prices,), "Give it a price in price_breaks.csv.", faults)
    check_known(prices, "offer_id", (offers,), "No offer has this id.", faults)
    _check_once(prices, ("offer_id", "from_packs"), faults)
    seen: set[object] = set()
    for row, line in zip(offers.rows, offers.lines, strict=True):
        if row["offer_id"] in seen:
            faults.append(Fault(offers.file, line, "offer_id", str(row["offer_id"]), "Write each offer id once."))
        seen.add(row["offer_id"])
