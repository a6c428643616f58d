"""The public names of the room, and whom it may know."""

import ast
import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from trainer import records

MODULES = sorted(module.name for module in pkgutil.iter_modules(records.__path__))
FILES = sorted(Path(records.__path__[0]).rglob("*.py"))
STRANGERS = {"trainer.lessons", "trainer.web", "trainer.engine", "trainer.cli", "trainer.config"}


def test_public_names_are_sorted() -> None:
    """The package lists what it offers in order."""
    assert records.__all__ == sorted(records.__all__)


@pytest.mark.parametrize("name", [name for name in MODULES if name != "migrations"])
def test_public_names_are_there(name: str) -> None:
    """Each module has what it says it offers, and names nothing twice."""
    module = importlib.import_module(f"trainer.records.{name}")
    assert all(hasattr(module, public) for public in module.__all__)
    assert len(set(module.__all__)) == len(module.__all__)


def test_the_room_offers_each_of_its_modules() -> None:
    """`from trainer.records import attempts` works for every one."""
    assert set(MODULES) - {"migrations"} <= set(records.__all__)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_the_room_knows_no_other(path: Path) -> None:
    """No import of lessons, pages, the engine or a request; migrations know the database alone."""
    imported = set(_imports(ast.parse(path.read_text())))
    assert not {name for name in imported for other in STRANGERS if name.startswith(other)}
    assert not {"flask.request", "flask.g", "flask.current_app", "flask.session"} & imported


def _imports(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{alias.name}" for alias in node.names)
