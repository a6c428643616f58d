"""How gel time moves with temperature and with dose, from test cups. Doses are by mass.

The rate follows Arrhenius in temperature and a power of the dose; both laws lean on a cup that
was timed, never on a table. band.py makes the two ends from them that a roof is planned with.
"""

from math import exp
from typing import Annotated

from trainer.engine.conversions import J_PER_KJ
from trainer.engine.materials import CATALYST_DOSE, CURING_ENERGY, DOSE_ORDER, GAS_CONSTANT
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

GelTime = Annotated[float, Given("gel time of the cup", "min", 1, 240)]
CupTemperature = Annotated[float, Given("temperature of the cup", "°C", 5, 35)]
TemperatureNow = Annotated[float, Given("temperature now", "°C", 5, 35)]
_DOSES = (CATALYST_DOSE.low, CATALYST_DOSE.high)
CupDose = Annotated[float, Given("dose of the cup by mass", "%", *_DOSES)]
DoseNow = Annotated[float, Given("dose now by mass", "%", *_DOSES)]

GAS = Part(GAS_CONSTANT.value, GAS_CONSTANT.unit, GAS_CONSTANT.words)


def in_kelvin(key: str, words: str, celsius: float) -> Line:
    """Return the line that turns a Celsius reading into kelvin; rate laws take no other scale."""
    return Line(
        key,
        words,
        "K",
        celsius + 273.15,
        "celsius + 273.15",
        {"celsius": Part(celsius, "°C", words)},
    )


def warmth(key: str, words: str, energy: Part, cup_k: float, now_k: float) -> Line:
    """Return the line of how many times as long a gel takes at another temperature.

    factor = exp(energy ÷ R × (1 ÷ now − 1 ÷ cup)), both in kelvin: Arrhenius.
    """
    steepness = energy.value * J_PER_KJ.value / GAS.value
    return Line(
        key,
        words,
        "",
        exp(steepness * (1 / now_k - 1 / cup_k)),
        "exp(energy * j_per_kj / gas * (1 / now - 1 / cup))",
        {
            "energy": energy,
            "j_per_kj": J_PER_KJ,
            "gas": GAS,
            "now": Part(now_k, "K", "temperature now"),
            "cup": Part(cup_k, "K", "temperature of the cup"),
        },
    )


def strength(key: str, words: str, order: Part, cup_percent: float, now_percent: float) -> Line:
    """Return the line of how many times as long a gel takes at another dose.

    factor = (dose of the cup ÷ dose now) to the power of the order.
    """
    return Line(
        key,
        words,
        "",
        (cup_percent / now_percent) ** order.value,
        "(cup / now) ** order",
        {
            "cup": Part(cup_percent, "%", "dose of the cup"),
            "now": Part(now_percent, "%", "dose now"),
            "order": order,
        },
    )


def _gel(gel_min: float, factor: float) -> Line:
    return Line(
        "gel",
        "gel time",
        "min",
        gel_min * factor,
        "cup * factor",
        {
            "cup": Part(gel_min, "min", "gel time of the cup"),
            "factor": Part(factor, "", "times as long"),
        },
    )


@calculation
def gel_at_temperature(
    gel_min: GelTime,
    cup_c: CupTemperature,
    now_c: TemperatureNow,
    energy_kj_per_mol: Annotated[float, CURING_ENERGY.given] = CURING_ENERGY.value,
) -> Calculation:
    """Return the minutes to gel at another temperature, from a cup of the same dose.

    factor = exp(energy ÷ R × (1 ÷ now − 1 ÷ cup)), in kelvin; gel = cup × factor. Arrhenius,
    with R = 8.314462618 J/(mol·K). At 52.9 kJ/mol the rate doubles from 298 to 308 K; the band
    read for polyester is 40 to 60 (J. Appl. Polym. Sci. 102, 1870, 2006, abstract).

    Args:
        gel_min: gel time of the cup, 1–240 min.
        cup_c: temperature of the cup, 5–35 °C.
        now_c: temperature now, 5–35 °C.
        energy_kj_per_mol: activation energy, 20–120 kJ/mol.

    Raises:
        OutOfRange: an argument outside its range.
    """
    cup_k = yield in_kelvin("cup_k", "temperature of the cup", cup_c)
    now_k = yield in_kelvin("now_k", "temperature now", now_c)
    energy = Part(energy_kj_per_mol, "kJ/mol", CURING_ENERGY.words)
    factor = yield warmth("factor", "times as long", energy, cup_k, now_k)
    return (yield _gel(gel_min, factor))


@calculation
def gel_at_dose(
    gel_min: GelTime,
    cup_percent: CupDose,
    now_percent: DoseNow,
    order: Annotated[float, DOSE_ORDER.given] = DOSE_ORDER.value,
) -> Calculation:
    """Return the minutes to gel at another dose by mass, from a cup of the same temperature.

    factor = (dose of the cup ÷ dose now) to the power of the order; gel = cup × factor. The
    order of 0.5 is the free-radical rate law's; polyesters lie at 0.5 to 1 (from memory).

    Args:
        gel_min: gel time of the cup, 1–240 min.
        cup_percent: dose of the cup, 0.5–6 % by mass.
        now_percent: dose now, 0.5–6 % by mass.
        order: order of the dose, 0.1–2.

    Raises:
        OutOfRange: an argument outside its range.
    """
    power = Part(order, "", DOSE_ORDER.words)
    factor = yield strength("factor", "times as long", power, cup_percent, now_percent)
    return (yield _gel(gel_min, factor))
