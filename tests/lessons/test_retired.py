"""Names that were dropped: the file that lists them, and blocks that take one again."""

from pathlib import Path

import pytest
from lessons_specimens import FILE

from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.library import read_library
from trainer.lessons.retired import NOTHING_RETIRED, read_retired

ON_ROOFS = """\
+++
slug = "roof-questions"
title = "Practise on this roof"
+++

```question
id = "longest-bandage"
title = "The longest side"
calculate = "resin_for_bandage"
ask = "A bandage {length_m} long, {ratio} to 1. How much resin?"
line = "resin"
unit = "g"
tolerance = "2 %"
given.length_m = {plan = "sides.longest_m"}
given.ratio = 2.5
```
"""


def retire(content: Path, text: str) -> list[AuthorError]:
    """Return what is wrong once retired.toml says this."""
    (content / "retired.toml").write_text(text, "utf-8")
    with pytest.raises(ContentError) as refused:
        read_library(content)
    return list(refused.value.mistakes)


def test_a_firm_need_not_have_dropped_anything(content: Path) -> None:
    """The file may be missing, and its lists may be empty."""
    assert read_retired(content) == NOTHING_RETIRED
    (content / "retired.toml").write_text("questions = []\n", "utf-8")
    assert read_retired(content) == NOTHING_RETIRED


@pytest.mark.parametrize(
    ("key", "name", "what", "file", "line"),
    [
        ("questions", "shed-resin", "question", FILE, 'id = "shed-resin"'),
        ("lessons", "shed", "lesson", FILE, 'slug = "shed"'),
        ("skills", "resin-for-mat", "skill", "content/competencies.toml", None),
        ("competencies", "bandaging", "competency", "content/competencies.toml", None),
    ],
)
def test_a_name_that_was_dropped_is_refused(
    key: str, name: str, what: str, file: str, line: str | None, content: Path
) -> None:
    """At the line on which it is taken again."""
    (mistake,) = retire(content, f'{key} = ["gone", "{name}"]\n')
    assert mistake.sentence == f"There was a {what} '{name}' once, and its name isn't used again."
    assert "content/retired.toml" in mistake.mend
    assert (mistake.file, mistake.text) == (file, line or f'slug = "{name}"')
    written = (content.parent / mistake.file).read_text("utf-8").splitlines()
    assert written[mistake.line - 1] == mistake.text


def test_a_question_on_roofs_may_not_take_one_either(content: Path) -> None:
    """Practice is kept by ids too."""
    (content / "roof-questions.md").write_text(ON_ROOFS, "utf-8")
    (mistake,) = retire(content, 'questions = ["longest-bandage"]\n')
    assert (mistake.file, mistake.line) == ("content/roof-questions.md", 7)


@pytest.mark.parametrize(
    ("text", "line", "sentence"),
    [
        ('question = ["gone"]', 1, "The file has no key 'question'."),
        ('\nskills = "gone"', 2, "'skills' must be a list."),
        ("lessons = [1]", 1, "'lessons' must be a list of texts in quotes."),
        ("skills = ]", 1, "This is not TOML: Invalid value."),
    ],
)
def test_a_list_that_cannot_be_read_is_pointed_at(
    text: str, line: int, sentence: str, content: Path
) -> None:
    """Like any other file of the content."""
    (mistake,) = retire(content, text)
    assert (mistake.file, mistake.line) == ("content/retired.toml", line)
    assert mistake.sentence == sentence
