"""The part families: which columns each catalogue table has, with units and accepted values.

A column's name ends in its unit. A blank cell means "not known"; zero means zero.
Adding a family is adding one entry here and one CSV of the same name.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

EVIDENCE = ("data sheet", "marked", "measured", "seller's word", "unknown")
YES_NO = ("yes", "no")


@dataclass(frozen=True)
class Column:
    """One column of a table.

    kind      "number" (a plain SI or named-unit number, blank allowed), "text" or "choice"
    choices   the accepted words of a choice; a blank is accepted unless required
    required  the cell may not be blank
    low       least number accepted
    high      greatest number accepted
    form      form of a text, "" for any
    """

    name: str
    kind: str = "number"
    choices: tuple[str, ...] = ()
    required: bool = False
    low: float = -math.inf
    high: float = math.inf
    form: str = ""

    @cached_property
    def at_most(self) -> str:
        """Name the column whose figure this one's may not pass; its own where there is none."""
        return "outside_mm" if self.name == "conductor_mm" else self.name.replace("_min_", "_max_")


# What a column of numbers accepts, by its name or else by the unit its name ends in. A figure outside is a
# slip of the pen or of the unit; where a formula takes less than could be written, its own span stands here.
SPANS: Mapping[str, tuple[float, float]] = {
    "v": (0, 2000),
    "a": (0, 5000),
    "coil_v": (1, 500),
    "coil_min_v": (0.5, 500),
    "rated_a": (0.001, 5000),
    "ma": (0, 10_000),
    "mv": (1, 1000),
    "w": (0, 100_000),
    "j": (0, 1_000_000),
    "s": (0, 1_000_000),
    "ms": (0, 10_000),
    "m": (0.01, 100),
    "c": (-40, 250),
    "mm": (0.1, 200),
    "mm2": (0.05, 120),
    "ohm": (0.1, 1_000_000),
    "uf": (0, 500_000),
    "ah": (0.1, 1000),
    "breaks_a": (0, 200_000),
    "dc_breaking_a": (0, 200_000),
    "lead_mm2": (0.08, 25),
    "conductor_mm": (0.3, 30),
    "outside_mm": (0.3, 150),
    "resistance_mohm_per_m": (0.1, 250),
    "stud_m": (2, 24),
    "efficiency_pct": (1, 100),
    "loading_factor": (0.1, 1),
    "conventional_fusing": (1, 10),
    "fraction": (0, 1),
    "multiple": (0, 1000),
    "ways": (1, 100),
    "poles": (1, 20),
    "contacts": (1, 20),
    "pins": (1, 20),
    "flashes_per_min": (1, 1000),
    "lugs": (1, 100),
    "wires": (1, 24),
    "pack_size": (0.001, 1_000_000),
    "minimum_packs": (1, 1_000_000),
    "from_packs": (1, 1_000_000),
    "pack_price": (0.001, 1_000_000),
    "tax_percent": (0, 100),
    "lead_days": (0, 1000),
}


@dataclass(frozen=True)
class Family:
    """One part family: its table's name, what the trade calls it, and its columns."""

    name: str
    title: str
    words: str
    columns: tuple[Column, ...]


def _number(name: str, *, required: bool = False) -> Column:
    low, high = SPANS[name] if name in SPANS else SPANS[name.rsplit("_", 1)[-1]]
    return Column(name, required=required, low=low, high=high)


def _numbers(*names: str) -> tuple[Column, ...]:
    return tuple(_number(name) for name in names)


def _text(*names: str) -> tuple[Column, ...]:
    return tuple(Column(name, "text") for name in names)


def _choice(name: str, *choices: str, required: bool = False) -> Column:
    return Column(name, "choice", choices, required)


def _yes_no(*names: str) -> tuple[Column, ...]:
    return tuple(_choice(name, *YES_NO) for name in names)


COMMON = (
    Column("part_id", "text", required=True),
    Column("name", "text", required=True),
    _choice("evidence", *EVIDENCE, required=True),
    Column("exceptions", "text"),
    Column("note", "text"),
)

_FUSE = (
    *_numbers("dc_volts_v", "ac_volts_v", "rated_a", "dc_breaking_a"),
    _choice("element", "full range", "partial range", required=True),
    *_text("body", "time_band", "rerating"),
    *_numbers("loading_factor", "conventional_fusing", "stud_m"),
)

_COIL = (
    *_numbers("coil_v", "coil_min_v", "coil_max_v", "coil_drop_out_v", "coil_pull_a", "coil_hold_a"),
    *_yes_no("suppressed"),
    _choice("duty", "continuous", "momentary"),
)

