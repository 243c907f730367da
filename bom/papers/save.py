"""Saving a workbook so that the same content gives the same bytes, with the results of its formulas in it."""

import re
from collections.abc import Mapping
from datetime import date, datetime
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from openpyxl import Workbook
from openpyxl.writer.excel import ExcelWriter

Result = float | str
EPOCH = (1980, 1, 1, 0, 0, 0)  # the earliest date a zip archive can hold
MODIFIED = re.compile(rb"(<dcterms:modified[^>]*>)[^<]*(</dcterms:modified>)")
FORMULA = re.compile(r'<c r="([A-Z]+[0-9]+)"([^>]*)><f>([^<]*)</f><v(?: ?/>|></v>)')


def saved(book: Workbook, day: date, results: Mapping[str, Mapping[str, Result]]) -> bytes:
    """Give the file's bytes.

    day      set as created and modified
    results  sheet title, then cell, then what its formula comes to: programs that show a file without
             computing it show these
    """
    moment = datetime(day.year, day.month, day.day)
    book.properties.creator = book.properties.lastModifiedBy = "donorbill"
    book.properties.created = moment
    raw = BytesIO()
    ExcelWriter(book, ZipFile(raw, "w")).save()  # not compressed yet: every part is looked through below
    paths = {
        f"xl/worksheets/sheet{index}.xml": results.get(title, {})
        for index, title in enumerate(book.sheetnames, start=1)
    }
    stamp = moment.strftime("%Y-%m-%dT%H:%M:%SZ").encode()
    out = BytesIO()
    with ZipFile(raw) as source, ZipFile(out, "w") as target:
        for name in source.namelist():
            content = source.read(name)
            if name == "docProps/core.xml":
                content = MODIFIED.sub(rb"\g<1>" + stamp + rb"\g<2>", content)
            elif name in paths:
                content = with_results(content.decode("utf-8"), paths[name]).encode("utf-8")
            entry = ZipInfo(name, EPOCH)
            entry.compress_type = ZIP_DEFLATED
            target.writestr(entry, content)
    return out.getvalue()


def with_results(xml: str, results: Mapping[str, Result]) -> str:
    """Put results beside the formulas of one sheet's XML."""

    def filled(match: re.Match[str]) -> str:
        cell, style, formula = match.groups()
        value = results[cell]
        kind = ' t="str"' if isinstance(value, str) else ""
        shown = _escaped(value) if isinstance(value, str) else repr(float(value))
        return f'<c r="{cell}"{style}{kind}><f>{formula}</f><v>{shown}</v>'

    return FORMULA.sub(filled, xml)


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
