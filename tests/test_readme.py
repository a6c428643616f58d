"""The README: what it tells somebody to type works, and what it shows is what is printed."""

import os
import re
import shlex
import subprocess
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from trainer import config
from trainer.cli import main
from trainer.lessons.question_check import VARIANTS

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text("utf-8")


def blocks(language: str) -> list[str]:
    """Return the code blocks of a language, in order."""
    return re.findall(rf"^```{language}\n(.*?)^```$", README, re.DOTALL | re.MULTILINE)


def rows() -> list[tuple[str, str]]:
    """Return the commands of the table, each with what is said of it."""
    return re.findall(r"^\| `(trainer .*?)` \| (.*) \|$", README, re.MULTILINE)


# The two commands.


def test_there_are_two_commands_of_one_line() -> None:
    """One to try it, one to test it."""
    demo, tests = blocks("sh")
    assert demo.count("\n") == tests.count("\n") == 1
    assert demo.endswith("&& .venv/bin/trainer demo\n")
    assert tests == "sh tests/run\n"


def test_the_robot_runs_the_same_command() -> None:
    """What passes here passes there."""
    script = (ROOT / ".ci" / "run").read_text("utf-8").splitlines()
    assert script[-1] == f"exec {blocks('sh')[1].strip()}"
    assert 'cd "$(dirname "$0")/.."' in script


@pytest.mark.parametrize("script", [".ci/run", "tests/run"])
def test_a_script_is_one_for_any_shell(script: str) -> None:
    """It can be read, stops at the first fault, and works from any folder."""
    text = (ROOT / script).read_text("utf-8")
    subprocess.run(["/bin/sh", "-n", ROOT / script], check=True)  # noqa: S603 - our own
    assert text.startswith("#!/bin/sh\n")
    assert "set -eu\n" in text


def test_the_test_command_runs_every_check() -> None:
    """The linter, the formatter, the types, the lessons and the tests."""
    script = (ROOT / "tests" / "run").read_text("utf-8")
    for check in ('ruff" check', 'ruff" format --check', 'mypy"', 'trainer" check', 'pytest"'):
        assert f'"$venv/bin/{check}' in script


class Machine:
    """A machine of stubs: what is called on it is written down, and nothing is done."""

    def __init__(self, folder: Path, *, ensures_pip: bool, root: bool) -> None:
        self.folder = folder
        self.log = folder / "log"
        (folder / "bin").mkdir()
        if ensures_pip:
            (folder / "pip-is-there").touch()
        self.put("id", f"echo {0 if root else 1000}")
        self.put("sudo", 'echo "sudo" >>log; exec "$@"')
        self.put("apt-get", 'echo "apt-get $*" >>log; touch pip-is-there')
        self.put(
            "python3",
            'echo "python3 $*" >>log; mkdir -p .venv/bin; [ -e pip-is-there ] || exit 1',
            "for each in pip trainer; do printf '#!/bin/sh\\necho \"%s $*\" >>log\\n' $each "
            ">.venv/bin/$each; chmod +x .venv/bin/$each; done",
        )

    def put(self, name: str, *lines: str) -> None:
        """Put a command on the machine."""
        file = self.folder / "bin" / name
        file.write_text("\n".join(["#!/bin/sh", *lines, ""]))
        file.chmod(0o755)

    def type(self, line: str) -> list[str]:
        """Return what was called when somebody types a line."""
        path = f"{self.folder}/bin:{os.environ['PATH']}"
        subprocess.run(  # noqa: S603 - the README's own line, among stubs
            ["/bin/sh", "-c", line], cwd=self.folder, env={"PATH": path}, check=True
        )
        return self.log.read_text().splitlines()


INSTALLED = ["pip install -q .", "trainer demo"]
MAKES = "python3 -m venv .venv"
BRINGS = "apt-get install -y python3-venv"


def test_the_demo_command_where_python_is_whole(tmp_path: Path) -> None:
    """An environment, the trainer in it, the demo; nothing is brought."""
    machine = Machine(tmp_path, ensures_pip=True, root=False)
    assert machine.type(blocks("sh")[0]) == [MAKES, *INSTALLED]


@pytest.mark.parametrize(("root", "asks"), [(True, []), (False, ["sudo"])])
def test_the_demo_command_where_debian_left_a_part_out(
    root: bool,  # noqa: FBT001 - parametrised
    asks: list[str],
    tmp_path: Path,
) -> None:
    """The missing package is brought, by sudo unless one is root, and it goes on."""
    machine = Machine(tmp_path, ensures_pip=False, root=root)
    assert machine.type(blocks("sh")[0]) == [MAKES, *asks, BRINGS, MAKES, *INSTALLED]


# What it shows.


def test_the_session_is_what_is_printed() -> None:
    """Typed as it stands there, it answers as it stands there."""
    (session,) = blocks("console")
    typed, _, shown = session.partition("\n")
    words = shlex.split(typed.removeprefix("$ trainer "))
    result = CliRunner().invoke(main, words, prog_name="trainer")
    assert result.exit_code == 0
    assert result.output == shown


@pytest.mark.parametrize(("typed", "says"), [pytest.param(*row, id=row[0]) for row in rows()])
def test_a_command_of_the_table_exists(typed: str, says: str) -> None:
    """Its words lead to a command, and its options are that command's."""
    assert says
    command: click.Command | None = main
    words = shlex.split(typed)[1:]
    while isinstance(command, click.Group):
        command = command.get_command(click.Context(command), words.pop(0))
    assert command is not None
    known = {option for parameter in command.params for option in parameter.opts}
    assert {word for word in words if word.startswith("--")} <= known


def test_the_table_has_every_command_but_the_demo() -> None:
    """The demo has the first line of its own."""
    first_words = {shlex.split(typed)[1] for typed, _ in rows()}
    assert first_words | {"demo"} == set(main.list_commands(click.Context(main)))


def test_every_setting_is_named() -> None:
    """Those that are read, and no others."""
    read = set(re.findall(r"^(TRAINER_[A-Z_]+) ", config.__doc__ or "", re.MULTILINE))
    assert set(re.findall(r"TRAINER_[A-Z_]+", README)) == read


def test_the_figures_are_right() -> None:
    """How often a question is worked."""
    assert f"every question {VARIANTS} times" in README


def test_links_lead_somewhere() -> None:
    """Each names a file of the checkout."""
    links = re.findall(r"\]\(([^)]+)\)", README)
    assert links
    assert [link for link in links if not (ROOT / link).exists()] == []
