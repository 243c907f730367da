"""The job file: what a builder may say about one bike, and what is assumed where they do not."""

import datetime
from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, field_validator, model_validator

from bom.physics.lamp_categories import FILAMENTS, LEDS, categories_of
from bom.read.job_devices import Device
from bom.read.quantity import quantity
from bom.read.registration import Registration
from bom.read.section import Section

MOST_PACK_V = 200.0
MOST_FILAMENT_W = 130.0


def _currency(code: str) -> str:
    if not (len(code) == 3 and code.isascii() and code.isupper()):
        raise ValueError("Write a three-letter code in capitals, like EUR.")
    return code


Volts = Annotated[float, quantity("voltage", 1, MOST_PACK_V)]
Amps = Annotated[float, quantity("current", 0.001, 2000)]
AmpsOrNone = Annotated[float, quantity("current", 0, 2000)]
# Motor drives: below an ampere the wire a drop allows is longer than the formula of the weakest short takes.
DriveAmps = Annotated[float, quantity("current", 1, 2000)]
Watts = Annotated[float, quantity("power", 0.05, 2000)]
# Resistances and areas: what the formulas of pack and cable take.
CellOhms = Annotated[float, quantity("resistance", 5e-5, 0.2)]
PackOhms = Annotated[float, quantity("resistance", 1e-4, 10)]
WindingOhms = Annotated[float, quantity("resistance", 1e-4, 100)]
BusFarads = Annotated[float, quantity("capacitance", 5e-5, 0.1)]
SmallFarads = Annotated[float, quantity("capacitance", 1e-8, 0.01)]
Seconds = Annotated[float, quantity("time", 0.01, 86400)]
AmpHours = Annotated[float, quantity("charge", 0.5, 1000)]
Metres = Annotated[float, quantity("length", 0.01, 10)]
Area = Annotated[float, quantity("area", 0.1, 120)]
Celsius = Annotated[float, quantity("temperature", -20, 120)]
Currency = Annotated[str, AfterValidator(_currency)]
Rate = Annotated[float, Field(gt=0, le=100_000, allow_inf_nan=False)]
FlashRate = Annotated[float, Field(ge=1, le=1000, allow_inf_nan=False)]

Condition = Literal["always", "key", "riding", "night", "brake", "indicate", "horn", "rain", "charging"]
Cells = Literal["full", "nominal", "empty", "highest"]
Traction = Literal["none", "idle", "continuous", "peak", "regeneration", "charging"]
KeyWish = Literal["12 V", "12 V, sleeping converter", "pack volts", "pack volts, sleeping converter", "cheapest"]
Keep = Literal["yes", "if it passes", "no"]
# What the controller can do through a closed contactor alone.
THROUGH_THE_CONTACTOR = ("continuous", "peak", "regeneration")


class Money(Section):
    """Currency of the papers, and what one unit of another is worth in it."""

    currency: Currency = Field("EUR", description="currency of every price in the papers")
    rates: dict[Currency, Rate] = Field({}, description="worth of one unit of another currency in ours")
    tax_reclaimed: bool = Field(True, description="prices are compared and summed without sales tax")


class Bms(Section):
    """Limits of the battery management system."""

    discharge: Amps | None = Field(None, description="continuous discharge limit")
    charge: Amps | None = Field(None, description="continuous charge limit, regen included")
    low_cut: Volts | None = Field(None, description="pack volts at which it opens")
    opens: Literal["plus", "minus"] | None = Field(
        None, description="pole it opens; minus: the protected minus behind it and the cells' own minus are two points"
    )
    standby: Amps = Field(0.005, description="own consumption; a guess from common practice")


