"""A stored answer as a page tells it."""

from dataclasses import replace

import pytest
from web_bench import Bench
from web_cast import NOOR

from trainer.engine import work
from trainer.lessons import CalculateQuestion, Variant, variant
from trainer.records.attempts import StoredAttempt
from trainer.web.mark_sheet import ENGINE_DIFFERS, SENT_LATER, STARTED_AFRESH
from trainer.web.sum_sheet import HARM, SumSheet, sum_sheet
from trainer.web.working_lines import plain_working


@pytest.fixture
def chain(tiny: Bench) -> CalculateQuestion:
    """2 kg at 2 % is 40 g, which is 32 ml."""
    return tiny.library.questions["dose-chain"]


def stored(bench: Bench, *typed: str, question: str = "dose-chain") -> StoredAttempt:
    """Return Noor's answer as it was kept."""
    bench.reader(NOOR).answer(question, *typed)
    return bench.stored(NOOR, question)


def sheet(bench: Bench, *typed: str, question: str = "dose-chain") -> SumSheet:
    """Return what the page of Noor's answer says."""
    kept = stored(bench, *typed, question=question)
    return sum_sheet(kept, None, as_shown(bench, kept))


def as_shown(bench: Bench, kept: StoredAttempt) -> Variant:
    """Return the question on the numbers that were shown."""
    return variant(bench.library.questions[kept.question_id], kept.seed, kept.redraws)


def plain(text: str) -> str:
    """A text with plain spaces."""
    return text.replace("\u00a0", " ")


def test_a_right_answer(tiny: Bench) -> None:
    """The banner says so, nothing is to be learnt from it but the working."""
    told = sheet(tiny, "40", "0.032 L")
    assert (told.banner, told.words, told.cue) == ("right", "The working is below.", "")
    assert (told.finished, told.wrong_line, told.notes) == (True, "", ())
    assert [answer.mark for answer in told.answers] == ["right", "right"]


def test_an_answer_tells_how_it_was_read(tiny: Bench) -> None:
    """Typed in litres, asked in millilitres."""
    answer = sheet(tiny, "40", "0.032 L").answers[1]
    assert (answer.typed, plain(answer.read_as)) == ("0.032 L", "0.032 L")
    assert answer.label == "How much is that in the syringe?"


def test_labels_have_their_numbers(tiny: Bench) -> None:
    """No brace of the author's is left, in a label or in the sentence about it."""
    told = sheet(tiny, "30", "24")
    assert plain(told.answers[0].label) == "What does 2 % of catalyst weigh?"
    assert plain(told.words) == (
        "The first wrong line is: What does 2 % of catalyst weigh? "
        "The working is below, with your numbers."
    )


def test_a_carried_line_tells_what_it_should_have_led_to(tiny: Bench) -> None:
    """24 ml follows from 30 g; where the right figure was expected nothing more is said."""
    first, second = sheet(tiny, "30", "24").answers
    assert (first.mark, first.expected) == ("wrong", "")
    assert (second.mark, plain(second.expected)) == ("carried", "24 ml")


def test_a_slip_has_its_name_and_its_cue(tiny: Bench) -> None:
    """Begun with a capital, ended with a full stop."""
    told = sheet(tiny, "4", "3.2")
    assert (told.banner, told.words) == ("slip", "A tenth of the dose.")
    assert told.cue == "How many grams to a hundred are two per cent?"
    assert (told.finished, told.wrong_line) == (False, "mass")


def test_one_line_alone_needs_no_name(tiny: Bench) -> None:
    """Where one line is asked, it is plain which was wrong."""
    told = sheet(tiny, "1", question="two-slips")
    assert (told.banner, told.words) == ("wrong", "The working is below, with your numbers.")


def test_a_second_try_that_is_right_says_so(tiny: Bench) -> None:
    """That was it; and the line that wasn't asked again keeps its mark beside it."""
    noor = tiny.reader(NOOR)
    noor.answer(noor.answer("dose-chain", "4", "32"), "40")
    first = tiny.stored(NOOR, "dose-chain")
    told = sum_sheet(tiny.stored(NOOR, "dose-chain", try_no=2), first, as_shown(tiny, first))
    assert (told.banner, told.words) == ("right", "That was it. The working is below.")
    assert [(plain(each.read_as), each.mark) for each in told.answers] == [
        ("40 g", "right"),
        ("32 ml", "right"),
    ]


