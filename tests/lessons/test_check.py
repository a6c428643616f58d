"""What the check proves of a question by working it 500 times."""

from itertools import product
from pathlib import Path

import pytest
from lessons_specimens import CHAIN, FILE, RESIN, another, edited, lesson_text, line_of, question

from trainer.lessons.asks import Slip
from trainer.lessons.calculate import Variant, slip_figures, variant
from trainer.lessons.check import check_content, check_lesson
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.everyday_slips import EverydaySlip
from trainer.lessons.library import read_library
from trainer.lessons.marks import Typed, mark_answers
from trainer.lessons.question_check import VARIANTS, at_the_ends, check_question, told_apart

WIDTH = "given.width_mm = 1000"


def found_in(text: str) -> list[AuthorError]:
    """Return what is wrong with a question that stands on line 30."""
    return list(check_question(question(text), FILE, 30))


def rewritten(content: Path, text: str) -> list[AuthorError]:
    """Return what is wrong with a content folder whose lesson is this text."""
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    return check_content(content)[1]


def test_sound_content_has_no_mistakes(content: Path) -> None:
    """The tiny lesson with its five questions passes."""
    library, mistakes = check_content(content)
    assert (len(library.lessons), len(library.questions), mistakes) == (1, 5, [])


def test_content_that_cant_be_read_is_not_checked(content: Path) -> None:
    """Mistakes in reading come first, all of them."""
    (content / "stock.toml").unlink()
    with pytest.raises(ContentError, match="This file is missing"):
        check_content(content)


def test_a_slip_that_often_collides_is_named_with_its_distance() -> None:
    """2.6 to 1 for 2.5 is 4 % off, within three tolerances of 2 % whatever the numbers.

    The least resin is 2.4 m × 75 mm × 300 g/m² × 2.5 × 1.1 = 0.1485 kg, and 4 % of it 0.00594 kg.
    """
    (mistake,) = found_in(edited(RESIN, WIDTH, "given.ratio = 2.6"))
    assert (mistake.file, mistake.line) == (FILE, 30)
    assert mistake.sentence == (
        "Question 'shed-resin': the slip 'the whole roll, not the strip' comes within three "
        f"tolerances of the right answer in {VARIANTS} of {VARIANTS} draws; "
        "the nearest is 0.00594 off."
    )
    assert mistake.mend == "Change the ranges, the slip, or a tighter tolerance."


def test_a_slip_that_seldom_collides_passes() -> None:
    """One length in ten is the slip's own: those draws are drawn again, and that will do."""
    assert found_in(edited(RESIN, WIDTH, "given.length_m = 4.8")) == []


def test_a_fifth_of_the_draws_may_collide_and_no_more() -> None:
    """One weight of mat in two is the slip's own: 250 of 500 draws, give or take."""
    (mistake,) = found_in(edited(RESIN, WIDTH, "given.mat_g_per_m2 = 450"))
    count = int(mistake.sentence.partition(" of 500 draws")[0].rpartition(" ")[2])
    assert 200 <= count <= 300


def test_slips_that_collide_by_turns_are_found_together() -> None:
    """Each of three slips collides in one draw of ten, and so do three draws of ten in all."""
    slips = "".join(
        f'[[slips]]\nname = "{metres} m"\ncue = "How long?"\ngiven.length_m = {metres}\n'
        for metres in (2.4, 4.0, 6.0)
    )
    text = RESIN[: RESIN.index("[[slips]]")].replace("{from = 2.4, to = 6.0, step = 0.4}", "LENGTH")
    text = text.replace("LENGTH", "[2.4, 2.8, 3.2, 3.6, 4.0, 4.4, 4.8, 5.2, 5.6, 6.0]") + slips
    mistakes = [each for each in found_in(text) if "comes within three" in each.sentence]
    assert len(mistakes) == 1


def test_two_slips_with_one_figure_are_found() -> None:
    """Twice the width is twice the length: neither would ever be named."""
    text = edited(RESIN, WIDTH, "given.width_mm = {times = 2}")
    text = edited(text, 'answer = "net"', "given.length_m = {times = 2}")
    sentences = [mistake.sentence for mistake in found_in(text)]
    assert sentences == [
        f"Question 'shed-resin': the slip '{name}' is told from the others in only "
        f"0 of {VARIANTS} draws."
        for name in ("the whole roll, not the strip", "the allowance left out")
    ]


