"""The `trainer` command: a door, like the web pages."""

from trainer.cli.main import main

__all__ = ["main"]
