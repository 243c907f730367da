"""Controller, throttle, buttons, meters and their leads, as a job may describe them."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from bom.read.lead_kinds import TRADE_WORDS, Function, SignalName
from bom.read.quantity import quantity
from bom.read.section import Section

LeadVolts = Annotated[float, quantity("voltage", 0, 200)]
LeadAmps = Annotated[float, quantity("current", 0, 20)]
LeadArea = Annotated[float, quantity("area", 0.05, 6)]
Scheme = Literal["IEC 60757", "DIN letters", "words"]


def _in_our_word(text: object) -> object:
    return TRADE_WORDS.get(text, text) if isinstance(text, str) else text


class Lead(Section):
    """One lead of a device."""

    function: Annotated[Function, BeforeValidator(_in_our_word)] = Field(description="what it is for")
    name: str = Field("", description="tells it from another of the same function; unsaid, the function")
    signal: SignalName | None = Field(None, description="what stands on it")
    low: LeadVolts | None = Field(None, description="least volts given, or taken: throttles at rest")
    high: LeadVolts | None = Field(None, description="most volts given, or taken: throttles wide open")
    supply: LeadAmps | None = Field(None, description='supplies: amps it can give, like "40 mA"')
    draws: LeadAmps | None = Field(None, description="feeds: amps it takes")
    colour: str = Field("", description="as its maker codes it, or in words")
    scheme: Scheme | None = Field(None, description="how its colour is coded; unsaid, as the device's")
    plug: str = Field("", description="the plug it ends in, in the builder's words; unsaid, the device's")
    pin: str = Field("", description="way of that plug")
    momentary: bool = Field(False, description="works while it is pressed only")
    to: str = Field(
        "",
        description='what it joins: "device: lead", a donor item, a load (its own feed or return), or "nothing"',
    )

    @property
    def label(self) -> str:
        """Name the lead among those of its device."""
        return self.name or self.function


class Device(Section):
    """One thing with control leads."""

    name: str = Field(description="what the builder calls it")
    kind: Literal["controller", "throttle", "brake switch", "button", "meter", "display", "other"] = Field(
        description="what it is"
    )
    plug: str = Field("", description="the plug its leads end in, in the builder's words")
    ways: int | None = Field(None, ge=1, le=60, description="ways of that plug, counted")
    wire: LeadArea = Field(0.5, description="copper of its leads in mm²; 0.5 mm² by common practice")
    scheme: Scheme | None = Field(None, description="how the colours of its leads are coded")
    stops_on_high_throttle: bool | None = Field(
        None, description="controllers: a throttle signal above its range stops the motor"
    )
    keeps_apart: bool | None = Field(
        None, description="its leads on the 12 V side and those on the controller share no minus inside"
    )
    leads: list[Lead] = Field([], description="its leads")
