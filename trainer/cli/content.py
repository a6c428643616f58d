"""`trainer check` and `trainer content copy`: for those who write lessons."""

import shlex
import shutil
from pathlib import Path

import click

from trainer.config import read_config
from trainer.lessons import ContentError, check_content, question_check
from trainer.web.thresholds import mistaken_thresholds

_FOLDER = click.Path(path_type=Path, file_okay=False)
_EXISTING = click.Path(path_type=Path, file_okay=False, exists=True)


@click.command()
@click.argument("folder", required=False, type=_EXISTING)
def check(folder: Path | None) -> None:
    """Read all lessons and name what is wrong in them, by file and line.

    Every question is worked 500 times. FOLDER is a content folder; without it, the one that
    'trainer serve' would use.
    """
    folder = folder or read_config().content
    try:
        library, mistakes = check_content(folder)
        mistakes += mistaken_thresholds(library)
    except ContentError as error:
        mistakes, library = list(error.mistakes), None
    for mistake in mistakes:
        click.echo(mistake, err=True)
    if mistakes or library is None:
        raise click.ClickException(f"{len(mistakes)} to mend in {folder}.")
    click.echo(f"Lessons: {folder}")
    lessons, questions = len(library.lessons), len(library.questions)
    click.echo(
        f"Nothing to mend: {lessons} lesson{'s' * (lessons != 1)}, {questions} questions, "
        f"each worked {question_check.VARIANTS} times."
    )


@click.group()
def content() -> None:
    """Look after the folder of lessons."""


@content.command()
@click.argument("folder", type=_FOLDER)
def copy(folder: Path) -> None:
    """Copy the lessons to FOLDER, for a firm that edits its own.

    Then set TRAINER_CONTENT to that folder.
    """
    source, folder = read_config().content, folder.resolve()
    if folder.exists() and any(folder.iterdir()):
        raise click.ClickException(f"{folder} isn't empty. Name a new folder.")
    if folder.is_relative_to(source):
        raise click.ClickException(f"{folder} lies inside the lessons. Name a folder elsewhere.")
    try:
        shutil.copytree(source, folder, dirs_exist_ok=True)
    except OSError as error:
        # For a whole tree there is a list of reasons and no single one.
        reason = error.strerror or error.args[0][0][-1]
        raise click.ClickException(f"{folder} can't be written ({reason}).") from error
    setting = f"TRAINER_CONTENT={shlex.quote(str(folder))}"
    click.echo(f"The lessons are in {folder}. Set {setting} to use them.")
