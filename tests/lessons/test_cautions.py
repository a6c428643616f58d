"""content/cautions.toml: each caution once."""

from pathlib import Path

import pytest
from lessons_specimens import CAUTIONS, edited, line_of

from trainer.lessons.cautions import Caution, read_cautions
from trainer.lessons.errors import AuthorError


def mistake_in(text: str, folder: Path) -> AuthorError:
    """Return the mistake for which a text is refused as a file of a content folder."""
    (folder / "cautions.toml").write_text(text, "utf-8")
    with pytest.raises(AuthorError) as refused:
        read_cautions(folder)
    assert refused.value.file == "content/cautions.toml"
    return refused.value


def test_cautions_are_read_in_order(content: Path) -> None:
    """Each by its slug, with its title, its text and where it is known from."""
    cautions = read_cautions(content)
    assert list(cautions) == ["eyes", "height"]
    assert cautions["height"] == Caution(
        "height", "Mind the edge", "Rails first.", "common practice"
    )


@pytest.mark.parametrize("key", ["slug", "title", "text", "source"])
def test_a_caution_is_whole(key: str, tmp_path: Path) -> None:
    """A warning without a source is hearsay; what the second lacks is missed there."""
    start = CAUTIONS.rindex("[[caution]]")
    line = next(each for each in CAUTIONS[start:].splitlines() if each.startswith(key))
    text = CAUTIONS[:start] + edited(CAUTIONS[start:], line, "")
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == f"A caution has no '{key}'."
    assert mistake.line == CAUTIONS[:start].count("\n") + 1


def test_a_caution_twice_is_refused(tmp_path: Path) -> None:
    """It points at the second."""
    text = edited(CAUTIONS, 'slug = "height"', 'slug = "eyes"')
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == "The caution 'eyes' stands here twice."
    assert mistake.line == text[: text.rindex('slug = "eyes"')].count("\n") + 1


def test_an_unknown_key_gets_a_guess(tmp_path: Path) -> None:
    """At its line."""
    text = edited(CAUTIONS, 'title = "Mind the edge"', 'titel = "Mind the edge"')
    mistake = mistake_in(text, tmp_path)
    assert (mistake.line, mistake.mend) == (line_of(text, "titel"), "Did you mean 'title'?")


@pytest.mark.parametrize("text", ["", "caution = 3", "caution = ['eyes']", "[caution]\nslug = 'a'"])
def test_another_shape_is_refused_with_a_sentence(text: str, tmp_path: Path) -> None:
    """A file of cautions is a list of them."""
    assert "'caution'" in mistake_in(text, tmp_path).sentence
