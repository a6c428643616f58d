"""The command as somebody types it, here or in a process of its own, and what they read."""

import os
import signal
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from click.testing import CliRunner, Result

import trainer as house
from trainer.cli import main

ROOT = Path(house.__file__).parents[1]
#: A password that may be used.
GOOD = "harbour-wall-9"
_PATIENCE = 90


def trainer(*words: str, typed: str = "") -> Result:
    """Return what comes of typing `trainer` and these words, and then what is asked for."""
    return CliRunner().invoke(main, words, input=typed, prog_name="trainer")


def said(*words: str) -> str:
    """Return what a command prints that ends well."""
    result = trainer(*words)
    assert result.exit_code == 0, result.output
    return result.stdout


def refused(*words: str) -> str:
    """Return what stands after `Error:` when a command refuses to do what these words ask."""
    result = trainer(*words)
    assert isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code in (1, 2)
    assert "Traceback" not in result.output
    return result.stderr.partition("Error: ")[2].strip()


def free_port() -> int:
    """Return a port that nobody listened on a moment ago."""
    with socket.create_server(("127.0.0.1", 0)) as server:
        port: int = server.getsockname()[1]
        return port


class Running:
    """A command in a process of its own."""

    def __init__(self, process: subprocess.Popen[str]) -> None:
        self.process = process
        self.said = ""

    def read_until(self, words: str) -> str:
        """Return all that was printed, once these words are among it."""
        assert self.process.stdout is not None
        while words not in self.said:
            line = self.process.stdout.readline()
            assert line, f"It ended without '{words}':\n{self.said}"
            self.said += line
        return self.said

    def stop(self, how: signal.Signals = signal.SIGINT) -> int:
        """Return the exit code after it was told to stop; what it still printed is kept."""
        self.process.send_signal(how)
        rest, _ = self.process.communicate(timeout=_PATIENCE)
        self.said += rest
        return self.process.returncode


@contextmanager
def running(
    *words: str, settings: Mapping[str, str], stdin: int = subprocess.DEVNULL
) -> Iterator[Running]:
    """Start `trainer` with these words and nothing in its environment but these settings."""
    process = subprocess.Popen(  # noqa: S603 - our own command
        [sys.executable, "-c", "from trainer.cli import main; main()", *words],
        env={"PATH": os.environ["PATH"], "PYTHONPATH": str(ROOT), **settings},
        stdin=stdin,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    # Nothing that it may do, or forget to do, keeps the tests waiting for ever.
    watch = threading.Timer(_PATIENCE, process.kill)
    watch.start()
    try:
        yield Running(process)
    finally:
        watch.cancel()
        process.kill()
        process.communicate()
