"""Reading a catalogue folder: part tables, curves, offers and margins."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from bom.errors import Fault, InputError
from bom.parts import Curve, Parts
from bom.read.catalogue_checks import check_curves, check_exceptions, check_kits, check_offers
from bom.read.donor_matrix import Matrix, read_donor_matrix
from bom.read.families import (
    BY_NAME,
    COMMON,
    CURVES,
    FAMILIES,
    OFFERS,
    PRICE_BREAKS,
    SUPPLIERS,
    Column,
    Family,
)
from bom.read.goods_in import GoodsIn, read_goods_in
from bom.read.margins import Margins, read_margins
from bom.read.questions import Question, Way, read_questions, read_ways
from bom.read.states import State, read_states
from bom.read.tables import Table, read_table


@dataclass(frozen=True)
class Offer:
    """What one supplier asks for one part.

    breaks  (least packs, price of a pack), fewest packs first, in the offer's own currency and tax
    """

    offer_id: str
    part_id: str
    supplier: str
    supplier_code: str
    pack_size: float
    sold_by: str
    minimum_packs: int
    currency: str
    tax_included: bool
    tax_percent: float
    price_date: str
    lead_days: int
    breaks: tuple[tuple[int, float], ...]


@dataclass(frozen=True, eq=False)
class Catalogue:
    """Everything a shop can buy, and how it may be judged.

    places        file and line of each part, for the papers
    suppliers     full name of each supplier
    find_out      quick ways to a figure, the one for every other figure last
    ask_supplier  what to ask where a column is blank
    donor_matrix  what becomes of each kind of donor item on each kind of donor
    goods_in      tests on parts that arrive
    states        operating states that every bike is judged in
    """

    families: Mapping[str, Parts]
    offers: Mapping[str, tuple[Offer, ...]]
    margins: Margins
    places: Mapping[str, str]
    suppliers: Mapping[str, str]
    find_out: tuple[Way, ...]
    ask_supplier: tuple[Question, ...]
    goods_in: tuple[GoodsIn, ...]
    states: tuple[State, ...]
    donor_matrix: Matrix


def read_catalogue(folder: Path) -> Catalogue:
    """Read a catalogue folder.

    Raises InputError with every fault of every table.
    """
    if not folder.is_dir():
        accepted = "There is no such folder. Copy the catalogue that came with the program, and change the copy."
        raise InputError([Fault(str(folder), 0, "", "", accepted)])
    faults: list[Fault] = []
    lines = {name: read_table(folder / "curves" / f"{name}.csv", CURVES[name], faults) for name in CURVES}
    tables = {
        family.name: read_table(folder / "parts" / f"{family.name}.csv", _columns(family), faults)
        for family in FAMILIES
    }
    places = _places(tables, faults)
    suppliers = read_table(folder / "offers" / "suppliers.csv", SUPPLIERS, faults)
    offers = read_table(folder / "offers" / "offers.csv", OFFERS, faults)
    prices = read_table(folder / "offers" / "price_breaks.csv", PRICE_BREAKS, faults)
    check_curves(lines, tables, faults)
    check_kits(tables, faults)
    check_offers(offers, prices, suppliers, tables.values(), faults)
    margins = read_margins(folder / "settings" / "margins.csv", faults)
    ways = read_ways(folder / "settings" / "find_out.csv", faults)
    questions = read_questions(folder / "settings" / "ask_supplier.csv", faults)
    goods_in = read_goods_in(folder / "settings" / "goods_in.csv", faults)
    states = read_states(folder / "settings" / "states.csv", faults)
    matrix = read_donor_matrix(folder / "settings" / "donor_matrix.csv", faults)
    if faults:
        raise InputError(faults)
    curves = {name: _curve(table, CURVES[name][0].name) for name, table in lines.items()}
    families = {family.name: _parts(family, tables[family.name], curves) for family in FAMILIES}
    names = {str(row["supplier"]): str(row["name"]) for row in suppliers.rows}
    return Catalogue(
        families, _offers(offers, prices), margins, places, names, ways, questions, goods_in, states, matrix
    )


def _columns(family: Family) -> tuple[Column, ...]:
    return (*COMMON, *family.columns)


def _curve(table: Table, key: str) -> Curve:
    grouped: dict[str, list[Mapping[str, object]]] = defaultdict(list)
    for row in table.rows:
        grouped[str(row[key])].append(row)
    return {part: tuple(rows) for part, rows in grouped.items()}


def _parts(family: Family, table: Table, curves: Mapping[str, Curve]) -> Parts:
    """Turn a table into columns, in the order of the ids: the order of a file's rows means nothing."""
    columns = _columns(family)
    rows = sorted(table.rows, key=lambda row: str(row["part_id"]))
    return Parts(
        family.name,
        tuple(str(row["part_id"]) for row in rows),
        {
            column.name: np.array([row[column.name] for row in rows], dtype=np.float64)
            for column in columns
            if column.kind == "number"
        },
        {column.name: tuple(str(row[column.name]) for row in rows) for column in columns if column.kind != "number"},
        curves,
    )


def _places(tables: Mapping[str, Table], faults: list[Fault]) -> dict[str, str]:
    places: dict[str, str] = {}
    for family, table in tables.items():
        known = {column.name for column in _columns(BY_NAME[family])}
        for row, line in zip(table.rows, table.lines, strict=True):
            part = str(row["part_id"])
            if part and part in places:
                faults.append(Fault(table.file, line, "part_id", part, f"This id is taken: {places[part]}."))
            places[part] = f"{Path(table.file).name} row {line}"
            check_exceptions(table.file, line, str(row["exceptions"]), known, faults)
    return places


def _offers(offers: Table, prices: Table) -> dict[str, tuple[Offer, ...]]:
    breaks: dict[str, list[tuple[int, float]]] = defaultdict(list)
    for row in prices.rows:
        breaks[str(row["offer_id"])].append((int(row["from_packs"]), float(row["pack_price"])))
    by_part: dict[str, list[Offer]] = defaultdict(list)
    for row in offers.rows:
        by_part[str(row["part_id"])].append(_offer(row, breaks[str(row["offer_id"])]))
    return {part: tuple(sorted(some, key=lambda offer: offer.offer_id)) for part, some in by_part.items()}


def _offer(row: Mapping[str, float | str], breaks: list[tuple[int, float]]) -> Offer:
    return Offer(
        offer_id=str(row["offer_id"]),
        part_id=str(row["part_id"]),
        supplier=str(row["supplier"]),
        supplier_code=str(row["supplier_code"]),
        pack_size=float(row["pack_size"]),
        sold_by=str(row["sold_by"]),
        minimum_packs=int(row["minimum_packs"]),
        currency=str(row["currency"]),
        tax_included=row["tax_included"] == "yes",
        tax_percent=float(row["tax_percent"]),
        price_date=str(row["price_date"]),
        lead_days=int(row["lead_days"]),
        breaks=tuple(sorted(breaks)),
    )