class Pack(Section):
    """The traction battery."""

    chemistry: Literal["NMC", "NMC-HV", "NCA", "LCO", "LMO", "LFP", "LTO", "lead-acid"] = Field(
        description="of the cells; NMC where a seller only says lithium-ion"
    )
    series: int | None = Field(None, ge=1, le=120, description="cells in series (lead-acid: 2 V cells)")
    full_charge: Volts | None = Field(None, description="measured at full charge; stands over cells x volts")
    parallel: int = Field(1, ge=1, le=200, description="cells side by side")
    capacity: AmpHours | None = Field(None, description="amp-hours of the whole pack")
    cell_resistance: CellOhms | None = Field(None, description="direct-current resistance of one cell")
    pack_resistance: PackOhms | None = Field(None, description="of the whole pack at its terminals")
    strings: int = Field(1, ge=1, le=20, description="packs that can be joined in parallel")
    string_fuses: bool = Field(True, description="each string has a fuse of its own, where there are several")
    stud: int = Field(8, ge=4, le=12, description="metric bolt of the pack terminals")
    on_cell_minus: list[Literal["converter", "charger", "controller", "meter"]] | None = Field(
        None,
        description="what returns to the cells' own minus, ahead of the battery management; [] says nothing does; "
        "asked where it opens the minus",
    )
    bms: Bms = Field(Bms(), description="battery management limits")

    @model_validator(mode="after")
    def _has_volts(self) -> "Pack":
        if self.series is None and self.full_charge is None:
            raise ValueError('Give series (cells in series) or full_charge (measured, like "84.0 V").')
        return self


class Controller(Section):
    """The motor controller's limits, from its label or settings page."""

    supply_min: Volts | None = Field(None, description="lowest supply it runs on")
    supply_max: Volts | None = Field(None, description="highest supply it survives")
    battery_continuous: DriveAmps = Field(description="battery-side amps it draws without end")
    battery_peak: DriveAmps = Field(description="battery-side amps it draws in a burst")
    peak_time: Seconds = Field(10.0, description="length of the burst")
    peak_every: Seconds = Field(60.0, description="the burst comes back after this time")
    phase_continuous: DriveAmps | None = Field(None, description="motor-lead amps rms without end")
    phase_peak: DriveAmps = Field(description="motor-lead amps rms in a burst")
    over_voltage: Volts | None = Field(None, description="bus volts at which it cuts regeneration, or trips")
    regen: AmpsOrNone | None = Field(None, description="battery-side regeneration amps; leave out, or 0 A, for none")
    input_capacitance: BusFarads | None = Field(None, description="bus capacitors, as measured or printed")
    key_input: Literal["pack volts", "12 V", "none"] = Field(
        "pack volts", description="what wakes it; unsaid, laid for pack volts and asked"
    )
    key_return: Literal["own terminal", "pack minus"] | None = Field(
        None, description="where a 12 V key input comes back"
    )
    stop_return: Literal["own terminal", "pack minus"] | None = Field(
        None, description="where its 12 V stop input comes back; asked where the stop switch feeds nothing else"
    )
    key_current: Amps = Field(0.05, description="amps into the key input; a guess from common practice")
    key_capacitance: SmallFarads | None = Field(None, description="capacitors behind the key input")
    standby: Watts = Field(5.0, description="idle watts on the bus; builders report 2 to 12 W")
    stud: int = Field(8, ge=4, le=12, description="metric bolt of its battery and phase terminals")

    @field_validator("regen")
    @classmethod
    def _without(cls, amps: float | None) -> float | None:
        return amps or None


class Motor(Section):
    """The motor's own leads."""

    lead_area: Area | None = Field(None, description="copper of the motor's own tails; none when it has studs")
    stud: int = Field(8, ge=4, le=12, description="metric bolt of the joint to the phase leads")
    winding_resistance: WindingOhms | None = Field(None, description="as an ohm-meter reads between two of its leads")
    back_emf: Volts | None = Field(None, description="highest volts it makes by itself, at top speed downhill")


# Donor items that open a current.
CONTACTS = (
    "key switch",
    "kill switch",
    "start button",
    "horn button",
    "light switch",
    "dip switch",
    "indicator switch",
    "brake switch",
    "side-stand switch",
    "clutch switch",
)
# Switches that some bikes have in the return of their loads.
SIDED = ("horn button", "start button", "brake switch", "light switch", "dip switch")
# Keys of a donor item that mean something for some kinds only.
ITEM_KEYS = {
    "contact": ("key switch", "kill switch", "brake switch"),
    "watts_min": ("flasher",),
    "watts_max": ("flasher",),
    "pins": ("flasher",),
    "supply_min": ("flasher",),
    "supply_max": ("flasher",),
    "polarity": ("flasher",),
    "senses": ("flasher",),
    "rate": ("flasher",),
    "wire": ("loom",),
    "at": ("brake switch",),
    "latches": ("kill switch",),
    "relay": ("kill switch", "start button", "light switch", "horn button", "brake switch"),
    "ways": ("fuse box",),
    "way": ("fuse box",),
    "fuses": ("fuse box",),
    "tested": CONTACTS,
    "lead": CONTACTS,
    "side": SIDED,
}


