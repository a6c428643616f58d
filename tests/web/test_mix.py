"""Mix: the bucket in front of somebody. Densities and doses are the defaults of common practice."""

import pytest
from web_bench import Bench
from web_cast import NOOR, SAM
from web_mix import (
    BUCKET,
    NAMED,
    clock,
    fields_to_ask,
    figure,
    label,
    mixed,
    path_of,
    phase,
    timed_cup,
)

SINCE = "2026-03-09T07:45:00Z"


def test_a_bucket_in_large_figures(bench: Bench) -> None:
    """2 kg at 2 %: 40 g, 34.19 ml at 1.17 kg/L, 34 on a syringe marked in millilitres."""
    page = mixed(bench.visit(NOOR))
    assert figure(page, "mark") == "34 ml"
    assert figure(page, "catalyst") == "34.19 ml"
    assert figure(page, "grams") == "40 g"
    assert "0.55 % less than worked out" in page.words


def test_the_convention_stands_at_the_figure(bench: Bench) -> None:
    """Nobody has to guess which of the three was meant."""
    noor = bench.visit(NOOR)
    assert label(mixed(noor), "catalyst").endswith("2 % by mass")
    by_rule = mixed(noor, dose="20", dose_as="ml per kg")
    assert figure(by_rule, "catalyst") == "40 ml"
    assert label(by_rule, "catalyst").endswith("20 ml per kg")
    by_volume = mixed(noor, dose_as="by volume")
    assert figure(by_volume, "catalyst") == "36.36 ml"


def test_the_dose_is_told_in_the_other_conventions(bench: Bench) -> None:
    """20 ml in a kilogram are 2.34 % by mass, and 2.2 % of its 0.909 litres."""
    page = mixed(bench.visit(NOOR), dose="20", dose_as="ml per kg")
    assert figure(page, "dose.by_mass") == "2.34 %"
    assert figure(page, "dose.by_volume") == "2.2 %"


def test_litres_are_weighed(bench: Bench) -> None:
    """A litre is 1.1 kg: 22 g of catalyst."""
    page = mixed(bench.visit(NOOR), resin="1", resin_unit="L")
    assert figure(page, "grams") == "22 g"


@pytest.mark.parametrize("typed", ["2", "2000 g", "2,0", "2 kg"])
def test_resin_is_read_as_people_type_it(bench: Bench, typed: str) -> None:
    """Grams, a decimal comma, the unit typed along."""
    assert figure(mixed(bench.visit(NOOR), resin=typed), "grams") == "40 g"


def test_a_finer_syringe_is_read_more_finely(bench: Bench) -> None:
    """Marks 0.2 ml apart: 34.2."""
    assert figure(mixed(bench.visit(NOOR), graduation_ml="0.2"), "mark") == "34.2 ml"


def test_every_figure_opens_its_working(bench: Bench) -> None:
    """A tap shows each line."""
    page = mixed(bench.visit(NOOR))
    catalyst = page.main.all(id="figure-catalyst")[0]
    assert "2 kg × 1000 g/kg × 2 % ÷ 100 = 40 g" in catalyst.words


def test_cautions_come_before_the_bottle_is_opened(bench: Bench) -> None:
    """Eyes, acetone, the hot bucket, and the phone itself."""
    words = mixed(bench.visit(NOOR)).words
    for caution in ("Eyes first", "Catalyst never meets acetone", "Phone in clean hands"):
        assert caution in words


def test_a_dose_off_the_usual_band_is_warned_of(bench: Bench) -> None:
    """5 % is told, with a caution."""
    page = mixed(bench.visit(NOOR), dose="5")
    assert figure(page, "grams") == "100 g"
    assert "over the usual 4 %" in page.words


def test_without_a_cup_there_is_no_clock(bench: Bench) -> None:
    """It is said plainly."""
    assert (
        "No test cup to go by: no clock. Start a test cup." in mixed(bench.visit(NOOR), NAMED).words
    )


