"""The mix card: gel bands over temperatures and doses, and the catalyst for each dose.

The three bands are derived from the published band of activation energies and the band of
orders from 0.5 to 1, to a tenth of a minute; the card keeps the whole minutes round them.
"""

import pytest
from roofs_cast import garage, roof

from trainer.engine.errors import BadRoof
from trainer.engine.plans.card import Degrees, GelBand, MixCard, card_of
from trainer.engine.plans.description import Cup, Mix, RoofDescription, Weather

CUP = Cup(20, 20, 2)


def at(card: MixCard, celsius: float, percent: float) -> GelBand:
    """Return the cell of a temperature and a dose."""
    place = [dose.percent for dose in card.doses].index(percent)
    return row(card, celsius).bands[place]


def row(card: MixCard, celsius: float) -> Degrees:
    """Return the row of a temperature."""
    return next(each for each in card.rows if each.at_c == celsius)


def band(minutes: float, at_c: float, percent: float) -> RoofDescription:
    """Return the garage with this one test cup."""
    return garage(cups=(Cup(minutes, at_c, percent),), weather=Weather(air_c=26))


def test_temperatures_go_up_by_five_degrees() -> None:
    """From 5 to 35 °C, with today's air in its place and marked."""
    rows = card_of(garage(cups=(CUP,), weather=Weather(air_c=18))).rows
    assert [each.at_c for each in rows] == [5, 10, 15, 18, 20, 25, 30, 35]
    assert [each.at_c for each in rows if each.today] == [18]


def test_air_on_a_step_is_not_told_twice() -> None:
    """At 15 °C the row of 15 is today's."""
    rows = card_of(garage(cups=(CUP,), weather=Weather(air_c=15))).rows
    assert [each.at_c for each in rows if each.today] == [15]
    assert len(rows) == 7


def test_doses_go_up_by_halves() -> None:
    """From the least of the band to its most, today's marked."""
    doses = card_of(garage()).doses
    assert [dose.percent for dose in doses] == [1, 1.5, 2, 2.5, 3, 3.5, 4]
    assert [dose.percent for dose in doses if dose.today] == [2]


def test_the_ends_of_a_data_sheets_band_stay_in() -> None:
    """0.8 to 2.2 % has the halves between, and both ends."""
    doses = card_of(garage(mix=Mix(least_percent=0.8, most_percent=2.2, percent=2))).doses
    assert [dose.percent for dose in doses] == [0.8, 1, 1.5, 2, 2.2]


def test_todays_dose_stands_by_mass() -> None:
    """2 % by the millilitre rule is 20 ml to a kilogram: 23.4 g of 1.17 kg/L, 2.34 % by mass."""
    doses = card_of(garage(mix=Mix(convention="ml per kg"))).doses
    assert [dose.percent for dose in doses if dose.today] == [pytest.approx(2.34)]
    assert len(doses) == 8


def test_a_cup_at_its_own_temperature_and_dose_is_itself() -> None:
    """20 minutes stay 20: a float's last digit makes neither 19 nor 21 of them.

    2 % by the millilitre rule comes to 2.34 % by mass but for that digit.
    """
    assert at(card_of(garage(cups=(CUP,))), 20, 2) == GelBand(20, 20)
    for percent in (1.3, 1.7, 1.9, 2.0, 2.3, 2.7):
        cup = Cup(20, 20, round(percent * 1.17, 3))
        mix = Mix(convention="ml per kg", percent=percent)
        card = card_of(garage(cups=(cup,), mix=mix, weather=Weather(air_c=20)))
        assert card.now == GelBand(20, 20), percent


def test_twice_the_dose() -> None:
    """20 min at 20 °C and 2 %, dosed to 4 %: 10.0 to 14.1 min. Derived."""
    minutes = card_of(garage(cups=(Cup(20, 20, 2),), mix=Mix(share=0.8, mixing_min=0)))
    assert at(minutes, 20, 4) == GelBand(10, 15)


def test_colder() -> None:
    """25 min at 20 °C, now 15 °C: 33.2 to 45.0 min. Derived."""
    told = at(card_of(band(25, 20, 2)), 15, 2)
    assert told.short_min == 33
    assert told.long_min in (45, 46)


def test_warmer_with_less() -> None:
    """30 min at 18 °C and 2 %, now 26 °C and 1.5 %: 13.9 to 25.7 min. Derived."""
    assert at(card_of(band(30, 18, 2)), 26, 1.5) == GelBand(13, 26)


def test_minutes_are_rounded_apart() -> None:
    """The soonest down and the latest up, so that the card never promises more than is known."""
    for each in card_of(band(30, 18, 2)).rows:
        for cell in each.bands:
            if cell.short_min and cell.long_min:
                assert cell.short_min <= cell.long_min