ItemKind = Literal[
    "key switch",
    "kill switch",
    "start button",
    "horn button",
    "light switch",
    "dip switch",
    "indicator switch",
    "brake switch",
    "flasher",
    "horn",
    "fuse box",
    "loom",
    "battery",
    "regulator",
    "alternator",
    "ignition",
    "starter relay",
    "starter motor",
    "ammeter",
    "fuel gauge",
    "speedometer",
    "rev counter",
    "neutral switch",
    "oil switch",
    "side-stand switch",
    "clutch switch",
    "earth strap",
]


class Item(Section):
    """One thing the donor has, and whether the builder wants it kept."""

    name: str = Field(description="what the builder calls it")
    kind: ItemKind = Field(description="what it is")
    keep: Keep = Field("if it passes", description="kept when the rules pass it")
    feeds: list[str] = Field([], description="names of the loads it switches")
    contact: Literal["opens to stop", "closes to stop", "closes when braking", "opens when braking"] | None = Field(
        None,
        description="kill and key switches: opens or closes to stop; brake switches: closes or opens when braking",
    )
    at: Literal["bar", "rear"] | None = Field(None, description="brake switches: where it sits; unsaid, at the rear")
    side: Literal["live", "earth"] | None = Field(
        None, description="switches: before its loads or in their return; unsaid, it is laid before them"
    )
    contacts: int | None = Field(None, ge=1, le=12, description="separate contacts of a switch, as measured")
    dc_volts: Volts | None = Field(None, description="printed or measured DC volts")
    carries: Amps | None = Field(None, description="printed or measured amps")
    breaks: Amps | None = Field(None, description="DC amps it may break at those volts")
    watts_min: Watts | None = Field(None, description="flashers: least lamp watts a side")
    watts_max: Watts | None = Field(None, description="flashers: most lamp watts a side")
    pins: int | None = Field(None, ge=2, le=4, description="flashers: pins, counted")
    supply_min: Volts | None = Field(None, description="flashers: lowest supply printed; stands over what it served")
    supply_max: Volts | None = Field(None, description="flashers: highest supply printed; stands over what it served")
    polarity: Literal["either", "negative earth", "positive earth"] | None = Field(
        None, description="flashers: earth it is printed for; stands over what it served"
    )
    senses: Literal["load", "nothing"] | None = Field(
        None, description="flashers: whether it needs lamp watts to flash; nothing: it flashes without a lamp"
    )
    rate: FlashRate | None = Field(None, description="flashers: flashes a minute, counted")
    evidence: Literal["data sheet", "marked", "measured", "seller's word", "unknown"] = Field(
        "unknown", description="how its ratings are known"
    )
    relay: bool | None = Field(
        None,
        description="it pulls in a relay, which carries its loads; a kill switch that closes to stop pulls in one that "
        "opens the coil chain",
    )
    latches: bool | None = Field(
        None, description="kill switches: let go, it stays in stop; asked of one that works through a relay"
    )
    served: Amps | None = Field(None, description="amps the donor asked of it for years at its own volts")
    ways: int | None = Field(None, ge=1, le=40, description="fuse boxes: ways, counted; carries is then of its rail")
    way: Amps | None = Field(None, description="fuse boxes: largest fuse a way may take, as printed")
    fuses: Literal["blade mini", "blade medium", "blade maxi", "glass 6x30"] | None = Field(
        None, description="fuse boxes: what fuses it takes"
    )
    wire: Area | None = Field(None, description="looms: copper area of its lamp wires")
    lead: Area | None = Field(
        None, description="contacts: copper of its own leads, counted: strands x 0.785 x diameter²"
    )
    held: bool | None = Field(
        None, description="its bench test was passed; false: it goes. Only with reading; settles what is to be tested"
    )
    reading: str = Field("", description="what was read, and by which method; only with held")
    tested: Amps | None = Field(
        None, description="contacts: amps opened 20 times on 13.5 V DC with their own load; only with held = true"
    )

    @property
    def may_stay(self) -> bool:
        """Tell whether it may stand in the loom: the builder wants it, and no bench test was failed."""
        return self.keep != "no" and self.held is not False

    @model_validator(mode="after")
    def _has_keys_that_go_together(self) -> "Item":
        slips = [*self._without_effect(), *self._of_its_test(), *self._of_its_window()]
        if slips:
            raise ValueError(" ".join(slips))  # all at once
        return self

    def _without_effect(self) -> Iterator[str]:
        for key, kinds in ITEM_KEYS.items():
            if getattr(self, key) is not None and self.kind not in kinds:
                yield f"Leave out {key}: it is asked of a {' or '.join(kinds)} only."
        ends = "when braking" if self.kind == "brake switch" else "to stop"
        if self.contact is not None and self.kind in ITEM_KEYS["contact"] and not self.contact.endswith(ends):
            yield f'Write contact = "opens {ends}" or "closes {ends}" for a {self.kind}.'
        if self.relay and self.kind == "kill switch" and (self.keep != "yes" or self.contact != "closes to stop"):
            yield 'Write keep = "yes" and contact = "closes to stop" with relay: such a kill switch is tight at best.'

    def _of_its_test(self) -> Iterator[str]:
        if (self.held is None) == bool(self.reading.strip()):
            yield "Give held (true or false) and reading (what was read, by which method) together."
        if self.tested is not None and not self.held:
            yield "Give tested only with held = true and its reading."
        if self.held is False and self.keep == "yes":
            yield 'Write keep = "no": by its reading it did not hold.'

    def _of_its_window(self) -> Iterator[str]:
        for low, high in (("watts_min", "watts_max"), ("supply_min", "supply_max")):
            least, most = getattr(self, low), getattr(self, high)
            if least is not None and most is not None and most <= least:
                yield f"Write {high} above {low}, which is {least:g}."
        if self.senses == "nothing" and self.watts_min is not None:
            yield 'Leave out watts_min, or write senses = "load": what senses nothing needs no watts.'


