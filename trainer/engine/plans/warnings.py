"""What a plan warns of, in sentences for whoever lays the roof."""

from collections.abc import Iterator

from trainer.engine.materials import LEAST_BARE_BOARD, UPSTAND
from trainer.engine.plans.description import RoofDescription, Weather
from trainer.engine.plans.dose import Dose
from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.engine.plans.openings import Rooflight
from trainer.engine.plans.sides import Side
from trainer.engine.plans.tape import TapePlan
from trainer.engine.units import show


def warnings_of(
    roof: RoofDescription,
    sides: tuple[Side, ...],
    tape: TapePlan,
    dose: Dose,
    gel: GelTimes | NoTimes,
) -> tuple[str, ...]:
    """Return the cautions that a roof's own figures give rise to."""
    return (
        *_dose(roof, dose),
        *gel.cautions,
        *_heights(roof, sides),
        *_tape(tape),
        *_crew(roof, gel),
    )


def sooner(weather: Weather, *, timed: bool) -> Iterator[str]:
    """Yield why resin may gel sooner than by the air's temperature, with times or without."""
    air_c, deck_c = weather.air_c, weather.deck_c
    if timed and air_c is not None and deck_c is not None and deck_c > air_c:
        deck = show(round(deck_c, 1), "°C")
        yield f"The deck is warmer than the air: times are told for its {deck}."
    if weather.sun == "yes":
        early = "It gels sooner than any time here." if timed else "It gels early there."
        yield f"Sun is on the deck: keep the resin in the shade. {early}"


def _dose(roof: RoofDescription, dose: Dose) -> Iterator[str]:
    yield from dose.unmet
    percent, mix = dose.by_mass.value, roof.mix
    if percent < mix.least_percent:
        yield f"The dose is {show(percent, '%')} by mass, under {show(mix.least_percent, '%')}."
    if percent > mix.most_percent:
        yield f"The dose is {show(percent, '%')} by mass, over {show(mix.most_percent, '%')}."
    if not mix.least_percent <= percent <= mix.most_percent:
        yield "Don't lay it unless the data sheet allows that dose."
    if not 1 <= roof.topcoat.percent <= 3:
        yield f"Topcoat takes 1 to 3 % as a rule, not {show(roof.topcoat.percent, '%')}."


def _heights(roof: RoofDescription, sides: tuple[Side, ...]) -> Iterator[str]:
    usual = show(UPSTAND.value, UPSTAND.unit)
    for side in sides:
        if side.kind == "wall" and side.turn_mm < UPSTAND.value:
            up = show(side.turn_mm, "mm")
            yield f"Side {side.number} turns up {up}; {usual} is the rule at a wall."
    for number, opening in enumerate(roof.openings, 1):
        if isinstance(opening, Rooflight) and opening.kerb_mm < UPSTAND.value:
            yield f"The kerb of rooflight {number} is under {usual}. Raise it if you can."
        if isinstance(opening, Rooflight):
            yield (
                f"The kerb of rooflight {number} has bandage along its foot here. A fillet isn't "
                "sized: fit one before the bandage if its maker asks for it."
            )


def _tape(tape: TapePlan) -> Iterator[str]:
    if tape.length and tape.bare.value < LEAST_BARE_BOARD.value:
        least = show(LEAST_BARE_BOARD.value, LEAST_BARE_BOARD.unit)
        yield f"Only {tape.bare.shown} of bare board shows beside the tape; {least} is the least."


def _crew(roof: RoofDescription, gel: GelTimes | NoTimes) -> Iterator[str]:
    if roof.crew.pace_kg is None and isinstance(gel, GelTimes):
        yield "Nobody's pace is known: time the first batch, and make the next one to suit."
