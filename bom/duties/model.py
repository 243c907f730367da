"""What a place asks of the part in it, by name."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from bom.span import Span
from bom.trace import Origin

# Every duty a rule may ask for: name -> (dimension, meaning).
GLOSSARY: Mapping[str, tuple[str, str]] = {
    "voltage_v": ("voltage", "highest volts the part must hold off, direct current"),
    "ac_voltage_v": ("voltage", "highest volts between motor leads, alternating current rms"),
    "lowest_v": ("voltage", "lowest volts at which the part must still work"),
    "carry_a": ("current", "amps carried without end"),
    "peak_a": ("current", "amps of the longest burst"),
    "peak_s": ("time", "length of the burst"),
    "make_a": ("current", "amps at the moment of closing"),
    "break_a": ("current", "amps to be opened"),
    "break_v": ("voltage", "volts across the opening contact"),
    "time_constant_ms": ("", "inductance over resistance of the opened circuit, in milliseconds"),
    "reverse_a": ("current", "amps that flow the other way (regeneration, charging)"),
    "fault_high_a": ("current", "greatest fault current"),
    "fault_low_a": ("current", "least fault current"),
    "ambient_c": ("temperature", "air around the part"),
    "length_m": ("length", "length of the wire"),
    "least_area_mm2": ("area", "least copper of a wire that no fuse guards"),
    "tail_mm2": ("area", "copper of a tail that a lug goes on"),
    "lead_least_mm2": ("area", "copper of the thinnest lead it takes"),
    "lead_most_mm2": ("area", "copper of the thickest lead it takes"),
    "drop_v": ("voltage", "volts the wire may lose"),
    "together": ("", "loaded wires lying together"),
    "stud_m": ("", "metric bolt of the terminal"),
    "coil_low_v": ("voltage", "lowest volts at the coil"),
    "coil_high_v": ("voltage", "highest volts at the coil"),
    "output_a": ("current", "12 V amps of the worst state"),
    "output_peak_a": ("current", "12 V amps when the largest filament lamp lights cold"),
    "rail_low_v": ("voltage", "lowest volts of the 12 V side"),
    "rail_high_v": ("voltage", "highest volts of the 12 V side"),
    "capacitance_f": ("capacitance", "bus capacitors to be filled"),
    "precharge_s": ("time", "time allowed for filling the bus"),
    "bus_load_w": ("power", "watts drawn from the bus while it fills"),
    "meter_v": ("voltage", "highest volts to be shown"),
    "meter_low_v": ("voltage", "lowest volts to be shown"),
    "scale_v": ("voltage", "top of a range on which the 12 V side can still be read"),
    "flasher_w": ("power", "lamp watts a side"),
    "charge_end_v": ("voltage", "pack volts at full charge"),
    "charge_limit_a": ("current", "greatest charging amps the pack allows"),
    "charge_wish_a": ("current", "charging amps wanted"),
    "ways": ("", "circuits or contacts needed"),
    "water_x": ("", "water digit of the IP code that its zone asks"),
    "poles": ("", "conductors that pass through a plug"),
    "width_mm": ("", "width of a sleeve over a pair of leads, in millimetres"),
    "burning": ("", "lamps that burn together"),
    "clamps_v": ("voltage", "highest volts at which a clamp must stay quiet"),
    "parts_v": ("voltage", "volts that parts of the 12 V side bear"),
    "blocks_v": ("voltage", "volts a diode must block"),
    "reach_m": ("length", "from a lamp's shell to the splice of its return wire"),
    "lamp_w": ("power", "watts the load list allows"),
    "light_ah": ("charge", "amp-hours that light the lamps after the pack lets go"),
    "second_w": ("power", "watts the load list allows the second light of the lamp"),
}


@dataclass(frozen=True, eq=False)
class Duty:
    """The duties of a place, and of every other place that asks the same.

    needs  figures by glossary name
    words  facts that are words: "frame return", "positive earth", "lamp base" ...
    told   where each word comes from, of a duty that is shared with no other place
    """

    needs: Mapping[str, Span]
    words: Mapping[str, str]
    told: Mapping[str, Origin] = field(default_factory=dict)

    @classmethod
    def of(cls, needs: Mapping[str, Span], words: Mapping[str, str]) -> "Duty":
        """Give the one duty of these figures: places that ask the same share it, and are judged once."""
        return _shared(tuple(needs.items()), tuple(words.items()))

    def has(self, *names: str) -> bool:
        """Tell whether this place has all of these duties."""
        return all(name in self.needs for name in names)

    def __getattr__(self, name: str) -> Span:
        """Give a duty; asking for one that this place does not have is a fault of the program."""
        if name not in GLOSSARY or name not in self.needs:
            raise AttributeError(f"there is no duty {name} among {', '.join(self.needs)}")
        return self.needs[name]

    def word(self, name: str) -> str:
        """Give a fact that is a word."""
        return self.words[name]

    def source_of(self, name: str) -> Callable[[], Origin]:
        """Tell, when asked, where a word comes from."""
        return lambda: self.told.get(name) or Origin("loom", name)


@lru_cache(maxsize=4096)
def _shared(needs: tuple[tuple[str, Span], ...], words: tuple[tuple[str, str], ...]) -> Duty:
    return Duty(dict(needs), dict(words))
