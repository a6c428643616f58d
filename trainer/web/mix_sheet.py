"""What the page of a bucket says: its figures, the clock they make, and what they rest on."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from trainer.engine import Refused, show
from trainer.engine.materials import (
    CATALYST_DENSITY,
    DOSE_BAND,
    GRADUATION,
    MIXING_TIME,
    RESIN_DENSITY,
    WORKING_SHARE,
    Constant,
)
from trainer.engine.plans.bucket import Bucket, bucket_of
from trainer.engine.plans.figure import Figure, Known
from trainer.engine.plans.gel import GelTimes, TestCup
from trainer.engine.plans.verdict import judge
from trainer.records.cups import KeptCup
from trainer.web.installation import here
from trainer.web.mix_form import MixForm, dose_words

NO_CUP = "No test cup to go by: no clock. Start a test cup."
#: What nobody has to give, by the field that gives it.
_GIVABLE = {
    "resin_kg_per_l": RESIN_DENSITY,
    "catalyst_kg_per_l": CATALYST_DENSITY,
    "graduation_ml": GRADUATION,
}


@dataclass(frozen=True, slots=True)
class MixSheet:
    """Everything that the page says of a bucket."""

    bucket: Bucket
    #: The resin as it was given, and in its other unit.
    resin: str
    other_resin: Known
    #: The dose as it was given: "2 % by mass".
    dose: str
    #: The temperature in °C, and in °F where it was typed so; or nothing.
    at: str
    #: What the nearest mark does to the dose, in a sentence.
    rounding: str
    #: The same dose in the two other conventions.
    others: tuple[tuple[str, Figure], ...]
    #: Why nothing is laid at this temperature; nothing where it may be.
    stop: str
    #: Why there is no clock; nothing where there is one.
    no_clock: tuple[str, ...]
    #: Whether a test cup is what is missing.
    wants_cup: bool
    #: The test cups that the clock goes by.
    goes_by: tuple[str, ...]
    #: Figures that nobody gave: what, how much, and how that is known.
    assumed: tuple[tuple[str, str, str], ...]

    @property
    def gel(self) -> GelTimes | None:
        """The gel times, where there are any."""
        return self.bucket.gel if isinstance(self.bucket.gel, GelTimes) else None

    @property
    def minutes(self) -> dict[str, str]:
        """The gel times in whole minutes, on the safe side."""
        whole = self.gel.whole_minutes if self.gel else {}
        return {name: show(minutes, "min") for name, minutes in whole.items()}


def sheet_of(form: MixForm, cups: Sequence[KeptCup]) -> MixSheet | None:
    """Return the sheet of what was typed; None where a field can't be used, and says so."""
    resin, now_c, mix = form.resin(), form.temperature(), form.mix()
    if form.errors or resin is None or mix is None:
        return None
    timed = timed_cups(cups, mix.product or "")
    try:
        bucket = bucket_of(mix, *resin, now_c, timed)
    except Refused as refused:
        form.errors["graduation_ml"] = str(refused)
        return None
    value, unit = resin
    return MixSheet(
        bucket,
        show(value, unit),
        bucket.litres if unit == "kg" else bucket.kilograms,
        dose_words(mix.percent, mix.convention),
        form.temperature_words(),
        _rounding(bucket),
        tuple(_others(bucket)),
        _stop(now_c),
        tuple(_no_clock(bucket, timed, now_c)),
        not timed,
        tuple(_goes_by(bucket)),
        tuple(_assumed(form, bucket)),
    )


def _stop(now_c: float | None) -> str:
    """Return why the day is too cold or too hot, as the verdict on a roof says it; else nothing."""
    reasons = judge(now_c, None, None).reasons
    stops = (f"{each.words} {each.limit}" for each in reasons if each.level == "stop")
    return next(stops, "")


def timed_cups(cups: Sequence[KeptCup], product: str) -> tuple[TestCup, ...]:
    """Return the cups of a product as the engine takes them."""
    today = here().today()
    timed = (
        TestCup(
            cup.facts.product,
            cup.facts.minutes,
            cup.facts.at_c,
            cup.facts.percent,
            cup.days_old(today),
            cup.facts.from_batch,
        )
        for cup in cups
    )
    return tuple(cup for cup in timed if cup.is_of(product))


def _rounding(bucket: Bucket) -> str:
    each, off = show(bucket.mix.graduation_ml, "ml"), round(bucket.mark.value, 2)
    if not off:
        return f"Marks are {each} apart, and this is one."
    side = "more" if off > 0 else "less"
    return f"Marks are {each} apart; this one gives {show(abs(off), '%')} {side} than worked out."


def _others(bucket: Bucket) -> Iterator[tuple[str, Figure]]:
    told = {
        "by mass": ("percent by mass", bucket.by_mass),
        "ml per kg": ("millilitres per kilogram", bucket.ml_per_kg),
        "by volume": ("percent by volume", bucket.by_volume),
    }
    yield from (each for name, each in told.items() if name != bucket.mix.convention)


def _no_clock(bucket: Bucket, timed: Sequence[TestCup], now_c: float | None) -> Iterator[str]:
    if isinstance(bucket.gel, GelTimes):
        return
    if now_c is None or timed:
        yield from bucket.gel.reasons
        return
    yield NO_CUP
    # The engine's own sentence about the cup is first, and says the same.
    yield from bucket.gel.reasons[1:]


def _goes_by(bucket: Bucket) -> Iterator[str]:
    if not isinstance(bucket.gel, GelTimes):
        return
    yield from (f"{cup.words[:1].upper()}{cup.words[1:]}." for cup in bucket.gel.used)


def _assumed(form: MixForm, bucket: Bucket) -> Iterator[tuple[str, str, str]]:
    used = [constant for name, constant in _GIVABLE.items() if not form[name].strip()]
    if isinstance(bucket.gel, GelTimes):
        used += [WORKING_SHARE, MIXING_TIME]
    yield from (_known(each, show(each.value, each.unit)) for each in used)
    yield _known(DOSE_BAND, f"{show(DOSE_BAND.low, '')} to {show(DOSE_BAND.high, '%')}")


def _known(constant: Constant, shown: str) -> tuple[str, str, str]:
    return constant.words, shown, constant.told_standing
