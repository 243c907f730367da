"""Packs in parallel: a fuse of its own for each string, ahead of the point where their pluses meet."""

from bom.loom.builder import Builder

STRINGS = "strings"
STRING_FUSE = "string fuse"


def lay_out_strings(build: Builder) -> None:
    """Place a fuse, a holder and two leads for each string; the strings' own minus leads are theirs.

    Their points are no part of the solved circuit, which knows the pack as one from where the strings meet.
    """
    pack = build.job.pack
    if pack.strings == 1 or not pack.string_fuses:
        return
    holder = f"{STRING_FUSE} holder"
    build.place(STRING_FUSE, "main_fuse", "fuse of each string, at its plus", STRINGS, "under seat", pack.strings)
    build.place(holder, "fuse_holder", "holder of the string fuse", STRINGS, "under seat", pack.strings)
    build.link("takes fuse", holder, STRING_FUSE)
    at_pack, meeting = ("pack string plus", "string fuse in"), ("pack plus of all", "string fuse out")
    _leads(build, holder, "string lead", "each string's plus to its fuse", at_pack, "")
    _leads(build, holder, "string link", "each string fuse to where the strings meet", meeting, STRING_FUSE)
    build.link("relieves", STRING_FUSE, "string lead")


def _leads(build: Builder, holder: str, name: str, title: str, ends: tuple[str, str], guard: str) -> None:
    """Lay one lead for each string, with a lug at the pack and one at its fuse."""
    count, run = build.job.pack.strings, build.runs.pack_to_fuse
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
        count=count,
    )
    build.lug(name, "pack", quantity=count)
    build.lug(name, "fuse", on=holder, quantity=count)