FAMILIES: tuple[Family, ...] = (
    Family(
        "converter",
        "DC-DC converter",
        "12 V supply, step-down, buck",
        (
            *_numbers("input_min_v", "input_max_v", "output_v", "output_a", "output_peak_a", "output_peak_s"),
            _choice("overload", "constant current", "hiccup", "latching"),
            *_yes_no("isolated"),
            *_numbers("isolation_v", "quiescent_ma", "sleep_ma", "output_leak_ma"),
            *_numbers("input_capacitance_uf", "efficiency_pct"),
            _choice("enable", "none", "12 V", "pack volts"),
            *_yes_no("potted"),
        ),
    ),
    Family("main_fuse", "main fuse", "pack fuse, strip fuse", _FUSE),
    Family("tap_fuse", "tap fuse", "auxiliary fuse, cartridge", _FUSE),
    Family("blade_fuse", "blade fuse", "car fuse", _FUSE),
    Family(
        "fuse_holder",
        "fuse holder",
        "fuse carrier, fuse base",
        (
            *_text("takes_body"),
            *_numbers("dc_volts_v", "rated_a", "wire_min_mm2", "wire_max_mm2", "stud_m"),
            *_yes_no("cover"),
            *_text("ip_code"),
        ),
    ),
    Family(
        "fuse_box",
        "fuse box",
        "fuse block",
        (
            *_text("takes_body"),
            *_numbers("ways", "dc_volts_v", "way_a", "bus_a", "wire_max_mm2"),
            *_text("ip_code"),
        ),
    ),
    Family(
        "contactor",
        "main contactor",
        "main relay, power relay",
        (*_numbers("dc_volts_v", "carry_a", "make_a"), *_COIL, *_yes_no("polarised"), *_numbers("stud_m")),
    ),
    Family(
        "relay",
        "relay",
        "cube relay, DC relay",
        (
            *_numbers("dc_volts_v", "carry_a", "make_a"),
            *_COIL,
            _choice("contact", "NO", "changeover"),
            *_yes_no("polarised"),
            *_numbers("wire_max_mm2"),
        ),
    ),
    Family(
        "precharge_resistor",
        "precharge resistor",
        "soft-start resistor",
        _numbers("resistance_ohm", "power_w", "pulse_j", "dc_volts_v"),
    ),
    Family(
        "closer",
        "contactor closer",
        "precharge timer, delay relay, bus sensor",
        (
            *_numbers("supply_min_v", "supply_max_v", "output_a", "delay_min_s", "delay_max_s"),
            *_yes_no("senses_bus"),
            *_numbers("senses_to_v", "gives_up_s"),
            *_yes_no("compares_with_pack", "lets_precharge_go"),
        ),
    ),
    Family(
        "key_switch",
        "key switch",
        "ignition switch, ignition lock",
        (
            _choice("contact", "opens to stop", "closes to stop"),
            *_numbers("dc_volts_v", "carry_a", "make_a", "contacts", "lead_mm2"),
        ),
    ),
    Family(
        "stop_switch",
        "stop switch",
        "kill switch, emergency stop",
        (
            _choice("kind", "mushroom", "bar", "lanyard", "side stand"),
            _choice("contact", "opens to stop", "closes to stop"),
            *_yes_no("latches"),
            *_numbers("dc_volts_v", "carry_a", "make_a", "lead_mm2"),
        ),
    ),
    Family(
        "cap_switch",
        "cap switch",
        "charge interlock, microswitch, lid switch",
        (
            _choice("contact", "opens to stop", "closes to stop"),
            *_numbers("dc_volts_v", "carry_a", "make_a", "lead_mm2"),
            *_yes_no("sealed"),
        ),
    ),
    Family(
        "bar_switch",
        "handlebar switch",
        "horn button, light switch, brake switch",
        (
            _choice(
                "kind",
                "start button",
                "horn button",
                "light switch",
                "dip switch",
                "indicator switch",
                "brake switch",
                required=True,
            ),
            _choice("contact", "closes when braking", "opens when braking"),
            *_numbers("dc_volts_v", "carry_a", "make_a", "contacts", "lead_mm2"),
        ),
    ),
    Family(
        "isolator",
        "hand isolator",
        "main switch, pull plug, DC breaker",
        (
            _choice("kind", "link plug", "hand switch", "breaker", required=True),
            *_numbers("dc_volts_v", "carry_a", "trip_a", "dc_breaking_a"),
            *_yes_no("polarised"),
            *_numbers("stud_m"),
        ),
    ),
    Family(
        "power_connector",
        "power connector",
        "battery plug, pack plug, phase joint",
        (
            _choice("kind", "plug", "joint", required=True),
            *_numbers("poles", "dc_volts_v", "ac_volts_v", "wire_min_mm2", "wire_max_mm2"),
            *_yes_no("touch_protected", "mates_live"),
            *_text("body", "keying", "ip_code"),
        ),
    ),
    Family(
        "signal_connector",
        "signal connector",
        "loom plug",
        (
            *_numbers("ways", "dc_volts_v", "wire_min_mm2", "wire_max_mm2"),
            *_yes_no("sealed"),
            *_text("body", "keying", "contact_part", "seal_part", "ip_code"),
        ),
    ),
    Family(
        "end_cap",
        "end cap",
        "closed-end cap, insulated end, shrink cap",
        (
            _choice("kind", "crimp", "heat-shrink", "push-on", required=True),
            *_numbers("dc_volts_v", "wire_min_mm2", "wire_max_mm2"),
            *_yes_no("sealed"),
        ),
    ),
    Family("contact", "contact pair", "pin and socket", _numbers("wire_min_mm2", "wire_max_mm2")),
    Family("seal", "wire seal", "cavity seal", _numbers("outside_min_mm", "outside_max_mm")),
    Family(
        "cable",
        "cable",
        "wire, lead",
        (
            *_numbers(
                "area_mm2",
                "resistance_mohm_per_m",
                "class_dc_v",
                "class_ac_v",
                "conductor_max_c",
                "conductor_mm",
                "outside_mm",
            ),
            _choice("insulation", "PVC", "XLPE", "silicone"),
            _choice("conductor_class", "1", "2", "5", "6"),
            *_text("colour"),
        ),
    ),
    Family(
        "lug",
        "cable lug",
        "ring terminal, eyelet",
        _numbers("area_min_mm2", "area_max_mm2", "stud_m", "terminal_max_c"),
    ),
    Family(
        "terminal",
        "crimp terminal",
        "tab, bullet, splice",
        (
            _choice("kind", "tab", "bullet", "ring", "splice", required=True),
            *_numbers("area_min_mm2", "area_max_mm2", "rated_a", "terminal_max_c"),
        ),
    ),
    Family(
        "sleeve",
        "sleeving and heat-shrink",
        "braid, conduit, shrink tube",
        (
            _choice("kind", "heat-shrink", "braid", "conduit", required=True),
            *_numbers("inside_max_mm", "inside_min_mm", "max_c"),
            *_text("colour"),
        ),
    ),
    Family(
        "meter",
        "meter",
        "voltmeter, battery gauge",
        (
            _choice("measures", "volts", "volts and amps", required=True),
            *_numbers("range_min_v", "range_max_v", "supply_min_v", "supply_max_v", "supply_ma"),
            _choice("supply_from", "measured volts", "12 V"),
            *_yes_no("isolated"),
            *_numbers("shunt_mv", "range_a"),
        ),
    ),
    Family(
        "post",
        "distribution post",
        "stud, busbar, junction",
        _numbers("dc_volts_v", "rated_a", "stud_m", "lugs"),
    ),
    Family(
        "splice",
        "splice block",
        "junction, lever connector, closed joint",
        (*_numbers("dc_volts_v", "rated_a", "wires", "wire_min_mm2", "wire_max_mm2"), *_yes_no("covered")),
    ),
    Family(
        "tail",
        "lamp tail",
        "return lead, earth tail, pigtail",
        (
            _choice("kind", "ring tail", "clip tail", "insulated holder", required=True),
            *_numbers("area_mm2", "rated_a", "dc_volts_v", "length_m", "conductor_max_c"),
        ),
    ),
    Family("shunt", "shunt", "current shunt", _numbers("rated_a", "drop_mv", "stud_m")),
    Family(
        "flasher",
        "flasher unit",
        "blinker relay, indicator relay",
        (
            *_numbers("supply_min_v", "supply_max_v", "load_min_w", "load_max_w", "pins"),
            _choice("polarity", "either", "negative earth", "positive earth"),
            *_numbers("flashes_per_min"),
        ),
    ),
    Family(
        "lamp",
        "lamp",
        "bulb, light unit, telltale",
        (
            _choice(
                "purpose",
                "head",
                "tail and stop",
                "indicator",
                "position",
                "instrument",
                "telltale",
                required=True,
            ),
            _choice("technology", "filament", "LED", required=True),
            *_numbers("supply_min_v", "supply_max_v", "power_w", "power_second_w"),
            *_text("base"),
            _choice("polarity", "either", "negative earth", "positive earth"),
            *_yes_no("road_mark"),
        ),
    ),
    Family(
        "pilot_lamp",
        "pilot lamp at pack volts",
        "live telltale, indicator lamp",
        (
            *_numbers("supply_min_v", "supply_max_v", "current_ma"),
            _choice("colour", "red", "amber", "green", "blue", "white"),
            *_numbers("hole_mm"),
            *_text("ip_code"),
        ),
    ),
    Family("horn", "horn", "hooter", _numbers("supply_min_v", "supply_max_v", "current_a")),
    Family(
        "clamp",
        "diode or clamp",
        "TVS, suppressor, freewheel diode",
        (
            _choice("kind", "two-way clamp", "one-way clamp", "plain diode", "ideal diode", required=True),
            *_numbers("standoff_v", "clamp_v", "peak_w", "rated_a", "reverse_v"),
        ),
    ),
    Family(
        "charger",
        "charger",
        "battery charger",
        (
            *_numbers("end_v", "output_a"),
            _choice("chemistry", "lithium-ion", "iron phosphate", "titanate", "lead-acid", "any"),
            *_yes_no("isolated"),
            *_numbers("standby_ma", "mains_min_v", "mains_max_v"),
            *_text("plug", "ip_code"),
        ),
    ),
    Family(
        "charge_port",
        "charge port",
        "charge inlet",
        (
            *_numbers("poles", "dc_volts_v", "rated_a", "wire_max_mm2"),
            *_yes_no("touch_protected"),
            *_text("plug_form"),
            *_yes_no("mate_included"),
            *_text("ip_code"),
        ),
    ),
    Family(
        "buffer_battery",
        "buffer battery",
        "12 V auxiliary battery",
        (*_numbers("nominal_v", "capacity_ah", "charge_min_v", "charge_max_v", "charge_max_a"), *_text("chemistry")),
    ),
    Family(
        "label",
        "label",
        "sticker, warning sign",
        (
            _choice(
                "purpose", "traction voltage", "isolator", "fuse table", "wait time", "live when parked", required=True
            ),
        ),
    ),
)

