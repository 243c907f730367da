"""What the build sheet has read at each plug before its halves meet."""

from bom.data import folder
from bom.papers.build_sheet import build_sheet
from bom.papers.plug_volts import plug_volts
from bom.session import Session, run


def test_the_pack_plug_shows_the_pack_s_own_volts(sound: Session) -> None:
    """Worked: 20 cells x 4.20 V are 84.0 V full."""
    rows = {row["plug"]: row for row in plug_volts(sound.build)}
    for plug in ("pack plug", "charge port"):
        assert rows[plug]["volts"].endswith("to 84.0 V")
        assert "plus reads positive" in rows[plug]["way_round"]
    assert rows["phase joint"]["volts"] == "0 V"
    assert rows["plug of the charger"]["volts"] == "84.0 V or less"


def test_every_plug_of_the_bike_is_in_the_table(sound: Session) -> None:
    text = build_sheet(sound)
    for place in sound.build.loom.places:
        if place.family in ("power_connector", "signal_connector", "charge_port"):
            assert f"| ☐ | {place.name} |" in text


def test_lead_plugs_are_read_way_by_way() -> None:
    moped = run(folder("templates") / "jobs" / "moped-48.toml", folder("catalog"), lambda _: None)
    rows = {row["plug"]: row for row in plug_volts(moped.build)}
    grip = rows["twist grip lead plug"]
    assert "way 1, " in grip["way_round"]
    assert "5 V" in grip["way_round"]
