"""A slip in one line of a job file hides no other fault, and each is told on its own line.

What counts as a slip is the TOML standard's (TOML 1.0.0, as read by tomllib); the slips are those builders make.
"""

import tomllib
from pathlib import Path

import pytest

from bom.errors import Fault
from bom.read.load_job import load_job
from bom.read.margins import shipped_margins
from bom.read.salvage import Salvaged, read_toml


def _bare(line: str) -> str:
    return line.partition("#")[0].strip()


STARTER = "templates/jobs/street-72.toml"


def read(text: str) -> tuple[Salvaged, list[Fault]]:
    faults: list[Fault] = []
    return read_toml("bike.toml", text, faults), faults


@pytest.fixture
def told(tmp_path: Path, project: Path):
    def tell(*edits: tuple[str, str]) -> list[tuple[int, str, str]]:
        text = (project / STARTER).read_text(encoding="utf-8")
        for old, new in edits:
            assert text.count(old) == 1, old
            text = text.replace(old, new)
        path, faults = tmp_path / "bike.toml", list[Fault]()
        path.write_text(text, encoding="utf-8")
        load_job(path, shipped_margins(), faults)
        lines = text.splitlines()
        return sorted((_bare(lines[fault.line - 1]), fault.place, _bare(fault.found)) for fault in faults)

    return tell


def test_a_sound_text_is_read_as_it_is() -> None:
    text = '[pack]\nseries = 20\n[[loads]]\nname = "horn"\non = [\n  "horn",\n]\n'
    salvaged, faults = read(text)
    assert (salvaged.data, salvaged.text, faults) == (tomllib.loads(text), text, [])


@pytest.mark.parametrize(
    ("slip", "line", "said"),
    [
        ("volts = 84 V", 2, 'Put a quantity with its unit in quotes, like "55 W".'),
        ("volts = 84,5", 2, "Write a decimal point"),
        ("kind = filament", 2, "Put words in quotes"),
        ("kept = yes", 2, "Write true or false, without quotes."),
        ("date = 20.11.2026", 2, "Write a date as year-month-day"),
        ("date = 20/11/2026", 2, "Write a date as year-month-day"),
        ('name = "horn', 2, "Close the quotes on the same line."),
        ("name =", 2, "Write a value behind the ="),
        ('name: "horn"', 2, "Write = between a key and its value"),
        ("name", 2, "Write a TOML key and value"),
        ('on = ["key", "horn"', 2, "Close the bracket"),
        ('on = ["key",\n  "horn",', 2, "Close the bracket"),
        ('on = ["key" "horn"]', 2, "Write a TOML key and value"),
        ("rates = { GBP = 1.16", 2, "Close the bracket"),
        ('note = """never\nclosed', 2, "Close the quotes on the same line."),
        ("other = 1\nother = 2", 3, "This key stands in line 2 already."),
    ],
)
def test_a_slip_is_told_on_its_line_and_the_rest_is_read(slip: str, line: int, said: str) -> None:
    salvaged, faults = read(f'[pack]\n{slip}\nlast = 1\n\n[motor]\nstud = 8\n[[loads]]\nname = "lamp"\n')
    assert [fault.line for fault in faults] == [line]
    assert faults[0].accepted.startswith(said)
    assert salvaged.data["motor"] == {"stud": 8}
    assert salvaged.data["loads"] == [{"name": "lamp"}]
    if '"""' not in slip:
        assert salvaged.data["pack"]["last"] == 1


@pytest.mark.parametrize("end", ["", "\n"])
def test_a_list_left_open_at_the_end(end: str) -> None:
    _, faults = read(f'[[loads]]\nname = "horn"\non = ["horn",{end}')
    assert [fault.line for fault in faults] == [3]


@pytest.mark.parametrize(
    ("heading", "read_as"),
    [("[pack", "pack"), ("pack]", "pack"), ("[pack bms]", "pack.bms"), ("[[loads]", "loads"), ("[loads]]", "loads")],
)
def test_a_bad_heading_keeps_its_keys_together(heading: str, read_as: str) -> None:
    salvaged, faults = read(f"[motor]\nstud = 8\n{heading}\nseries = 20\n")
    assert [(fault.line, fault.found) for fault in faults] == [(3, heading)]
    value = salvaged.data
    for step in read_as.split("."):
        value = value[step]
    assert value == ([{"series": 20}] if read_as == "loads" else {"series": 20})


