"""`trainer check`: what is wrong with the lessons, by file and line."""

import re
from pathlib import Path

import pytest
from cli_terminal import ROOT, refused, said, trainer


def spoil(content: Path, pattern: str, replacement: str) -> str:
    """Put another line for the first one of this pattern; return where that is, as it is named."""
    for file in sorted((content / "lessons").iterdir()):
        lines = file.read_text("utf-8").splitlines()
        for number, line in enumerate(lines, 1):
            if re.fullmatch(pattern, line):
                lines[number - 1] = re.sub(pattern, replacement, line)
                file.write_text("\n".join(lines), "utf-8")
                return f"content/lessons/{file.name}:{number}:"
    raise AssertionError(f"No lesson has a line like {pattern}.")


def mistakes(content: Path) -> str:
    """Return what the check says before it counts up and exits 1."""
    result = trainer("check", str(content))
    assert isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code == 1
    found, _, total = result.stderr.strip().rpartition("\n")
    assert re.fullmatch(rf"Error: \d+ to mend in {re.escape(str(content))}\.", total)
    return found


@pytest.mark.usefixtures("quick_check")
def test_the_lessons_are_well() -> None:
    """Nothing is to be mended, and it says what was read, where, and how often it was worked."""
    lessons = len(list((ROOT / "content" / "lessons").glob("*.md")))
    assert re.fullmatch(
        rf"Lessons: {re.escape(str(ROOT / 'content'))}\n"
        rf"Nothing to mend: {lessons} lessons, \d+ questions, each worked 25 times\.\n",
        said("check"),
    )


@pytest.mark.usefixtures("quick_check")
def test_the_folder_of_the_settings_is_checked(one_lesson: Path) -> None:
    """Without a name it reads what TRAINER_CONTENT names, as the server would."""
    assert refused("check").endswith(f" to mend in {one_lesson}.")


@pytest.mark.usefixtures("quick_check")
def test_what_is_to_mend_comes_by_file_and_line(one_lesson: Path) -> None:
    """And all of it is counted up at the end."""
    places = re.findall(r"^(\S+\.\w+):(\d+): ", mistakes(one_lesson), re.MULTILINE)
    assert len(places) > 2
    assert places == sorted(places, key=lambda place: (place[0], int(place[1])))


def test_broken_toml_in_a_question(content: Path) -> None:
    """A word where a figure belongs."""
    where = spoil(content, r"given\.(\w+) = .*", r"given.\1 = twelve")
    assert where in mistakes(content)


def test_broken_toml_in_the_front_matter(content: Path) -> None:
    """A missing quotation mark."""
    where = spoil(content, r"title = \"(.*)\"", r'title = "\1')
    assert where in mistakes(content)


def test_broken_toml_beside_the_lessons(content: Path) -> None:
    """The third line of the competencies is no TOML."""
    file = content / "competencies.toml"
    file.write_text(f"\n\n= 5\n{file.read_text('utf-8')}", "utf-8")
    assert "content/competencies.toml:3:" in mistakes(content)


def test_an_unknown_calculation(content: Path) -> None:
    """The nearest that there is, is offered."""
    where = spoil(content, r"calculate = .*", 'calculate = "catalyst_by_mas"')
    found = mistakes(content)
    assert where in found
    assert "Did you mean 'catalyst_by_mass'?" in found


def test_an_unknown_parameter(content: Path) -> None:
    """No calculation takes moonlight."""
    where = spoil(content, r"given\.\w+ = .*", "given.moonlight = 3")
    found = mistakes(content)
    assert where in found
    assert "moonlight" in found


def test_a_figure_out_of_range(content: Path) -> None:
    """No roof has a thousand million of anything."""
    where = spoil(content, r"given\.(\w+) = [\d.]+", r"given.\1 = 1e9")
    assert where in mistakes(content)


def test_a_missing_picture(content: Path) -> None:
    """It is named where the lesson shows it."""
    where = spoil(content, r"(!\[.*\])\(pictures/.*\)", r"\1(pictures/moonlight.svg)")
    found = mistakes(content)
    assert where in found
    assert "moonlight.svg" in found


def test_a_lesson_that_is_not_utf_8(content: Path) -> None:
    """The line is named on which the first letter is that can't be read."""
    lesson = next((content / "lessons").iterdir())
    lesson.write_bytes(b'+++\nslug = "f\xfcnf"\n+++\n')
    assert f"content/lessons/{lesson.name}:2: This isn't UTF-8 text." in mistakes(content)


def test_an_empty_folder(tmp_path: Path) -> None:
    """Each file that has to be there is named."""
    found = mistakes(tmp_path)
    for name in ("competencies.toml", "cautions.toml", "stock.toml", "lessons"):
        assert f"content/{name}:1: " in found


@pytest.mark.usefixtures("quick_check")
def test_a_mistake_that_shows_only_in_working(one_lesson: Path) -> None:
    """A lesson with one question left is readable, and has too few."""
    lesson = next((one_lesson / "lessons").iterdir())
    questions = re.findall(r"```question\n.*?\n```\n", lesson.read_text("utf-8"), re.DOTALL)
    text = lesson.read_text("utf-8")
    for question in questions[1:]:
        text = text.replace(question, "")
    lesson.write_text(text, "utf-8")
    assert f"content/lessons/{lesson.name}:1: A lesson asks 5 questions" in mistakes(one_lesson)


def test_a_folder_that_is_not_there() -> None:
    """It is named, and nothing is read."""
    assert "nowhere" in refused("check", "nowhere")


def test_a_file_instead_of_a_folder(content: Path) -> None:
    """A lesson by itself can't be checked: it leans on the rest."""
    assert "is a file" in refused("check", str(content / "stock.toml"))


def test_a_folder_where_a_lesson_should_be(content: Path) -> None:
    """Even what nobody would do ends in a sentence."""
    (content / "lessons" / "99-attic.md").mkdir()
    assert "99-attic.md can't be used (Is a directory)." in refused("check", str(content))