def test_a_slip_that_cant_happen_is_found() -> None:
    """Nobody can put a line below into one above."""
    (mistake,) = found_in(edited(RESIN, WIDTH, 'line.glass_kg = {same_as = "resin"}'))
    assert mistake.sentence == (
        "Question 'shed-resin': the slip 'the whole roll, not the strip' leads to no other "
        f"figure at 'resin' in {VARIANTS} of {VARIANTS} draws."
    )


def test_a_slip_that_belongs_to_a_line_above_it_is_found() -> None:
    """The allowance comes after the glass, so nobody can leave it out there."""
    text = edited(CHAIN, 'on = "resin"\nanswer = "net"', 'on = "bandage.glass"\nRATIO')
    (mistake,) = found_in(edited(text, "RATIO", "given.allowance_percent = {times = 2}"))
    assert "leads to no other figure at 'bandage.glass'" in mistake.sentence
    assert "change its line 'on'" in mistake.mend


def test_a_slip_that_nobody_can_type_is_found() -> None:
    """A figure of fifty digits fits no field."""
    (mistake,) = found_in(edited(RESIN, WIDTH, "given.width_mm = {times = 1e60}"))
    assert "it can't always be worked" in mistake.sentence


def test_givens_that_cant_be_worked_together_are_found() -> None:
    """Each width is accepted by itself; a 50 mm bandage over 60 mm tape leaves nothing bare."""
    text = edited(RESIN, '"resin_for_bandage"', '"bare_board"')
    text = text[: text.index("given.length_m")] + (
        "given.bandage_mm = {from = 50, to = 150, step = 5}\n"
        "given.tape_mm = {from = 25, to = 60, step = 5}\n"
    )
    text = edited(text, 'line = "resin"\nunit = "g"', 'line = "side"\nunit = "mm"')
    text = edited(text, text.splitlines()[3], 'ask = "How much is bare?"')
    assert any("it can't always be worked" in mistake.sentence for mistake in found_in(text))


def test_the_ends_of_all_ranges_are_worked_together() -> None:
    """Three ranges of a thousand values each: no draw meets all their ends, and a roll might."""
    text = RESIN.replace("given.ratio = 2.5", "given.ratio = {from = 2.0, to = 3.0, step = 0.001}")
    text = edited(text, "{from = 2.4, to = 6.0, step = 0.4}", "{from = 2, to = 12, step = 0.01}")
    ends = [tuple(each.givens.values()) for each in at_the_ends(question(text))]
    assert ends == list(product((2, 12), (300, 450), (2.0, 3.0), (10,)))


@pytest.mark.parametrize(
    ("text", "shown"),
    [("{length m} long", "{length m} long"), ("{ratio} to 1, {}", "2.5 to 1, {}")],
)
def test_a_text_that_doesnt_print_is_found(text: str, shown: str) -> None:
    """A brace left over is shown to its author."""
    (mistake,) = found_in(edited(RESIN, RESIN.splitlines()[3], f'ask = "{text}"'))
    assert mistake.sentence == f"Question 'shed-resin': it doesn't print sensibly: {shown}"


def test_a_reinforcement_is_no_infinity() -> None:
    """Words that hold the letters of a figure gone wrong are words all the same."""
    ask = 'ask = "The reinforcement, finally, is {length_m} long. How much resin?"'
    assert found_in(edited(RESIN, RESIN.splitlines()[3], ask)) == []


def test_a_question_has_two_slips() -> None:
    """One alone would be named for want of others."""
    text = RESIN[: RESIN.rindex("[[slips]]")]
    (mistake,) = found_in(text)
    assert mistake.sentence == "Question 'shed-resin': it takes 2 slips at least, and knows 1."


def test_a_chain_is_checked_at_each_line() -> None:
    """A slip that is close at the line it belongs to is found there."""
    assert found_in(CHAIN) == []
    (mistake,) = found_in(edited(CHAIN, WIDTH, "given.width_mm = 77"))
    assert "the whole roll" in mistake.sentence


def test_a_lesson_asks_five_questions(content: Path) -> None:
    """Four are too few to practise with."""
    text = lesson_text(*(another(RESIN, f"shed-{letter}") for letter in "abcd"))
    mistakes = [each for each in rewritten(content, text) if each.file == FILE]
    assert [each.sentence for each in mistakes] == ["A lesson asks 5 questions at least."]


def test_a_lesson_has_two_pictures_and_a_worked_job(content: Path) -> None:
    """The same picture twice is one."""
    text = lesson_text().replace("shed-wrong.svg", "shed-strip.svg")
    start = text.index("```worked")
    text = text[:start] + text[text.index("Now you.") :]
    mistakes = [each for each in rewritten(content, text) if each.file == FILE]
    assert [mistake.sentence for mistake in mistakes] == [
        "A lesson has 2 pictures at least.",
        "A lesson has one worked job.",
    ]


