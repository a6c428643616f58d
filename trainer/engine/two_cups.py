"""What two test cups speak of: cure.py turned round."""

from math import log
from typing import Annotated

from trainer.engine.conversions import J_PER_KJ
from trainer.engine.cure import GAS, in_kelvin
from trainer.engine.errors import Refused
from trainer.engine.materials import CURING_ENERGY, DOSE_ORDER
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation


@calculation
def activation_energy(
    one_min: Annotated[float, Given("gel time of the colder cup", "min", 1, 240)],
    one_c: Annotated[float, Given("temperature of the colder cup", "°C", 5, 34)],
    other_min: Annotated[float, Given("gel time of the warmer cup", "min", 1, 240)],
    other_c: Annotated[float, Given("temperature of the warmer cup", "°C", 6, 35)],
) -> Calculation:
    """Return the activation energy in kJ/mol that two cups of one dose speak of.

    energy = R × ln(one ÷ other) ÷ (1 ÷ one kelvin − 1 ÷ other kelvin): gel_at_temperature
    turned round. Below zero when the warmer cup gelled later: then a figure is wrong.

    Args:
        one_min: gel time of the colder cup, 1–240 min.
        one_c: its temperature, 5–34 °C.
        other_min: gel time of the warmer cup, 1–240 min.
        other_c: its temperature, 6–35 °C.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: both cups stood at the same temperature.
    """
    one_k = yield in_kelvin("one_k", "temperature of the colder cup", one_c)
    other_k = yield in_kelvin("other_k", "temperature of the warmer cup", other_c)
    slope = 1 / one_k - 1 / other_k
    if slope == 0:
        raise Refused("Both cups stood at one temperature. Time another one, warmer or colder.")
    return (
        yield Line(
            "energy",
            CURING_ENERGY.words,
            "kJ/mol",
            GAS.value * log(one_min / other_min) / slope / J_PER_KJ.value,
            "gas * ln(one / other) / (1 / one_k - 1 / other_k) / j_per_kj",
            {
                "gas": GAS,
                "one": Part(one_min, "min", "gel time of the colder cup"),
                "other": Part(other_min, "min", "gel time of the warmer"),
                "one_k": Part(one_k, "K", "temperature of the colder cup"),
                "other_k": Part(other_k, "K", "temperature of the warmer"),
                "j_per_kj": J_PER_KJ,
            },
        )
    )


@calculation
def dose_order(
    one_min: Annotated[float, Given("gel time of the weaker cup", "min", 1, 240)],
    one_percent: Annotated[float, Given("dose of the weaker cup by mass", "%", 0.5, 5.9)],
    other_min: Annotated[float, Given("gel time of the stronger cup", "min", 1, 240)],
    other_percent: Annotated[float, Given("dose of the stronger cup by mass", "%", 0.6, 6)],
) -> Calculation:
    """Return the order of the dose that two cups of one temperature speak of.

    times = weaker ÷ stronger gel time; doses = stronger ÷ weaker dose; order = ln(times) ÷
    ln(doses): gel_at_dose turned round. Below zero when the stronger cup gelled later.

    Args:
        one_min: gel time of the weaker cup, 1–240 min.
        one_percent: its dose, 0.5–5.9 % by mass.
        other_min: gel time of the stronger cup, 1–240 min.
        other_percent: its dose, 0.6–6 % by mass.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: both cups had the same dose.
    """
    one = Part(one_min, "min", "gel time of the weaker cup")
    other = Part(other_min, "min", "gel time of the stronger")
    times = yield _times("times", "times as long", one, other)
    strong = Part(other_percent, "%", "dose of the stronger cup")
    weak = Part(one_percent, "%", "dose of the weaker")
    doses = yield _times("doses", "times as strong", strong, weak)
    if doses == 1:
        raise Refused("Both cups had one dose. Time another one, stronger or weaker.")
    return (
        yield Line(
            "order",
            DOSE_ORDER.words,
            "",
            log(times) / log(doses),
            "ln(times) / ln(doses)",
            {
                "times": Part(times, "", "times as long"),
                "doses": Part(doses, "", "times as strong"),
            },
        )
    )


def _times(key: str, words: str, one: Part, other: Part) -> Line:
    return Line(
        key, words, "", one.value / other.value, "one / other", {"one": one, "other": other}
    )
