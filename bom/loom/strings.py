"""Packs in parallel: a fuse of its own for each string, ahead of the point where their pluses meet."""

from bom.loom.builder import Builder

STRINGS = "strings"
STRING_FUSE = "string fuse"


def lay_out_strings(build: Builder) -> None:
    """Place a fuse, a holder and two leads for each string; the strings' own minus leads are theirs.

    Their points are no part of the solved circuit, which knows the pack as one from where the strings meet.
    """
    pack, run = build.job.pack, build.runs.pack_to_fuse
    if pack.strings == 1 or not pack.string_fuses:
        return
    holder = f"{STRING_FUSE} holder"
    for name, family, title in (
        (STRING_FUSE, "main_fuse", "fuse of each string, at its plus"),
        (holder, "fuse_holder", "holder of the string fuse"),
    ):
        build.place(name, family, title, STRINGS, "under seat", pack.strings)
    build.link("takes fuse", holder, STRING_FUSE)
    for name, title, ends, guard in (
        ("string lead", "each string's plus to its fuse", ("pack string plus", "string fuse in"), ""),
        (
            "string link",
            "each string fuse to where the strings meet",
            ("pack plus of all", "string fuse out"),
            STRING_FUSE,
        ),
    ):
        build.wire(
            name,
            title,
            STRINGS,
            "under seat",
            ends,
            run,
            guard=guard,
            part_of_m=2 * run,
            together=build.margins.pair_wires,
            count=pack.strings,
        )
        build.lug(name, "pack", quantity=pack.strings)
        build.lug(name, "fuse", on=holder, quantity=pack.strings)
    build.link("relieves", STRING_FUSE, "string lead")
