"""Line numbers of TOML keys; paths follow what tomllib reads from the same text (TOML 1.0.0)."""

import tomllib

import pytest

from bom.read.locate import Lines

TEXT = """\
top = 1
a.b."c d" = {x = 1, y.z = "q"}
[pack]
series = 20
list = [
  {n = 1},
  # a remark
  {n = 2},
]
[[loads]]
power = "1 W"
[loads.sub]
q = 'x'
[[loads]]
"pow\\u0065r" = 2
[[loads.deep.er]]
k = 1
[over.under]
k = 1
[over]
k = 2
"""


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("top",), 1),
        (("a",), 2),
        (("a", "b", "c d", "y", "z"), 2),
        (("pack",), 3),
        (("pack", "series"), 4),
        (("pack", "list"), 5),
        (("pack", "list", 0, "n"), 6),
        (("pack", "list", 1, "n"), 8),
        (("loads",), 10),
        (("loads", 0, "power"), 11),
        (("loads", 0, "sub", "q"), 13),
        (("loads", 1), 14),
        (("loads", 1, "power"), 15),
        (("loads", 1, "deep", "er", 0, "k"), 17),
        (("over",), 20),
        (("over", "under"), 18),
    ],
)
def test_line_of_a_key(path: tuple[str | int, ...], line: int) -> None:
    assert Lines.of(TEXT).line(path) == line


def test_nearest_parent_stands_in_for_a_missing_key() -> None:
    lines = Lines.of(TEXT)
    assert lines.line(("pack", "parallel", "x")) == 3
    assert lines.line(("loads", 1, "name")) == 14
    assert lines.line(("nothing",)) == 0
    assert lines.line(()) == 0


def test_every_key_of_the_file_is_found() -> None:
    known = Lines.of(TEXT).by_path

    def check(path: tuple[str | int, ...], value: object) -> None:
        assert not path or path in known
        if isinstance(value, dict):
            for key, inner in value.items():
                check((*path, key), inner)
        elif isinstance(value, list):
            for index, inner in enumerate(value):
                check((*path, index), inner)

    check((), tomllib.loads(TEXT))


def test_broken_text_does_not_stop_the_search() -> None:
    assert Lines.of("a = 1\n[[[ = =\nb = 'x\n").line(("a",)) == 1


def test_a_place_tells_the_name_of_a_list_entry() -> None:
    lines = Lines.of('[[loads]]\nname = "tail lamp"\npower = "5 W"\n[[loads]]\nname = 3\n[pack]\nseries = 2\n')
    assert lines.place(("loads", 0, "power")) == "loads[1] (tail lamp).power"
    assert lines.place(("loads", 0)) == "loads[1] (tail lamp)"
    assert lines.place(("loads", 1, "name")) == "loads[2].name"
    assert lines.place(("pack", "series")) == "pack.series"


def test_names_that_fit_no_line_are_left_out_of_a_place() -> None:
    lines = Lines.of('loads = [{name = "a\\nb"}, {"name" = \'c "d"\'}]')
    assert lines.place(("loads", 0, "on")) == "loads[1].on"
    assert lines.place(("loads", 1, "on")) == 'loads[2] (c "d").on'
