"""What a result warns of, whoever asked for it: a dose off the usual band, board too bare.

A right sum can still be a roof that must not be laid.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from trainer.engine.band import dose_for_gel
from trainer.engine.dose import percent_by_mass
from trainer.engine.drivers import Working, answer
from trainer.engine.errors import UNWORKABLE
from trainer.engine.materials import (
    CATALYST_DENSITY,
    DOSE_BAND,
    LEAST_BARE_BOARD,
    TOPCOAT_BAND,
)
from trainer.engine.resin import resin_kilograms
from trainer.engine.topcoat import topcoat_catalyst
from trainer.engine.units import show
from trainer.engine.working import Method


def cautions_for(
    method: Method[...], givens: Mapping[str, Any], working: Working
) -> tuple[str, ...]:
    """Return the sentences that stand below a working, in order; none as a rule.

    The dose is told by mass, whichever convention it was given in. The usual bands, 1 to 4 % by
    mass and 1 to 3 % for topcoat, are common practice, until the data sheet gives its own.
    """
    return (*_dose(method, givens, working), *_bare_board(method, working))


def _dose(method: Method[...], givens: Mapping[str, Any], working: Working) -> Iterator[str]:
    percent = _percent_by_mass(method, {**method.defaults(), **givens}, working)
    band = TOPCOAT_BAND if method is topcoat_catalyst else DOSE_BAND
    # Rounded, so that a dose which was turned to millilitres and back is still on its edge.
    if percent is None or band.low <= round(percent, 9) <= band.high:
        return
    side = "over" if percent > band.high else "under"
    edge = band.high if percent > band.high else band.low
    yield (
        f"That is {show(percent, '%')} by mass, {side} the usual {show(edge, '%')}. "
        "Don't lay it unless the data sheet allows it."
    )


def _percent_by_mass(
    method: Method[...], known: Mapping[str, Any], working: Working
) -> float | None:
    """Return the dose by mass of a calculation about catalyst; None for any other."""
    if method is dose_for_gel:
        return working.value
    if "now_percent" in known:
        return float(known["now_percent"])
    millilitres = known.get("catalyst_ml", working.value if "percent" in known else None)
    if millilitres is None:
        return None
    density = known.get("catalyst_kg_per_l", CATALYST_DENSITY.value)
    try:
        return answer(percent_by_mass.inside(_kilograms(known, working), millilitres, density))
    except (KeyError, *UNWORKABLE):
        return None


def _kilograms(known: Mapping[str, Any], working: Working) -> float:
    """Return the mass that the catalyst goes into; raise KeyError where there is none."""
    if "resin_kg" in known:
        return float(known["resin_kg"])
    if "resin_l" in known:
        return answer(resin_kilograms.inside(known["resin_l"]))
    return working.figures["topcoat.mass"]


def _bare_board(method: Method[...], working: Working) -> Iterator[str]:
    if method.name == "bare_board" and working.value < LEAST_BARE_BOARD.value:
        least = show(LEAST_BARE_BOARD.value, LEAST_BARE_BOARD.unit)
        yield f"Under {least} the bandage has too little to hold. Peel the tape and lay it again."