class Donor(Section):
    """The bike as found."""

    supply: Literal["6 V", "12 V"] = Field(description="of its battery or lamps")
    lighting: Literal["AC", "mixed", "DC"] = Field(
        "DC", description="what fed the lamps; mixed: head and tail lamp from the coils, the rest from the battery"
    )
    switchgear: Literal["mechanical", "electronic"] = Field(
        "mechanical", description="electronic: its switches tell a module on a bus, which feeds the lamps"
    )
    earth: Literal["negative", "positive", "none"] = Field("negative", description="pole on the frame")
    lamp_return: Literal["frame", "wire"] = Field("frame", description="how lamp current comes back")
    items: list[Item] = Field([], description="its electrical parts")

    def fed_by_coils(self, load: "Load") -> bool:
        """Tell whether a load ran on alternating current: on a mixed bike the lamps that burn by night."""
        return self.lighting == "AC" or (self.lighting == "mixed" and load.burns_by_night)


class Load(Section):
    """One consumer on the 12 V side."""

    name: str = Field(description="what the builder calls it")
    kind: Literal["filament", "LED", "motor", "electronics", "coil"] = Field(description="how it draws current")
    power: Watts | None = Field(None, description="watts as printed, each; filaments to 130 W")
    current: Amps | None = Field(None, description="amps as measured, each")
    count: int = Field(1, ge=1, le=20, description="how many burn together")
    pieces: int | None = Field(None, ge=1, le=20, description="how many the bike has; indicators: unsaid, both sides")
    on: list[Condition] = Field(description="when it is on")
    circuit: str = Field("", description="loads of one circuit share a fuse and a feed wire")
    run: Literal["front", "rear", "dash"] = Field("front", description="which run of wire it hangs on")
    fit: Literal["donor", "new"] = Field("donor", description="donor's own, or to be bought")
    purpose: Literal["", "head", "tail and stop", "indicator", "position", "instrument", "telltale", "horn"] = Field(
        "", description="what a bought lamp or horn must be"
    )
    base: str = Field("", description="lamp base the holder takes")
    was: Watts | None = Field(None, description="watts the donor had there, when it changes")
    category: str = Field(
        "", description="category printed on the lamp (P21W, H4, W5W/LED); unsaid, the greatest of its watts counts"
    )
    same_lamp_as: str = Field("", description="load whose lamp holds this light too")
    telltale: Literal["between the sides", "through two diodes", "one a side"] | None = Field(
        None, description="indicator telltales: how it is wired; its diodes are bought; unsaid, each side feeds its own"
    )

    @property
    def is_bought(self) -> bool:
        """Tell whether a lamp or horn is bought for it: not where another load's lamp holds its light."""
        return self.fit == "new" and bool(self.purpose) and not self.same_lamp_as

    @property
    def bought(self) -> int:
        """Give the number to buy: as said, else both sides of what indicates, else those that burn together."""
        return self.pieces or (2 * self.count if "indicate" in self.on and not self.is_shared else self.count)

    def _is_of_its_category(self) -> bool:
        if self.kind == "LED":
            return self.category in LEDS and self.power is not None and self.power <= LEDS[self.category].watts
        return self.kind == "filament" and (self.category, self.power) in FILAMENTS

    @property
    def burns_by_night(self) -> bool:
        """Tell whether it is a lamp that burns by night; one that burns whenever the bike is ridden does."""
        return self.kind in ("filament", "LED") and bool({"night", "riding"} & set(self.on))

    @property
    def is_telltale(self) -> bool:
        """Tell whether it tells of the indicators rather than being one."""
        return "indicate" in self.on and (self.purpose == "telltale" or self.telltale is not None)

    @property
    def is_between(self) -> bool:
        """Tell whether it lies across left and right and comes home through the lamps of the far side."""
        return self.telltale == "between the sides"

    @property
    def has_diodes(self) -> bool:
        """Tell whether it hangs on left and right through a diode each."""
        return self.telltale == "through two diodes"

    @property
    def is_shared(self) -> bool:
        """Tell whether one lamp tells of both sides."""
        return self.is_between or self.has_diodes

    @model_validator(mode="after")
    def _has_size(self) -> "Load":
        if (self.power is None) == (self.current is None):
            raise ValueError('Give either power (like "21 W") or current (like "3 A") for each load.')
        if self.kind == "filament" and self.power is not None and not 0.5 <= self.power <= MOST_FILAMENT_W:
            raise ValueError(f'Write a filament from "0.5 W" to "{MOST_FILAMENT_W:g} W"; give anything else as amps.')
        if self.category and not self._is_of_its_category():
            listed = categories_of(printed_w=self.power or 0.0) if self.kind == "filament" else tuple(LEDS)
            raise ValueError(f"Leave out category, or write one of this kind and watts: {', '.join(listed) or 'none'}.")
        if self.telltale is not None and "indicate" not in self.on:
            raise ValueError('Leave out telltale: it is asked of what is on with "indicate" only.')
        if self.fit == "new" and not self.same_lamp_as:
            if self.kind in ("filament", "LED") and not (self.purpose and self.base):
                raise ValueError('A lamp to be bought needs purpose (like "indicator") and base (like "BA15s").')
            if self.kind == "motor" and not self.purpose:
                raise ValueError(
                    'A horn to be bought needs purpose = "horn". '
                    'What is bought elsewhere is of kind "electronics" or "coil" and needs none.'
                )
        return self