def test_with_a_cup_there_is_a_band_and_a_working_time(bench: Bench) -> None:
    """26 minutes at the same temperature and dose: two thirds less two leave 15⅓."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    page = mixed(noor, NAMED)
    assert "15 min" in page.words
    assert "26 min" in page.words
    assert "A full bucket gels sooner than a cup" in page.words


@pytest.mark.parametrize("at", ["3", "41"])
def test_on_a_day_for_laying_nothing_it_says_stop(bench: Bench, at: str) -> None:
    """First of all, and there is no button to start a clock with."""
    page = mixed(bench.visit(NOOR), NAMED, at=at)
    assert "Nothing is laid below 5 °C or above 35 °C" in page.words
    assert page.words.index("Stop") < page.words.index("Syringe mark")
    assert "Catalyst in now" not in page.words


def test_a_cold_day_is_warned_of_without_a_cup(bench: Bench) -> None:
    """14 °C: resin gels late, whether a cup says so or not."""
    assert "resin gels late" in mixed(bench.visit(NOOR), NAMED, at="14").words


def test_a_bucket_too_large_is_warned_of(bench: Bench) -> None:
    """130 L is no batch."""
    page = mixed(bench.visit(NOOR), NAMED, resin="130", resin_unit="L")
    assert "Share it out in equal batches" in page.words


def test_phone_and_paper_lay_by_the_same_minute(bench: Bench) -> None:
    """The working time comes after mixing: two thirds of 26 minutes from catalyst in."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    running = mixed(noor, NAMED, since=SINCE).main.all(id="clock")[0]
    assert float(running["data-working"]) == pytest.approx(26 * 2 / 3)


def test_a_cup_of_another_resin_is_not_gone_by(bench: Bench) -> None:
    """Its name is another; nothing is told of this one."""
    noor = bench.visit(NOOR)
    timed_cup(noor, product="Other brew")
    assert "No test cup to go by" in mixed(noor, NAMED).words


def test_another_s_cup_is_not_gone_by(bench: Bench) -> None:
    """Cups are kept for whoever timed them."""
    timed_cup(bench.visit(SAM))
    assert "No test cup to go by" in mixed(bench.visit(NOOR), NAMED).words


def test_the_clock_tells_its_times_without_scripts(bench: Bench) -> None:
    """Catalyst in at 08:45 in the installation's zone: fifteen minutes to lay, gel at 09:11."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    page = mixed(noor, NAMED, since=SINCE)
    assert clock(page).replace(" .", ".") == (
        "Catalyst went in at 08:45. Working time until 09:02. "
        "A cup gels from 09:11 on; a full bucket may be sooner."
    )


def test_working_time_comes_first_then_the_gel(bench: Bench) -> None:
    """At the start, after two thirds of the gel and a bit, and after twenty-seven minutes."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    assert phase(mixed(noor, NAMED, since=SINCE)) == "Working time"
    bench.clock.wait(minutes=18)
    assert phase(mixed(noor, NAMED, since=SINCE)).startswith("Working time is over")
    bench.clock.wait(minutes=9)
    assert phase(mixed(noor, NAMED, since=SINCE)).startswith("It may gel now")


def test_the_button_puts_the_instant_into_the_address(bench: Bench) -> None:
    """So a reload keeps the clock, with everything that was typed."""
    noor = bench.visit(NOOR)
    (button,) = [
        form
        for form in mixed(noor, NAMED).main.all("form", method="post")
        if form["action"] == "/mix"
    ]
    fields = {each["name"]: each["value"] for each in button.all("input")}
    started = noor.post("/mix", fields)
    assert started.status == 303
    assert "since=2026-03-09T07" in started.leads_to
    assert "product=Own+brew" in started.leads_to


@pytest.mark.parametrize(
    ("since", "sentence"),
    [
        ("2026-03-09T09:00:00Z", "starts in the future"),
        ("2026-03-07T07:00:00Z", "over a day ago"),
        ("soon", "can't be read"),
    ],
)
def test_a_clock_that_cannot_run_says_why(bench: Bench, since: str, sentence: str) -> None:
    """A phone's clock set wrong, yesterday's bucket, an address cut short."""
    page = mixed(bench.visit(NOOR), NAMED, since=since)
    assert sentence in page.words
    assert clock(page) == ""


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"resin": ""}, "resin", "Type how much resin"),
        ({"resin": "lots"}, "resin", "can't be read as one figure"),
        ({"resin": "0"}, "resin", "must lie between"),
        ({"dose": "9"}, "dose", "must lie between 0.5 and 6"),
        ({"dose": "0"}, "dose", "must lie between"),
        ({"dose_as": "by guess"}, "dose", "Pick one of the three"),
        ({"dose": "2", "dose_as": "ml per kg"}, "dose", "type 20"),
        ({"at": "-40"}, "at", "must lie between"),
        ({"at": "70"}, "at", "must lie between"),
        ({"product": "x" * 81}, "product", "one line of 80"),
        ({"graduation_ml": "0"}, "graduation_ml", "must lie between"),
        ({"resin": "0.05", "graduation_ml": "50"}, "graduation_ml", "finer syringe"),
    ],
)
def test_what_can_t_be_used_is_told_by_its_field(
    bench: Bench, typed: dict[str, str], field: str, sentence: str
) -> None:
    """One sentence each, and nothing that was typed is lost."""
    page = mixed(bench.visit(NOOR), {**NAMED, **typed})
    assert page.status == 422
    assert sentence in page.error_of(field)
    kept = fields_to_ask(page)
    assert {name: kept[name] for name in typed if name != "dose_as"} == {
        name: value for name, value in typed.items() if name != "dose_as"
    }


