"""The command itself: help that a newcomer understands, and sentences instead of tracebacks."""

from collections.abc import Iterator
from importlib.metadata import version
from pathlib import Path

import click
import pytest
from cli_terminal import refused, said, trainer

from trainer.cli import main


def commands(
    group: click.Group = main, path: tuple[str, ...] = ()
) -> Iterator[tuple[tuple[str, ...], click.Command]]:
    """Yield each command below a group, with the words that call it."""
    context = click.Context(group)
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        assert command is not None
        yield (*path, name), command
        if isinstance(command, click.Group):
            yield from commands(command, (*path, name))


EVERY_COMMAND = pytest.mark.parametrize(
    ("words", "command"), [pytest.param(*each, id=" ".join(each[0])) for each in commands()]
)


def test_there_are_these_commands() -> None:
    """Those that are called by name, and no others."""
    assert [" ".join(words) for words, _ in commands()] == [
        "check",
        "content",
        "content copy",
        "demo",
        "person",
        "person add",
        "preview",
        "rebuild",
        "roof",
        "serve",
        "work",
    ]


@pytest.mark.parametrize("words", [[], ["--help"]])
def test_a_newcomer_is_told_where_to_begin(words: list[str]) -> None:
    """Alone or with --help: what it is for, each command in a whole sentence, and the demo."""
    told = trainer(*words).output
    assert "laying of glass-fibre flat roofs" in told
    assert "Begin with 'trainer demo'" in told
    listed = [line.split(maxsplit=1) for line in told.partition("Commands:\n")[2].splitlines()]
    names = ["check", "content", "demo", "person", "preview", "rebuild", "roof", "serve", "work"]
    assert [name for name, _ in listed] == names
    assert all(words.endswith(".") and not words.endswith("...") for _, words in listed)


@EVERY_COMMAND
def test_every_command_says_what_it_does(words: tuple[str, ...], command: click.Command) -> None:
    """Its help begins with how it is called and a sentence of its own."""
    told = said(*words, "--help")
    assert told.startswith(f"Usage: trainer {' '.join(words)} ")
    assert command.help
    assert command.help.split(".")[0] in " ".join(told.split())


@EVERY_COMMAND
def test_every_option_says_what_it_is_for(words: tuple[str, ...], command: click.Command) -> None:
    """None stands there with nothing but its name."""
    told = " ".join(said(*words, "--help").split())
    for option in command.params:
        if isinstance(option, click.Option):
            assert option.help, option.name
            assert f"{option.opts[0]} " in told
            assert option.help in told


@EVERY_COMMAND
def test_every_argument_is_explained(words: tuple[str, ...], command: click.Command) -> None:
    """NAME, FOLDER and KEY=VALUE stand in the sentences too."""
    for argument in command.params:
        if isinstance(argument, click.Argument):
            assert (argument.metavar or argument.name or "").strip("[].").upper() in (
                f"{command.help}".upper()
            ), words


def test_the_version_is_the_installed_one() -> None:
    """`--version` says the name and the number."""
    assert said("--version") == f"trainer, version {version('trainer')}\n"


@pytest.mark.parametrize("words", [["wrk"], ["content", "coppy"], ["serve", "--prot", "1"]])
def test_a_slip_of_the_keyboard(words: list[str]) -> None:
    """The word that isn't known is named."""
    assert (words[-2] if words[-1] == "1" else words[-1]) in refused(*words)


@pytest.mark.usefixtures("zone")
@pytest.mark.parametrize(
    "words", [["check"], ["serve"], ["demo"], ["content", "copy", "x"], ["person", "add", "Noor"]]
)
def test_a_setting_that_cannot_be_used(words: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever is asked for, the sentence names the setting and what it is set to."""
    monkeypatch.setenv("TRAINER_HTTPS", "perhaps")
    given = ["--password", "harbour-wall-9"] if words[0] == "person" else []
    assert refused(*words, *given) == "TRAINER_HTTPS is 'perhaps'. Write yes or no."


@pytest.mark.usefixtures("zone")
@pytest.mark.parametrize("words", [["serve"], ["demo"]])
def test_lessons_with_mistakes_are_not_served(words: list[str], one_lesson: Path) -> None:
    """File, line and a guess, as the check would say."""
    lesson = next((one_lesson / "lessons").iterdir())
    text = lesson.read_text("utf-8").replace('competency = "safety"', 'competency = "safty"')
    lesson.write_text(text, "utf-8")
    told = refused(*words)
    assert f"content/lessons/{lesson.name}:" in told
    assert "Did you mean 'safety'?" in told