class Runs(Section):
    """Lengths one way along the wire; a return is a wire of its own."""

    pack_to_fuse: Metres = Field(0.15, description="pack plus to the main fuse")
    fuse_to_contactor: Metres = Field(
        0.4, description="main fuse to the contactor, shared evenly by the pieces between"
    )
    contactor_to_controller: Metres = Field(0.4, description="contactor to controller plus")
    controller_to_pack: Metres = Field(
        0.8, description="controller minus back to the pack, shared evenly by its pieces"
    )
    controller_to_motor: Metres = Field(0.7, description="each phase lead")
    tap_stub: Metres = Field(0.1, description="post of the taps to each tap fuse; no fuse guards it")
    pack_to_converter: Metres = Field(0.6, description="tap to the converter, and its return")
    converter_to_fuse_box: Metres = Field(0.5, description="12 V supply, and its return")
    key: Metres = Field(1.4, description="fuse box or tap to the key switch and back, each way")
    meter: Metres = Field(1.4, description="pack tap to the meter")
    charge_port: Metres = Field(0.8, description="pack tap to the charge port, and its return")
    front: Metres = Field(1.5, description="fuse box to the front loads")
    rear: Metres = Field(1.2, description="fuse box to the rear loads")
    dash: Metres = Field(1.4, description="fuse box to the instruments")


class Ambient(Section):
    """Air around the parts on the hottest day, by zone."""

    box: Celsius = Field(50.0, description="closed box beside the controller")
    frame: Celsius = Field(40.0, description="open under the tank")
    bar: Celsius = Field(40.0, description="handlebar and headlamp shell")
    under_seat: Celsius = Field(45.0, description="under the seat")