def test_signed_out_one_is_asked_to_sign_in(bench: Bench) -> None:
    """And comes back to the bucket."""
    page = bench.visit().open(path_of(BUCKET))
    assert page.leads_to.startswith("/sign-in?then=/mix")


def test_a_page_says_for_whom_it_may_be_kept(bench: Bench) -> None:
    """Two people's pages never share a name on one phone."""
    pages = [mixed(bench.visit(who)) for who in (NOOR, SAM)]
    holders = {page.headers["Bench-Holder"] for page in pages}
    assert len(holders) == 2


@pytest.mark.parametrize("typed", ["20", "20 ml/kg", "2 %"])
def test_two_percent_by_the_rule_is_twenty_millilitres(bench: Bench, typed: str) -> None:
    """A bare figure is millilitres per kilogram; one typed in percent is what the rule calls it."""
    page = mixed(bench.visit(NOOR), dose=typed, dose_as="ml per kg")
    assert figure(page, "catalyst") == "40 ml"
    assert label(page, "mark").endswith("20 ml per kg")


def test_a_dose_in_another_convention_than_picked_is_asked_about(bench: Bench) -> None:
    """Nobody guesses which of the two was meant."""
    page = mixed(bench.visit(NOOR), dose="20 ml/kg")
    assert page.status == 422
    assert "You wrote ml/kg" in page.error_of("dose")


def test_fahrenheit_is_read(bench: Bench) -> None:
    """68 °F is 20 °C, picked or typed, and stands beside it as it was read off."""
    noor = bench.visit(NOOR)
    assert "at 20 °C (68 °F)" in mixed(noor, NAMED, at="68", at_unit="°F").words
    assert "at 20 °C (68 °F)" in mixed(noor, NAMED, at="68 °F").words
    assert "(20 °C)" not in mixed(noor, NAMED, at="20 °C").words


def test_a_temperature_out_of_range_is_told_by_the_fields_own_name(bench: Bench) -> None:
    """The field asks for resin and air, and so does the sentence."""
    page = mixed(bench.visit(NOOR), at="-30")
    assert page.error_of("at").startswith("The temperature of resin and air is -30 °C;")


def test_the_one_resin_timed_today_is_picked(bench: Bench) -> None:
    """With two of them, or on the next day, nobody is led to the wrong drum."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    assert fields_to_ask(noor.open("/mix"))["pick"] == "Own brew"
    timed_cup(noor, product="Other brew")
    assert fields_to_ask(noor.open("/mix"))["pick"] == ""


def test_every_default_stands_with_how_it_is_known(bench: Bench) -> None:
    """A figure that was given is assumed no longer."""
    noor = bench.visit(NOOR)
    assert "Density of catalyst 1.17 kg/L , from memory" in mixed(noor).words
    given = mixed(noor, catalyst_kg_per_l="1.2")
    assert "Density of catalyst 1.17 kg/L , from memory" not in given.words
    assert figure(given, "catalyst") == "33.33 ml"


def test_the_worker_may_keep_the_mix_page_and_nothing_else(bench: Bench) -> None:
    """Its file says so, and no other file does."""
    client = bench.app.test_client()
    with client.get("/static/mix-worker.js") as worker, client.get("/static/mix.js") as other:
        assert worker.headers["Service-Worker-Allowed"] == "/mix"
        assert "Service-Worker-Allowed" not in other.headers


def test_signing_in_and_out_empties_what_a_phone_has_kept(bench: Bench) -> None:
    """The browser itself drops it, with scripts or without."""
    noor = bench.visit()
    assert noor.knock("noor").headers["Clear-Site-Data"] == '"storage"'
    assert noor.sign_out().headers["Clear-Site-Data"] == '"storage"'