BY_NAME = {family.name: family for family in FAMILIES}

# Curves: one table each, rows keyed by part_id (or by curve name where many parts share one).
CURVES: dict[str, tuple[Column, ...]] = {
    # what a contact may break: only the printed points count, nothing between them is inferred
    "breaking_points": (
        Column("part_id", "text", required=True),
        _number("volts_v", required=True),
        _number("breaks_a", required=True),
        _number("time_constant_ms"),
        _choice("direction", "forward", "reverse", "both", required=True),
        _choice("evidence", *EVIDENCE, required=True),
    ),
    # what a connector carries, by the wire crimped in it and the air around it
    "connector_amps": (
        Column("part_id", "text", required=True),
        _number("area_mm2", required=True),
        _number("ambient_c", required=True),
        _number("carry_a", required=True),
        _choice("evidence", *EVIDENCE, required=True),
    ),
    # output a converter holds at an ambient, as a fraction of its label amps (from a data sheet only)
    "converter_derating": (
        Column("part_id", "text", required=True),
        _number("ambient_c", required=True),
        _number("fraction", required=True),
    ),
    # opening-time limits at multiples of the rating: earliest and latest, never a line between them
    "fuse_time_bands": (
        Column("time_band", "text", required=True),
        _number("multiple", required=True),
        _number("earliest_s"),
        _number("latest_s"),
        Column("source", "text", required=True),
    ),
    # fraction of the rating left at an ambient
    "fuse_rerating": (
        Column("rerating", "text", required=True),
        _number("ambient_c", required=True),
        _number("fraction", required=True),
        Column("source", "text", required=True),
    ),
}

# The figures that stand once together in a curve of that table: no formula can choose between two rows.
STANDS_ONCE = {
    "breaking_points": ("volts_v", "time_constant_ms", "direction"),
    "connector_amps": ("area_mm2", "ambient_c"),
    "converter_derating": ("ambient_c",),
    "fuse_time_bands": ("multiple",),
    "fuse_rerating": ("ambient_c",),
}

SUPPLIERS = (
    Column("supplier", "text", required=True),
    Column("name", "text", required=True),
    Column("country", "text"),
    Column("note", "text"),
)

OFFERS = (
    Column("offer_id", "text", required=True),
    Column("part_id", "text", required=True),
    Column("supplier", "text", required=True),
    Column("supplier_code", "text", required=True),
    _number("pack_size", required=True),
    _choice("sold_by", "piece", "metre", required=True),
    _number("minimum_packs", required=True),
    Column("currency", "text", required=True, form="currency"),
    _choice("tax_included", *YES_NO, required=True),
    _number("tax_percent", required=True),
    Column("price_date", "text", required=True, form="date"),
    _number("lead_days", required=True),
)

PRICE_BREAKS = (
    Column("offer_id", "text", required=True),
    _number("from_packs", required=True),
    _number("pack_price", required=True),
)