class Wishes(Section):
    """What the builder or the owner wants."""

    key: KeyWish = Field(
        "12 V",
        description="what the key switches: relays at 12 V; these and the converter's enable, from a buffer battery; "
        "the converter's feed; the converter's enable at pack volts; or whatever passes at least cost",
    )
    contactor: bool = Field(True, description="a contactor opens the traction circuit")
    precharge: bool = Field(True, description="the bus is filled through a resistor before the contactor closes")
    precharge_switched: bool = Field(
        True, description="a relay opens the precharge path; false: its resistor lies across the contactor for good"
    )
    precharge_time: Seconds = Field(3.0, description="time the timer or controller allows")
    pack_plug: bool = Field(True, description="the pack can be unplugged")
    isolator: Literal["link plug", "hand switch", "breaker", "none"] = Field(
        "link plug", description="a break that works by hand"
    )
    buffer_battery: bool | None = Field(
        None,
        description="a small 12 V battery beside the converter, which lights the lamps when the pack lets go; unsaid, "
        "none is bought and the papers ask",
    )
    rail_meter: bool | None = Field(
        None, description="a voltmeter of the 12 V side on the dash; unsaid, it is bought with a buffer battery"
    )
    rail_clamp: bool = Field(
        True, description="a clamp across the 12 V supply, bought only where the converter is not isolated"
    )
    pilot_lamp: bool = Field(False, description="a lamp on the dash burns while the pack is on the traction side")
    meter: Literal["volts", "volts and amps", "none"] = Field("volts", description="battery gauge")
    charger: bool = Field(True, description="a charger is bought")
    charge_current: Amps = Field(10.0, description="charging amps wanted")
    charge_port: bool = Field(True, description="a charge socket on the bike")
    two_wire: bool | None = Field(
        None, description="lamp returns by wire, old shells by tails; unsaid, as the donor has it"
    )
    tight: bool = Field(False, description="parts that meet the duty without the margin may be chosen")

    @property
    def bus_stays_live(self) -> bool:
        """Tell whether the controller stays at pack volts past the open contactor."""
        return self.contactor and self.precharge and not self.precharge_switched

    @property
    def shows_rail(self) -> bool:
        """Tell whether a meter of the 12 V side is bought: as said, else with a buffer battery."""
        return bool(self.buffer_battery) if self.rail_meter is None else self.rail_meter


class StateSection(Section):
    """An operating state of this bike, beside those of the catalogue; one of the same name stands in its place."""

    name: str = Field(min_length=1, description="what the builder calls it")
    on: list[Condition] = Field(description="what is on in it, as the loads say it")
    cells: Cells = Field("nominal", description="how the cells stand; highest is the bus as high as it goes")
    air: Celsius | None = Field(None, description="air about everything; unsaid, the hottest of each zone")
    key: bool = Field(True, description="the key is on")
    contactor: bool = Field(True, description="the main contactor is closed")
    traction: Traction = Field("idle", description="what the controller does")

    @model_validator(mode="after")
    def _drives_through_the_contactor(self) -> "StateSection":
        if not self.contactor and self.traction in THROUGH_THE_CONTACTOR:
            raise ValueError(f'Write contactor = true: traction "{self.traction}" runs through it.')
        return self


class Received(Section):
    """A part that arrived in place of the one that was ordered."""

    place: str = Field(description="place it is to stand at, as the papers name it")
    part: str = Field(description="its id in the catalogue")


class JobFile(Section):
    """One bike's conversion."""

    title: str = Field(description="printed on the papers")
    customer: str = Field("", description="name printed on the papers")
    date: datetime.date = Field(description="date printed on the papers, like 2026-11-20")
    pack: Pack
    controller: Controller
    motor: Motor = Field(Motor(), description="motor leads")
    donor: Donor
    loads: list[Load]
    devices: list[Device] = Field([], description="things with control leads, and their leads")
    runs: Runs = Field(Runs(), description="wire lengths")
    ambient: Ambient = Field(Ambient(), description="temperatures")
    wishes: Wishes = Field(Wishes(), description="arrangements")
    money: Money = Field(Money(), description="currency")
    states: list[StateSection] = Field([], description="operating states of this bike")
    registration: Registration = Field(Registration(), description="what the authority is asked first")
    received: list[Received] = Field([], description="what arrived in place of what was ordered")
    pins: dict[str, str] = Field({}, description="part to use at a place, whatever is cheaper")
    margins: dict[str, float] = Field({}, description="margins set otherwise than in the margins table")