def test_a_table_written_twice_is_told_and_read_whole() -> None:
    salvaged, faults = read("[pack]\nseries = 20\n[motor]\nstud = 8\n[pack]\nparallel = 4\n")
    assert [(fault.line, fault.accepted) for fault in faults] == [
        (5, "[pack] stands in line 1 already: move these keys there, or write [[pack]] each time if it is a list.")
    ]
    assert salvaged.data["pack"] == {"series": 20, "parallel": 4}


def test_a_list_and_a_single_table_of_one_name() -> None:
    salvaged, faults = read('[[loads]]\nname = "horn"\n[loads]\nname = "lamp"\n')
    assert [fault.line for fault in faults] == [3]
    assert faults[0].accepted == "Write [[loads]]: it is one entry of a list."
    assert salvaged.data["loads"] == [{"name": "horn"}, {"name": "lamp"}]


def test_a_list_inside_a_single_table() -> None:
    _, faults = read('loads = {name = "horn"}\nx =\n[[loads]]\nname = "lamp"\n')
    assert [fault.line for fault in faults] == [2, 3]
    assert "[[ ]]" in faults[1].accepted


def test_an_entry_whose_heading_was_forgotten_is_one_fault() -> None:
    salvaged, faults = read('[[loads]]\nname = "horn"\non = ["horn"]\n\nname = "lamp"\non = ["key"]\n')
    assert [(fault.line, fault.accepted) for fault in faults] == [
        (5, "A new entry begins here: write its heading above it, like [[loads]].")
    ]
    assert [load["name"] for load in salvaged.data["loads"]] == ["horn", "lamp"]


def test_sound_lists_and_long_texts_stay_sound_beside_a_slip() -> None:
    text = 'note = """one\n[two], three\n"""\nlist = [\n  [1, 2],\n  [3, 4],\n]\n'
    text += "[[loads]]\n[loads.sub]\nx = 1\n[pack]\ny =\n"
    salvaged, faults = read(text)
    assert [fault.line for fault in faults] == [12]
    assert salvaged.data["list"] == [[1, 2], [3, 4]]
    assert salvaged.data["loads"] == [{"sub": {"x": 1}}]


def test_feeds_that_are_no_words_are_told(told) -> None:
    assert [place for _, place, _ in told(('feeds = ["horn"]', 'feeds = [["horn"], ["horn"]]'))] == [
        "donor.items[4] (horn button).feeds[1]",
        "donor.items[4] (horn button).feeds[2]",
    ]


def test_a_heading_that_says_nothing_makes_nothing_missing() -> None:
    salvaged, faults = read("[]\nseries = 20\n")
    assert [fault.line for fault in faults] == [1]
    assert salvaged.explains(Fault("bike.toml", 0, "pack", "", "It is missing."))


def test_a_slip_hides_no_other_fault(told) -> None:
    assert told(
        ("parallel = 14", "parallel = 14 cells"),
        ('battery_peak = "160 A"', 'battery_peak = "16 A"'),
        ('feeds = ["horn"]', 'feeds = ["hoot"]'),
        ('lead_area = "25 mm²" ', 'lead_area = "25 litres" '),
        ("[money]", "[margins]\nfuse_load = 0.5\n\n[money]"),
    ) == [
        ('battery_peak = "16 A"', "controller.battery_peak", "16 A"),
        ('feeds = ["hoot"]', "donor.items[4] (horn button).feeds", "hoot"),
        ("fuse_load = 0.5", "margins.fuse_load", "fuse_load"),
        ('lead_area = "25 litres"', "motor.lead_area", "25 litres"),
        ("parallel = 14 cells", "", "parallel = 14 cells"),
    ]


