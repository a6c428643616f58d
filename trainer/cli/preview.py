"""`trainer preview`: one lesson in the browser while it is being written."""

import re
from pathlib import Path

import click

from trainer.cli.demo import demo_config, kept_or_passing
from trainer.cli.opening import told
from trainer.cli.serve import refuse_taken_port, run
from trainer.engine.repeats import shortened
from trainer.lessons.errors import did_you_mean
from trainer.lessons.links import slug_in
from trainer.web.preview import Preview

#: Nobody is asked who they are, so nobody else may look.
_HOST = "127.0.0.1"
#: What is guessed at: no number, and no file's name.
_is_told = re.compile(r"[a-z-]+[a-z]").fullmatch
_numbered = re.compile(r"(\d+)-(.+)").fullmatch


@click.command()
@click.argument("lesson")
@click.option(
    "--port", default=8000, show_default=True, type=click.IntRange(1, 65535), help="Port to use."
)
def preview(lesson: str, port: int) -> None:
    """Show LESSON in your browser as a trainee will see it.

    LESSON is its slug, its number or its file's name. Save a file and load the page again: the
    change is there, and so is a mistake, with its line. Nobody signs in, nothing is kept, and
    only this machine can open the page.
    """
    refuse_taken_port(_HOST, port)
    with kept_or_passing(None) as instance, told():
        config = demo_config(instance)
        file = lesson_named(config.content, lesson)
        pages = Preview(config, file.name)
        pages.pages()
        click.echo(f"Lesson:  {file}")
        click.echo(f"Page:    http://{_HOST}:{port}/")
        run(pages, _HOST, port)


def lesson_named(folder: Path, name: str) -> Path:
    """Return the file of the lesson that has this slug, number or file name.

    Raises ClickException with a guess where there is none in the content folder.
    """
    files = sorted((folder / "lessons").glob("*.md"))
    wanted = Path(name)
    if len(wanted.parts) > 1 and wanted.resolve().parent != (folder / "lessons").resolve():
        raise click.ClickException(
            f"{wanted} isn't among the lessons in {folder}. "
            "Set TRAINER_CONTENT to the folder above its 'lessons'."
        )
    known = {each: file for file in files for each in names_of(file)}
    found = known.get(wanted.name) or known.get(wanted.name.lstrip("0"))
    if found is None:
        guess = did_you_mean(wanted.name, filter(_is_told, known))
        raise click.ClickException(
            f"There is no lesson '{shortened(name)}' in {folder}. {guess}".strip()
        )
    return found


def names_of(file: Path) -> list[str]:
    """Return what a lesson may be called: its file, with its number or by itself, its slug."""
    names = [file.name, file.stem]
    numbered = _numbered(file.stem)
    if numbered:
        names += [numbered[1].lstrip("0"), numbered[2]]
    return [*names, slug_in(file)]
