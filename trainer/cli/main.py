"""The command and what it can do; each part is read only when it is called for."""

import importlib
from typing import Any

import click

from trainer.config import ConfigError
from trainer.engine import EngineError
from trainer.lessons import ContentError

_COMMANDS = {
    "check": "trainer.cli.content:check",
    "content": "trainer.cli.content:content",
    "demo": "trainer.cli.demo:demo",
    "person": "trainer.cli.people:person",
    "preview": "trainer.cli.preview:preview",
    "rebuild": "trainer.cli.rebuild:rebuild",
    "roof": "trainer.cli.roof:roof",
    "serve": "trainer.cli.serve:serve",
    "work": "trainer.cli.work:work",
}


class _Commands(click.Group):
    """A group that imports a command when it is wanted, so that each starts quickly."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's own shape
        return sorted(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in _COMMANDS:
            return None
        module, _, name = _COMMANDS[cmd_name].partition(":")
        command: click.Command = getattr(importlib.import_module(module), name)
        return command

    def invoke(self, ctx: click.Context) -> Any:  # noqa: ANN401
        """Run the command; a mistake of ours or the user's is a sentence, not a traceback."""
        try:
            return super().invoke(ctx)
        except (ConfigError, ContentError, EngineError) as error:
            raise click.ClickException(str(error)) from error
        except OSError as error:
            if error.filename is None:
                raise
            reason = f"{error.filename} can't be used ({error.strerror})."
            raise click.ClickException(reason) from error


@click.group(cls=_Commands)
@click.version_option(package_name="trainer")
def main() -> None:
    """Teach, practise and plan the laying of glass-fibre flat roofs by hand.

    Begin with 'trainer demo': it makes an invented crew and shows where to sign in.
    """
