"""What a result warns of, whoever asked for it: a dose off the usual band, board too bare.

A right sum can still be a roof that must not be laid.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from trainer.engine.dose import percent_by_mass
from trainer.engine.drivers import Working, answer
from trainer.engine.errors import UNWORKABLE
from trainer.engine.materials import DOSE_BAND, LEAST_BARE_BOARD
from trainer.engine.resin import resin_kilograms
from trainer.engine.units import show
from trainer.engine.working import Method


def cautions_for(
    method: Method[...], givens: Mapping[str, Any], working: Working
) -> tuple[str, ...]:
    """Return the sentences that stand below a working, in order; none as a rule.

    The dose is told by mass, whichever convention it was given in. The usual band of 1 to 4 % by
    mass is common practice, until the data sheet gives its own.
    """
    return (*_dose(method, givens, working), *_bare_board(method, working))


def _dose(method: Method[...], givens: Mapping[str, Any], working: Working) -> Iterator[str]:
    percent = _percent_by_mass({**method.defaults(), **givens}, working)
    if percent is None or DOSE_BAND.low <= percent <= DOSE_BAND.high:
        return
    side = "over" if percent > DOSE_BAND.high else "under"
    edge = DOSE_BAND.high if percent > DOSE_BAND.high else DOSE_BAND.low
    yield (
        f"That is {show(percent, '%')} by mass, {side} the usual {show(edge, '%')}. "
        "Don't lay it unless the data sheet allows it."
    )


def _percent_by_mass(known: Mapping[str, Any], working: Working) -> float | None:
    """Return the dose by mass of a calculation about catalyst; None for any other."""
    millilitres = known.get("catalyst_ml", working.value if "percent" in known else None)
    if millilitres is None:
        return None
    try:
        kilograms = known.get("resin_kg") or answer(resin_kilograms.inside(known["resin_l"]))
        return answer(percent_by_mass.inside(kilograms, millilitres))
    except (KeyError, *UNWORKABLE):
        return None


def _bare_board(method: Method[...], working: Working) -> Iterator[str]:
    if method.name == "bare_board" and working.value < LEAST_BARE_BOARD.value:
        least = show(LEAST_BARE_BOARD.value, LEAST_BARE_BOARD.unit)
        yield f"Under {least} the bandage has too little to hold. Peel the tape and lay it again."