def test_findings_come_by_file_and_line(content: Path) -> None:
    """Somebody mends a file from its top."""
    text = lesson_text(*(another(RESIN, f"shed-{letter}") for letter in "abcd"))
    text += '\n!!! caution "Edges"\n    Look down.\nThen turn round.\n'
    found = [(each.file, each.line) for each in rewritten(content, text)]
    assert len(found) > 2
    assert found == sorted(found)


def test_a_mistake_in_meaning_points_at_the_questions_id(content: Path) -> None:
    """In the file of its lesson."""
    text = lesson_text().replace(another(RESIN, "shed-resin-c"), "THIRD")
    third = edited(another(RESIN, "shed-resin-c"), WIDTH, "given.ratio = 2.6")
    text = text.replace("THIRD", third)
    (mistake,) = rewritten(content, text)
    assert (mistake.file, mistake.line) == (FILE, line_of(text, 'id = "shed-resin-c"'))


def test_a_line_that_falls_out_of_its_box_is_pointed_at(content: Path) -> None:
    """A caution's last line without its four spaces would stand below the box."""
    text = lesson_text() + '\n!!! caution "Edges"\n    Look down.\nThen turn round.\n'
    (mistake,) = [each for each in rewritten(content, text) if "box" in each.sentence]
    assert (mistake.line, mistake.text) == (line_of(text, "Then turn round."), "Then turn round.")


def test_a_box_of_a_kind_that_isnt_there_is_pointed_at(content: Path) -> None:
    """It would stand on the page without a look of its own, a caution among plain words."""
    text = lesson_text(RESIN) + '\n!!! cuation "Eyes"\n    Goggles first.\n'
    found = {mistake.sentence: mistake for mistake in rewritten(content, text)}
    mistake = found["There is no box 'cuation'."]
    assert (mistake.line, mistake.mend) == (
        line_of(text, "!!! cuation"),
        "Did you mean 'caution'?",
    )


def test_a_paragraph_after_a_box_is_no_mistake(content: Path) -> None:
    """An empty line ends a box."""
    text = lesson_text() + '\n!!! caution "Edges"\n    Look down.\n\nThen turn round.\n'
    assert [each for each in rewritten(content, text) if "box" in each.sentence] == []


@pytest.mark.parametrize("text", [RESIN, CHAIN])
def test_what_is_told_apart_is_what_marking_names(text: str) -> None:
    """The check works each slip once; an answer typed with that slip is marked by its name."""
    for number in range(20):
        drawn = variant(question(text), f"seed-{number}")
        right = drawn.working().figures
        made = {each: tuple(slip_figures(drawn, each, right)) for each in drawn.question.slips}
        assert list(told_apart(made, right)) == [
            slip for slip in drawn.question.slips if named_as_typed(drawn, slip) == slip
        ]


def named_as_typed(drawn: Variant, slip: Slip) -> Slip | EverydaySlip | None:
    """Return what a mark calls it when somebody makes a slip at the first line it shows at."""
    right = drawn.working().figures
    typed = {
        ask.line: Typed(repr(ask.in_asked_unit(right[ask.line])), ask.unit)
        for ask in drawn.question.asks
    }
    ask, figure = next(slip_figures(drawn, slip, right))
    typed[ask.line] = Typed(f"{ask.in_asked_unit(figure):.9f}", ask.unit)
    return mark_answers(drawn, typed, try_no=1).slip


def test_a_constant_that_is_typed_is_pointed_at(content: Path) -> None:
    """In the whole content, and in a lesson that is looked at alone."""
    text = edited(lesson_text(), "Now you.", "Now you, with a lap of 40 mm.")
    (mistake,) = rewritten(content, text)
    assert (mistake.file, mistake.line) == (FILE, line_of(text, "Now you,"))
    assert mistake.mend.startswith("Write {mat-lap}")
    library = read_library(content)
    assert list(map(str, check_lesson(library, library.lessons[0]))) == [str(mistake)]


def test_a_marked_word_is_looked_up_in_a_lesson_alone(content: Path) -> None:
    """Its author sees it while writing."""
    text = edited(lesson_text(), "Now you.", "Now you, [[theodolite]].")
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    library = read_library(content)
    (mistake,) = check_lesson(library, library.lessons[0])
    assert mistake.sentence.startswith("The word 'theodolite' isn't explained")