def test_a_chain_is_right_when_each_line_is(tiny: Bench) -> None:
    """The slip is mended; nonsense on the line below it stays wrong, and so does the whole."""
    noor = tiny.reader(NOOR)
    page = noor.answer(noor.answer("dose-chain", "4", "999"), "40")
    assert page.mark == "Wrong"
    assert "Another line is still wrong." in page.words
    kept = tiny.stored(NOOR, "dose-chain", try_no=2)
    assert (kept.right, kept.finished) == (False, True)
    row = tiny.question_row(NOOR, "dose-chain")
    assert row is not None
    assert not row.ever_right


def test_the_working_carries_the_marks(tiny: Bench) -> None:
    """Each asked line has its mark and the person's own figure, beside the right one."""
    mass, volume = sheet(tiny, "30", "24").working
    assert (mass.words, plain(mass.answer)) == ("mass of catalyst", "40 g")
    assert (mass.mark, plain(mass.own)) == ("wrong", "30 g")
    assert (plain(volume.answer), volume.mark, plain(volume.own)) == ("32 ml", "carried", "24 ml")


def test_the_sum_stands_in_figures(tiny: Bench) -> None:
    """40 g ÷ 1.25 kg/L, as it is done on paper."""
    volume = sheet(tiny, "40", "32").working[1]
    assert "÷" in volume.sum
    assert plain(volume.sum).startswith("40")


def test_a_working_that_nobody_was_asked_about_has_no_marks(chain: CalculateQuestion) -> None:
    """3 kg at 2 % is 60 g."""
    lines = plain_working(work(chain.method(resin_kg=3, percent=2, catalyst_kg_per_l=1.25)))
    assert [(plain(line.answer), line.mark, line.own) for line in lines] == [
        ("60 g", "", ""),
        ("48 ml", "", ""),
    ]


def test_an_answer_in_another_unit_than_its_line_shows_both(bench: Bench) -> None:
    """Where a question asks in another unit than the sum is done in, the page turns it over."""
    asked_otherwise = [
        question
        for lesson in bench.library.lessons
        for question in lesson.sums
        if any(ask.unit != ask.line_unit for ask in question.asks)
    ]
    if not asked_otherwise:
        pytest.skip("No question asks in another unit than its line.")
    question = asked_otherwise[0]
    typed = ["1"] * len(question.asks)
    told = sheet(bench, *typed, question=question.id)
    assert any(" = " in line.answer for line in told.working if line.mark)


def test_an_older_engine_is_named(tiny: Bench) -> None:
    """What was marked by an older engine says so, and stands with the figures it had then."""
    kept = stored(tiny, "40", "32")
    lines = [{**line, "value": line["value"] * 2} for line in kept.lines]
    told = sum_sheet(replace(kept, engine_version="0", lines=lines), None, as_shown(tiny, kept))
    assert (told.notes, told.banner) == ((ENGINE_DIFFERS,), "right")
    assert [plain(line.answer) for line in told.working] == ["80 g", "64 ml"]


def test_a_question_that_cannot_be_read_any_more_tells_its_figures(tiny: Bench) -> None:
    """The mark and the working need neither today's lesson nor today's sums."""
    kept = stored(tiny, "40", "32")
    told = sum_sheet(kept, None, None)
    assert "resin_kg 2" in told.text
    assert plain(told.working[1].answer) == "32 ml"
    assert told.answers[0].label == "Mass of catalyst"


def test_a_figure_that_could_hurt_somebody_is_told(tiny: Bench) -> None:
    """A tenth of the catalyst is outside half to one and a half times 32 ml, slip or not."""
    assert sheet(tiny, "4", "3.2").notes == (HARM,)


def test_a_figure_inside_its_safe_band_is_only_wrong(tiny: Bench) -> None:
    """25 ml instead of 32 is a mistake, and hurts nobody."""
    told = sheet(tiny, "40", "25")
    assert told.banner in ("wrong", "slip")
    assert told.notes == ()


def test_sent_later_is_told(tiny: Bench) -> None:
    """So that nobody wonders about the day."""
    kept = replace(stored(tiny, "40", "32"), sent_later=True)
    assert sum_sheet(kept, None, as_shown(tiny, kept)).notes == (SENT_LATER,)


def test_a_figure_that_cannot_be_worked_on_is_told(tiny: Bench) -> None:
    """3 mm can't wander 5, so the narrow side was marked by the right 20 mm."""
    told = sheet(tiny, "3", "20", question="bare-chain")
    assert told.notes == (STARTED_AFRESH,)
    assert [answer.mark for answer in told.answers] == ["wrong", "right"]
