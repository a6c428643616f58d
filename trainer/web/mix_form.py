"""What is typed about a bucket or a test cup, read by the engine; whatever was typed is kept."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, TypeVar, get_args

from trainer.engine import EngineError, OtherKind, Parameter, catalyst_by_ml_per_kg
from trainer.engine.band import gel_short_end
from trainer.engine.catalyst import RULE, catalyst_by_mass, catalyst_by_volume
from trainer.engine.errors import OutOfRange
from trainer.engine.plans.bucket import ResinUnit
from trainer.engine.plans.description import Convention, Mix, Weather, fields_of
from trainer.engine.schema import LONGEST_TEXT
from trainer.engine.units import read_quantity, show

T = TypeVar("T")
#: How a dose is counted, in the order in which it is offered.
CONVENTIONS: tuple[Convention, ...] = get_args(Convention)
#: What an address keeps of a form, so that a reload has it all.
FIELDS = (
    *("resin", "resin_unit", "dose", "dose_as", "at", "at_unit", "pick", "product"),
    *("graduation_ml", "resin_kg_per_l", "catalyst_kg_per_l", "minutes", "since", "gelled"),
)
NO_RESIN = "Type how much resin is in the bucket, such as 1.3."
NO_DOSE = "Type the dose from the data sheet, such as 2."
NO_CONVENTION = "Pick one of the three ways to count a dose."
NO_TEMPERATURE = "Type the temperature of the resin and the air, such as 18."
NO_MINUTES = "Type the minutes until it gelled, such as 26."
NO_NAME = "Type the resin's name, so that its cups are found again."
LONG_NAME = f"A resin's name is one line of {LONGEST_TEXT} letters and signs at most."
BY_RULE = "For 2 % by the millilitre rule type 20."

_MIX = fields_of(Mix)
#: Called what its field on the page is called.
_AIR = replace(fields_of(Weather)["air_c"], words="temperature of resin and air")
_RESIN: Mapping[ResinUnit, Parameter] = {
    "kg": catalyst_by_mass.parameters["resin_kg"],
    "L": catalyst_by_volume.parameters["resin_l"],
}
_PERCENT: Mapping[Convention, Parameter] = {
    "by mass": catalyst_by_mass.parameters["percent"],
    "ml per kg": catalyst_by_ml_per_kg.parameters["percent"],
    "by volume": catalyst_by_volume.parameters["percent"],
}


def dose_words(percent: float, convention: str) -> str:
    """Return a dose in the words of its convention: "2 % by mass", "20 ml per kg"."""
    if convention == "ml per kg":
        return show(percent * RULE.value, "ml per kg")
    return f"{show(percent, '%')} {convention}"


class MixForm:
    """The fields of one form; what can't be read has a sentence in `errors`, by field."""

    def __init__(self, fields: Mapping[str, str]) -> None:
        self.fields = fields
        self.errors: dict[str, str] = {}

    def __getitem__(self, name: str) -> str:
        """Return a field as it was typed."""
        return self.fields.get(name, "")

    @property
    def told(self) -> list[tuple[str, str]]:
        """What is to be mended, field by field, in the order of the form."""
        return [(name, self.errors[name]) for name in FIELDS if name in self.errors]

    def kept(self, *without: str) -> dict[str, Any]:
        """Return what an address keeps of the fields."""
        return {name: self[name] for name in FIELDS if self[name] and name not in without}

    @property
    def product(self) -> str:
        """The resin's name: as typed, else the one that was picked."""
        return " ".join((self["product"].strip() or self["pick"]).split())

    @property
    def convention(self) -> str:
        """How the dose is counted; by mass unless something else was picked."""
        return self["dose_as"] or "by mass"

    def figure(self, name: str, parameter: Parameter, blank: str = "") -> float | None:
        """Return what a field means in the parameter's unit, or None where it can't be used.

        An empty field is told of with `blank`, or is fine without one.
        """
        if not self[name].strip():
            self._note(name, blank)
            return None

        def read() -> float:
            value = read_quantity(self[name], parameter.unit, self[f"{name}_unit"] or None).value
            parameter.check(value)
            return value

        return self._told(name, read)

    def resin(self) -> tuple[float, ResinUnit] | None:
        """Return the resin as it was given, in kilograms or in litres."""
        if not self["resin"].strip():
            self._note("resin", NO_RESIN)
            return None
        return self._told("resin", self._resin)

    def dose(self) -> tuple[float, Convention] | None:
        """Return the dose in percent, and how it is counted."""
        convention = next((each for each in CONVENTIONS if each == self.convention), None)
        if convention is None:
            self._note("dose", NO_CONVENTION)
            return None
        if not self["dose"].strip():
            self._note("dose", NO_DOSE)
            return None
        percent = self._told("dose", lambda: self._percent(convention))
        return None if percent is None else (percent, convention)

    def temperature(self, blank: str = "") -> float | None:
        """Return the temperature of resin and air in °C."""
        return self.figure("at", _AIR, blank)

    def temperature_words(self) -> str:
        """Return the temperature that could be read, in °C; what was typed in °F stands too."""
        if not self["at"].strip():
            return ""
        reading = read_quantity(self["at"], "°C", self["at_unit"] or None)
        celsius = show(round(reading.value, 1), "°C")
        return f"{celsius} ({reading.read_as})" if reading.read_as.endswith("°F") else celsius

    def cup_temperature(self) -> float | None:
        """Return the temperature of a cup in °C."""
        return self.figure("at", gel_short_end.parameters["cup_c"], NO_TEMPERATURE)

    def cup_minutes(self) -> float | None:
        """Return the minutes after which a cup gelled, where they were typed."""
        blank = NO_MINUTES if self["do"] == "minutes" else ""
        return self.figure("minutes", gel_short_end.parameters["cup_min"], blank)

    def name(self, blank: str = "") -> str:
        """Return the resin's name, or nothing where there is none that can be used."""
        product = self.product
        if not product:
            self._note("product", blank)
        elif len(product) > LONGEST_TEXT or not product.isprintable():
            self._note("product", LONG_NAME)
            return ""
        return product

    def mix(self) -> Mix | None:
        """Return how the bucket is mixed; None where a field of it can't be read."""
        dose, product = self.dose(), self.name()
        own = {
            name: self.figure(name, _MIX[name])
            for name in ("graduation_ml", "resin_kg_per_l", "catalyst_kg_per_l")
        }
        if self.errors or dose is None:
            return None
        percent, convention = dose
        given = {name: value for name, value in own.items() if value is not None}
        return Mix(product=product or None, percent=percent, convention=convention, **given)

    def _resin(self) -> tuple[float, ResinUnit]:
        chosen = self["resin_unit"] or "kg"
        unit: ResinUnit = "kg"
        try:
            value = read_quantity(self["resin"], unit, chosen).value
        except OtherKind:
            unit = "L"
            value = read_quantity(self["resin"], unit, chosen).value
        _RESIN[unit].check(value)
        return value, unit

    def _percent(self, convention: Convention) -> float:
        parameter = _PERCENT[convention]
        if convention != "ml per kg":
            value = read_quantity(self["dose"], "%").value
            parameter.check(value)
            return value
        percent = self._by_rule()
        try:
            parameter.check(percent)
        except OutOfRange as error:
            each = RULE.value
            told = OutOfRange("dose", percent * each, "ml/kg", error.low * each, error.high * each)
            raise ValueError(f"{told} {BY_RULE}") from error
        return percent

    def _by_rule(self) -> float:
        """Return a dose in ml per kg as percent; the rule says itself what a typed percent is."""
        try:
            return read_quantity(self["dose"], "ml/kg").value / RULE.value
        except OtherKind:
            return read_quantity(self["dose"], "%").value

    def _told(self, name: str, read: Callable[[], T]) -> T | None:
        try:
            return read()
        except (EngineError, ValueError) as error:
            self._note(name, str(error))
            return None

    def _note(self, name: str, sentence: str) -> None:
        if sentence:
            self.errors.setdefault(name, sentence)
