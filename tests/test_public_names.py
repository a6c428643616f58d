"""The public names of each package: listed in `__all__`, sorted, and all of them."""

import ast
import importlib
from pathlib import Path

import pytest

import trainer
import trainer.engine
from trainer.engine import METHODS, EngineError

HOUSE = Path(trainer.__file__).parent
PACKAGES = sorted(
    ".".join([HOUSE.name, *path.parent.relative_to(HOUSE).parts])
    for path in HOUSE.rglob("__init__.py")
)
EVERY_PACKAGE = pytest.mark.parametrize("package", PACKAGES)


def body_of(package: str) -> list[ast.stmt]:
    """Return the statements of a package's own module."""
    path = HOUSE.joinpath(*package.split(".")[1:]) / "__init__.py"
    return ast.parse(path.read_text(encoding="utf-8")).body


def listed(package: str) -> list[str]:
    """Return what a package lists as public; one that holds only a docstring lists nothing."""
    return list(getattr(importlib.import_module(package), "__all__", []))


def defined(package: str) -> set[str]:
    """Return the functions, classes and constants that a package's own module makes."""
    names: set[str] = set()
    for node in body_of(package):
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)):
            names.add(node.name)
        targets = node.targets if isinstance(node, ast.Assign) else []
        targets += [node.target] if isinstance(node, ast.AnnAssign) else []
        names |= {target.id for target in targets if isinstance(target, ast.Name)}
    return {name for name in names if not name.startswith("_")}


def gathered(package: str) -> set[str]:
    """Return the names that a package's own module imports from inside the package."""
    return {
        alias.asname or alias.name
        for node in body_of(package)
        if isinstance(node, ast.ImportFrom)
        and (node.level or (node.module or "").startswith(package))
        for alias in node.names
    }


def rank(name: str) -> tuple[int, str]:
    """Constants first, then classes, then functions and modules, each by the alphabet."""
    if name.isupper():
        return 0, name
    return (1 if name[0].isupper() else 2), name


@EVERY_PACKAGE
def test_names_are_sorted_and_there(package: str) -> None:
    """Each is listed once, in order, and can be imported."""
    names = listed(package)
    assert names == sorted(set(names), key=rank)
    module = importlib.import_module(package)
    assert [name for name in names if not hasattr(module, name)] == []


@EVERY_PACKAGE
def test_what_a_package_makes_is_listed(package: str) -> None:
    """A function, class or constant without an underscore is public."""
    assert defined(package) <= set(listed(package))


@EVERY_PACKAGE
def test_a_package_that_only_gathers_lists_all_it_gathers(package: str) -> None:
    """Where nothing is made, every name that comes from inside is there for others."""
    makes_something = any(isinstance(node, ast.FunctionDef) for node in body_of(package))
    if not makes_something:
        assert gathered(package) | defined(package) == set(listed(package))


def test_every_calculation_is_a_public_name_of_the_engine() -> None:
    """What is registered can be imported, and is the same."""
    for name, method in METHODS.items():
        assert name in trainer.engine.__all__
        assert getattr(trainer.engine, name) is method


def test_every_error_of_the_engine_is_public() -> None:
    """Whoever shows its sentence can catch it by name."""
    family, found = [EngineError], set()
    while family:
        error = family.pop()
        found.add(error.__name__)
        family += error.__subclasses__()
    assert found <= set(trainer.engine.__all__)
