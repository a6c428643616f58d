"""What is promised and nowhere kept: competencies, skills and pictures that nobody meets."""

from pathlib import Path

from kinds_specimens import CHOOSE
from lessons_specimens import CHAIN, RESIN, another, edited, lesson_text, line_of

from trainer.lessons.coverage import check_coverage
from trainer.lessons.errors import AuthorError
from trainer.lessons.library import read_library

COMPETENCIES = "content/competencies.toml"


def found(content: Path) -> list[AuthorError]:
    """Return what the content promises and doesn't keep."""
    return list(check_coverage(read_library(content)))


def add_to_competencies(content: Path, text: str) -> str:
    """Return the text of the file once this stands in it before the rules."""
    file = content / "competencies.toml"
    whole = edited(file.read_text("utf-8"), "[rules.retries]", f"{text}\n[rules.retries]")
    file.write_text(whole, "utf-8")
    return whole


def test_sound_content_keeps_what_it_promises(content: Path) -> None:
    """The one competency is taught, its skills are asked with sums, its pictures are shown."""
    assert found(content) == []


def test_a_competency_that_nobody_teaches(content: Path) -> None:
    """It stands in the file, and no lesson names it."""
    own = (content / "competencies.toml").read_text("utf-8").partition("[[competency.skill]]")[0]
    text = add_to_competencies(content, edited(own, '"bandaging"', '"gutters"'))
    (mistake,) = found(content)
    assert (mistake.file, mistake.line) == (COMPETENCIES, line_of(text, 'slug = "gutters"'))
    assert mistake.text == 'slug = "gutters"'
    assert mistake.sentence == "No lesson teaches 'gutters'."
    assert mistake.mend == 'Write competency = "gutters" in the lesson that does.'


def test_a_competency_that_nobody_asks(content: Path) -> None:
    """A lesson names it, and asks nothing of it."""
    (content / "lessons/01-shed.md").write_text(lesson_text("").replace("```question\n```", ""))
    first, *_ = found(content)
    assert first.sentence == "No lesson that teaches 'bandaging' asks a skill of it."


def test_a_skill_without_a_sum(content: Path) -> None:
    """No question asks it at all, so none does with a calculation."""
    extra = '[[competency.skill]]\nslug = "folding"\ntitle = "Folding"\nweight = 1\n'
    text = add_to_competencies(content, extra)
    (mistake,) = found(content)
    assert (mistake.file, mistake.line) == (COMPETENCIES, line_of(text, 'slug = "folding"'))
    assert mistake.sentence == "No question has people work a sum for the skill 'folding'."


def test_picking_an_answer_is_no_sum(content: Path) -> None:
    """Somebody may pick right by luck: a skill that is only picked has no sum yet."""
    extra = '[[competency.skill]]\nslug = "folding"\ntitle = "Folding"\nweight = 1\n'
    add_to_competencies(content, extra)
    picked = CHOOSE.replace("left-over", "folding")
    text = f"{lesson_text()}\n```question\n{picked}```\n"
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    (mistake,) = found(content)
    assert "'folding'" in mistake.sentence


def test_a_skill_may_be_asked_in_one_line_of_a_chain(content: Path) -> None:
    """The glass is asked in the chain alone, and nowhere once the chain is gone."""
    text = lesson_text(*(another(RESIN, f"shed-{letter}") for letter in "abcde"))
    assert '"bandage-glass"' in CHAIN
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    (mistake,) = found(content)
    assert "'bandage-glass'" in mistake.sentence


def test_a_picture_that_nobody_shows(content: Path) -> None:
    """It is drawn, and stands in no lesson."""
    drawn = (content / "pictures/shed-strip.svg").read_text("utf-8")
    (content / "pictures/shed-old.svg").write_text(drawn.replace("shed-strip", "shed-old"))
    (mistake,) = found(content)
    assert (mistake.file, mistake.line) == ("content/pictures/shed-old.svg", 1)
    assert mistake.sentence == "No lesson shows this picture."
    assert mistake.mend == "Show it in one, or delete the file."