def test_too_short_a_time_is_refused_with_its_reason() -> None:
    """Twelve minutes at 20 °C leave under five at 30 °C; the reason stands once under the table."""
    card = card_of(garage(cups=(Cup(20, 20, 2),)))
    refused = at(card, 30, 4)
    assert (refused.short_min, refused.long_min) == (None, None)
    assert refused.refusal.startswith("Under 5 minutes would be left to work.")
    assert card.refusals == (refused.refusal,)


def test_air_that_is_too_hot_is_refused() -> None:
    """At 38 °C no time is told, whatever the cup says."""
    card = card_of(garage(cups=(CUP,), weather=Weather(air_c=38)))
    assert all("above 35" in cell.refusal for cell in row(card, 38).bands)
    assert card.now
    assert card.now.refusal


def test_without_a_cup_there_are_no_times_at_all() -> None:
    """The doses are still there: they need no cup."""
    card = card_of(garage(weather=Weather(air_c=18)))
    assert (card.rows, card.refusals, card.now) == ((), (), None)
    assert card.doses


def test_a_cup_of_another_product_tells_no_times() -> None:
    """The reason stands instead of a table."""
    card = card_of(garage(cups=(Cup(20, 20, 2, "Other"),), mix=Mix(product="Ours")))
    assert card.rows == ()
    assert card.refusals == ("There is no test cup of Ours to go by. Start a test cup.",)


def test_now_is_the_cell_of_today() -> None:
    """At 20 °C with 2 % it is the cup itself; without an air temperature nobody knows."""
    assert card_of(garage(cups=(CUP,), weather=Weather(air_c=20))).now == GelBand(20, 20)
    assert card_of(garage(cups=(CUP,))).now is None


def test_catalyst_in_a_kilogram_and_in_a_litre() -> None:
    """2 % of 1000 g is 20 g, which is 17.09 ml of 1.17 kg/L; a litre weighs 1.10 kg: 22 g."""
    dose = next(dose for dose in card_of(garage()).doses if dose.percent == 2)
    assert dose.in_kilogram.grams == pytest.approx(20)
    assert dose.in_kilogram.millilitres == pytest.approx(17.094, abs=0.001)
    assert dose.in_litre.grams == pytest.approx(22)
    assert dose.in_litre.millilitres == pytest.approx(18.803, abs=0.001)


def test_catalyst_is_drawn_up_to_a_mark_of_the_roofs_syringe() -> None:
    """17.09 ml is 17 with a mark each millilitre, 17.25 with one each 0.75, 15 with one each 5."""
    for graduation, mark in ((1, 17), (0.75, 17.25), (5, 15)):
        card = card_of(garage(mix=Mix(graduation_ml=graduation)))
        dose = next(dose for dose in card.doses if dose.percent == 2)
        assert dose.in_kilogram.mark_ml == pytest.approx(mark)


def test_todays_marks_are_the_sheets() -> None:
    """Whatever the convention: one batch, one mark."""
    for convention in ("by mass", "ml per kg", "by volume"):
        card = card_of(garage(mix=Mix(convention=convention, percent=1.7)))
        today = next(dose for dose in card.doses if dose.today)
        marks = [stage.mark_ml for stage in card.plan.stages[:-1]]
        assert [portion.mark_ml for portion in today.in_batches] == marks


def test_a_syringe_too_coarse_for_a_portion_is_said() -> None:
    """1 % of a kilogram is 8.5 ml, less than half of one mark at 20 ml."""
    card = card_of(garage(mix=Mix(graduation_ml=20, percent=2)))
    weakest = card.doses[0].in_kilogram
    assert (weakest.mark_ml, weakest.mark_words) == (None, "finer syringe")


def test_catalyst_in_this_roofs_batches() -> None:
    """One portion for each stage but the topcoat, which has a dose of its own."""
    card = card_of(garage())
    stages = card.plan.stages[:-1]
    assert [batch.title for batch in card.batches] == [stage.title for stage in stages]
    for dose in card.doses:
        for portion, batch in zip(dose.in_batches, card.batches, strict=True):
            assert portion.grams == pytest.approx(batch.resin_kg * dose.percent * 10)
    today = next(dose for dose in card.doses if dose.today)
    assert [each.millilitres for each in today.in_batches] == pytest.approx(
        [stage.catalyst.value for stage in stages]
    )


def test_a_roof_that_cant_be_planned_has_no_card() -> None:
    """Sides that cross are refused by the plan."""
    with pytest.raises(BadRoof):
        card_of(roof(((0, 0), (4000, 3000), (4000, 0), (0, 3000))))