def test_a_lost_line_makes_nothing_missing(told) -> None:
    """The name, the size and the cells are there, though their lines cannot be read."""
    assert told(
        ('name = "horn"\n', "name = horn\n"),
        ('name = "headlamp"\nkind = "filament"\npower = "60 W"', 'name = "headlamp"\nkind = "filament"\npower = 60 W'),
        ("series = 20 ", "series = 20 cells"),
        ('supply = "12 V"', "supply = 12 V"),
    ) == [
        ("name = horn", "", "name = horn"),
        ("power = 60 W", "", "power = 60 W"),
        ("series = 20 cells", "", "series = 20 cells"),
        ("supply = 12 V", "", "supply = 12 V"),
    ]


def test_a_misspelt_table_is_one_fault_and_its_values_are_checked(told) -> None:
    assert told(("[controller]", "[controler]"), ('battery_peak = "160 A"', 'battery_peak = "16 A"')) == [
        ("[controler]", "controler", "controler"),
        ('battery_peak = "16 A"', "controller.battery_peak", "16 A"),
    ]


def test_a_wrong_value_hides_no_check_between_tables(told) -> None:
    assert told(
        ("parallel = 14", "parallel = 0"),
        ('low_cut = "62 V"', 'low_cut = "90 V"'),
        ('battery_peak = "160 A"', 'battery_peak = "16 A"'),
        ('peak_time = "10 s"', 'peak_time = "ten"'),
        ('supply = "12 V"', 'supply = "24 V"'),
    ) == [
        ('battery_peak = "16 A"', "controller.battery_peak", "16 A"),
        ('low_cut = "90 V"', "pack.bms.low_cut", "90 V"),
        ("parallel = 0", "pack.parallel", "0"),
        ('peak_time = "ten"', "controller.peak_time", "ten"),
        ('supply = "24 V"', "donor.supply", "24 V"),
    ]


def test_a_load_without_a_name_is_one_fault(told) -> None:
    assert told(('name = "horn"\n', "")) == [("[[loads]]", "loads[6].name", "")]


def test_a_key_that_means_nothing_for_its_kind_is_a_fault(told) -> None:
    [(_, place, _)] = told(('name = "light switch"\n', 'name = "light switch"\ncontact = "opens to stop"\n'))
    assert place == "donor.items[3] (light switch)"


def test_a_file_that_is_not_utf_8_names_the_line_and_tells_the_rest(tmp_path: Path, project: Path) -> None:
    path, faults = tmp_path / "bike.toml", list[Fault]()
    text = (project / STARTER).read_text(encoding="utf-8").replace("series = 20 ", "series = 0 ")
    path.write_bytes(text.replace("Street twin", "Straßentwin").encode("latin-1", errors="replace"))
    load_job(path, shipped_margins(), faults)
    assert ("pack.series", "0") in {(fault.place, fault.found) for fault in faults}
    assert [fault.line for fault in faults if "UTF-8" in fault.accepted] == [5]


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "The file is empty."),
        (b" \n\n", "The file is empty."),
        ("[pack]\n".encode("utf-16"), "This is UTF-16 text: save the file as UTF-8."),
    ],
)
def test_a_file_that_is_no_job_says_why(content: bytes, said: str, tmp_path: Path) -> None:
    path, faults = tmp_path / "bike.toml", list[Fault]()
    path.write_bytes(content)
    load_job(path, shipped_margins(), faults)
    assert any(fault.accepted.startswith(said) for fault in faults)


def test_a_folder_is_no_job(tmp_path: Path) -> None:
    faults: list[Fault] = []
    assert load_job(tmp_path, shipped_margins(), faults) is None
    assert faults[0].accepted.startswith("This is no file")


@pytest.mark.parametrize(
    ("edit", "place"),
    [
        (('phase_peak = "280 A"', 'phase_peak = "100 A"'), "controller.phase_peak"),
        (('supply_max = "92 V"', 'supply_max = "30 V"'), "controller.supply_max"),
        (('feeds = ["horn"]', 'feeds = ["horn", "horn"]'), "donor.items[4] (horn button).feeds"),
        (('currency = "EUR"', 'currency = "euro"'), "money.currency"),
        (("rates = { GBP = 1.16 }", "rates = { gbp = 1.16 }"), "money.rates.gbp"),
    ],
)
def test_what_cannot_be_is_told(edit: tuple[str, str], place: str, told) -> None:
    assert [entry[1] for entry in told(edit)] == [place]
