"""The sheet of the fault walk."""

from bom.build import Build
from bom.circuit.fault import End
from bom.judge.verdict import Verdict
from bom.papers.looks import ALARM, AMPS, BOLD, NOTE, SECTION, TEXT, VERDICT_LOOKS, WHOLE, Look
from bom.papers.page import Heading, Page, four, some_of
from bom.papers.short_rows import ShortRow, celsius, hottest_words, seconds, short_rows

DASH = "–"
WAY, SLIM = "by way of the frame", 14  # as wide as its heading where no short finds home through the frame
SHORTS = (
    Heading("how it ends", 19, BOLD),
    Heading("shorted at", 38, BOLD),
    Heading("onto", 11),
    Heading("times", 7, WHOLE),
    Heading("least A", 8, AMPS),
    Heading("most A", 9, AMPS),
    Heading("fed by", 11),
    Heading("fuse", 17),
    Heading("not before s", 11, AMPS),
    Heading("opens by s", 9, AMPS),
    Heading("may open too", 14),
    Heading("hottest wire", 22),
    Heading("°C", 8, WHOLE),
    Heading("stands °C", 8, WHOLE),
    Heading(WAY, 44),
    Heading("what helps", 34),
)
ENDS: dict[End, Look] = {
    End.BURSTS: ALARM,
    End.BURNS: ALARM,
    End.NOT_KNOWN: VERDICT_LOOKS[Verdict.CANT_TELL],
    End.NEVER: VERDICT_LOOKS[Verdict.TIGHT],
    End.UNFUSED: VERDICT_LOOKS[Verdict.TIGHT],
    End.STUB: VERDICT_LOOKS[Verdict.TIGHT],
    End.LETS_GO: VERDICT_LOOKS[Verdict.TIGHT],
    End.NO_CURRENT: VERDICT_LOOKS[Verdict.NOT_ASKED],
}
MOST_POINTS = 4
MANY_A = 100.0  # from here on no fraction is printed


def write_shorts(page: Page, build: Build) -> None:
    """Write the shorts, worst first, alike ones in one row."""
    page.put(1, 1, "Shorts at every point, worst first", SECTION)
    page.line(
        2,
        "Metal on metal at each point of the loom in turn, onto its return and onto the frame; alike ones share a row "
        "and show their worst figures. An arc carries less and may never open a fuse. It is evidence and no approval; "
        "do not try a short on the bike.",
        NOTE,
        len(SHORTS),
    )
    rows = short_rows(build)
    framed = any(row.path for row in rows)
    page.heading(3, [column if framed or column.text != WAY else Heading(WAY, SLIM) for column in SHORTS])
    for index, short in enumerate(rows, start=4):
        page.row(index, _cells(short), SHORTS)
        page.put(index, 1, short.end.word, ENDS.get(short.end, TEXT))
        for column, amps in ((5, short.low_a), (6, short.high_a)):
            if amps >= MANY_A:
                page.put(index, column, round(amps), WHOLE)
    if not rows:
        page.line(4, "Nothing could be walked.", TEXT, len(SHORTS))
    page.sheet.auto_filter.ref = f"A3:P{3 + len(rows)}"


def _cells(row: ShortRow) -> tuple[object, ...]:
    flows = row.end != End.NO_CURRENT
    where = (row.end.word, some_of(row.points, MOST_POINTS), row.to, len(row.points))
    amps = (round(four(row.low_a), 1), round(four(row.high_a), 1), _fed(row))
    fuse = (row.fuse or "none", *(seconds(value, flows) for value in (row.earliest_s, row.latest_s)))
    stands = round(row.stands_c) if row.hot else DASH
    hot = (row.also_opens or DASH, hottest_words(row), celsius(row.hot), stands)
    return (*where, *amps, *fuse, *hot, ", ".join(row.path) or DASH, row.cure)


def _fed(row: ShortRow) -> str:
    return f"{row.source}, limited" if row.limited else row.source or DASH
