"""The rooms of the house: who may import whom, read from the source.

web, cli → lessons, records, engine; lessons → engine; lessons and records meet only in a door.
"""

import ast
import graphlib
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import trainer

HOUSE = Path(trainer.__file__).parent
ROOMS = {"engine", "lessons", "records", "web", "cli"}
DOORS = {"web", "cli"}

#: What belongs to one request, wherever it is imported from.
REQUESTS = {
    *(f"flask.{name}" for name in ("request", "session", "g", "Request", "Response", "redirect")),
    *(f"flask.{name}" for name in ("url_for", "render_template", "flash", "abort", "Blueprint")),
    "flask.globals",
    "flask.wrappers",
    "flask_wtf",
    "wtforms",
    "werkzeug",
}
#: The web, the database, Markdown, files and the clock: the engine knows none of them.
NOT_FOR_THE_ENGINE = {"datetime", "http", "io", "os", "pathlib", "random", "shutil", "socket"} | {
    *("sqlite3", "subprocess", "tempfile", "time", "tomllib", "urllib", "zoneinfo"),
}


def modules(room: str) -> list[Path]:
    """Return the modules of a room; a room is a package or one module."""
    return sorted((HOUSE / room).rglob("*.py")) or [HOUSE / f"{room}.py"]


def imported_by(path: Path) -> Iterator[str]:
    """Yield the full names that a module imports, wherever in it: `flask.request`."""
    package = [HOUSE.name, *path.relative_to(HOUSE).parts][:-1]
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) - node.level + 1] if node.level else []
            origin = ".".join([*above, *([node.module] if node.module else [])])
            yield from (f"{origin}.{alias.name}" for alias in node.names)


def imported(room: str) -> set[tuple[str, str]]:
    """Return where in a room what is imported, for a failure that can be read."""
    return {
        (str(path.relative_to(HOUSE)), name) for path in modules(room) for name in imported_by(path)
    }


def rooms_of(names: set[tuple[str, str]]) -> set[str]:
    """Return which rooms, or single modules of the house, are imported."""
    parts = (name.split(".") for _, name in names)
    return {part[1] for part in parts if part[0] == HOUSE.name and len(part) > 1}


def outsiders(room: str) -> set[tuple[str, str]]:
    """Return what a room imports from neither the standard library nor the house."""
    at_home = {*sys.stdlib_module_names, HOUSE.name}
    return {(path, name) for path, name in imported(room) if name.split(".")[0] not in at_home}


def starts_with(name: str, prefixes: set[str]) -> bool:
    """Whether a full name is one of these or lies inside one."""
    return any(name == prefix or name.startswith(f"{prefix}.") for prefix in prefixes)


def test_the_engine_knows_only_itself_and_the_standard_library() -> None:
    """The polygon clipper is the one exception, inside one function of one module."""
    assert rooms_of(imported("engine")) <= {"engine"}
    assert outsiders("engine") <= {("engine/outline.py", "pyclipper")}


def test_the_polygon_clipper_is_imported_when_it_is_needed() -> None:
    """The engine can be imported without it: it never stands at the top of a module."""
    for path in modules("engine"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            assert "pyclipper" not in ast.dump(node) or not isinstance(
                node, (ast.Import, ast.ImportFrom)
            )


def test_the_engine_knows_no_files_and_no_clock() -> None:
    """What it returns follows from what it is given, and from nothing else."""
    found = {each for each in imported("engine") if starts_with(each[1], NOT_FOR_THE_ENGINE)}
    assert found == set()


def test_the_lessons_know_only_the_engine_and_markdown() -> None:
    """No web, no database, no records."""
    assert rooms_of(imported("lessons")) <= {"engine", "lessons"}
    assert {name.split(".")[0] for _, name in outsiders("lessons")} <= {"markdown"}


def test_the_records_know_nobody_else() -> None:
    """Neither lessons nor engine nor web: they get frozen values from a door."""
    assert rooms_of(imported("records")) <= {"records"}


@pytest.mark.parametrize("room", sorted(ROOMS - DOORS))
def test_only_the_doors_know_requests(room: str) -> None:
    """A request, a session or a form is known to web and cli alone."""
    assert {each for each in imported(room) if starts_with(each[1], REQUESTS)} == set()


def test_the_factory_and_the_settings_know_no_requests() -> None:
    """What stands in the hall is read before any request comes."""
    hall = {(path.name, name) for path in HOUSE.glob("*.py") for name in imported_by(path)}
    assert {each for each in hall if starts_with(each[1], REQUESTS)} == set()


def test_there_are_no_cycles_between_rooms() -> None:
    """Rooms can be read one after another, each before those that build on it."""
    single = {path.stem for path in HOUSE.glob("*.py")} - {"__init__"}
    arrows = {room: rooms_of(imported(room)) - {room} for room in ROOMS | single}
    known = ROOMS | single
    order = graphlib.TopologicalSorter({room: to & known for room, to in arrows.items()})
    assert set(order.static_order()) == known


@pytest.mark.parametrize("room", sorted(ROOMS - DOORS))
def test_no_room_reaches_into_the_factory(room: str) -> None:
    """`create_app` and the settings are for the doors; a room gets what it needs from them."""
    assert "create_app" not in rooms_of(imported(room))
    assert "config" not in rooms_of(imported(room))
