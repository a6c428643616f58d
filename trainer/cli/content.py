"""`trainer check` and `trainer content copy`: for those who write lessons."""

import shutil
from pathlib import Path

import click

from trainer.config import read_config
from trainer.lessons import ContentError, check_content


@click.command()
@click.argument("folder", required=False, type=click.Path(path_type=Path, exists=True))
def check(folder: Path | None) -> None:
    """Read all lessons, work every question 500 times, and name what is wrong.

    FOLDER is a content folder; without it, the one that 'trainer serve' would use.
    """
    folder = folder or read_config().content
    try:
        library, mistakes = check_content(folder)
    except ContentError as error:
        mistakes, library = list(error.mistakes), None
    for mistake in mistakes:
        click.echo(mistake, err=True)
    if mistakes or library is None:
        raise click.ClickException(f"{len(mistakes)} to mend in {folder}.")
    click.echo(
        f"{len(library.lessons)} lessons and {len(library.questions)} questions in {folder}: "
        "all well."
    )


@click.group()
def content() -> None:
    """Look after the folder of lessons."""


@content.command()
@click.argument("folder", type=click.Path(path_type=Path))
def copy(folder: Path) -> None:
    """Copy the lessons to FOLDER, for a firm that edits its own.

    Then set TRAINER_CONTENT to that folder.
    """
    if folder.exists() and any(folder.iterdir()):
        raise click.ClickException(f"{folder} isn't empty. Name a new folder.")
    try:
        shutil.copytree(read_config().content, folder, dirs_exist_ok=True)
    except OSError as error:
        raise click.ClickException(f"{folder} can't be written ({error.strerror}).") from error
    click.echo(f"The lessons are in {folder}. Set TRAINER_CONTENT={folder} to use them.")
