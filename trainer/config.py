"""Where things are found, and the few settings; a bad value is refused aloud.

TRAINER_CONTENT       the folder of lessons; else the checkout's, else the packaged copy
TRAINER_INSTANCE      the folder of the database and the secret; else the checkout's, else the
                      user's data folder
TRAINER_ZONE          the time zone of the installation, such as Europe/London
TRAINER_DATABASE_URL  another database than SQLite in the instance folder
TRAINER_HTTPS         yes, where the pages are served over TLS; else no
"""

import os
import secrets
import time
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import platformdirs

PACKAGE = Path(__file__).resolve().parent
_CHECKOUT = PACKAGE.parent
_ZONE_FILE = "zone"
_SECRET_FILE = "secret"  # noqa: S105 - the name of a file
_POSTGRESQL = "postgresql+psycopg://"
#: Of a value that can't be used no more than this is repeated.
_REPEATED = 200
#: How often a secret that is being written is looked for again: a second in all.
_PATIENCE = 20


class ConfigError(Exception):
    """A setting that cannot be used; its sentence says which, and how to mend it."""


@dataclass(frozen=True, slots=True)
class Config:
    """The settings of one installation."""

    content: Path
    instance: Path
    database_url: str
    zone: ZoneInfo | None
    https: bool = False

    def cookie_name(self, name: str) -> str:
        """Return a cookie's name; over TLS a browser holds it to this one host."""
        return f"__Host-{name}" if self.https else name

    def wanted_zone(self) -> ZoneInfo:
        """Return the zone; raise ConfigError where none is set yet."""
        if self.zone is None:
            raise ConfigError(
                "No time zone is set. Set TRAINER_ZONE, such as TRAINER_ZONE=Europe/London, "
                "or start 'trainer serve' once on a terminal and answer its question."
            )
        return self.zone


def read_config(environment: Mapping[str, str] | None = None) -> Config:
    """Return the settings from TRAINER_* variables and the places where things are found."""
    environment = os.environ if environment is None else environment
    instance = find_instance(environment)
    url = find_database(environment, instance)
    zone = find_zone(environment, instance)
    return Config(find_content(environment), instance, url, zone, read_https(environment))


def find_content(environment: Mapping[str, str]) -> Path:
    """Return the folder of lessons; raise ConfigError where the one that was set isn't there."""
    folder = _folder(environment, "TRAINER_CONTENT")
    if folder is not None:
        if not (folder / "lessons").is_dir():
            raise ConfigError(
                f"TRAINER_CONTENT is {folder}, where there is no folder 'lessons'. "
                "Name the folder that holds it, or leave the setting out."
            )
        return folder
    if _is_checkout():
        return _CHECKOUT / "content"
    return PACKAGE / "packaged_content"


def find_instance(environment: Mapping[str, str]) -> Path:
    """Return the folder of the database and the secret, which need not be there yet."""
    folder = _folder(environment, "TRAINER_INSTANCE")
    if folder is not None:
        return folder
    if _is_checkout():
        return _CHECKOUT / "instance"
    return Path(platformdirs.user_data_dir("trainer", appauthor=False))


def find_database(environment: Mapping[str, str], instance: Path) -> str:
    """Return the address of the database; raise ConfigError for one that can't be used."""
    url = environment.get("TRAINER_DATABASE_URL") or f"sqlite:///{instance / 'trainer.sqlite'}"
    if not url.startswith(("sqlite:///", _POSTGRESQL)):
        # No more of it is repeated, since the rest may hold a password.
        raise ConfigError(
            f"TRAINER_DATABASE_URL must begin with sqlite:/// or {_POSTGRESQL}, "
            f"not with '{url.partition(':')[0][:_REPEATED]}'."
        )
    if url.startswith(_POSTGRESQL):
        _check_postgresql(url)
    return url


def _check_postgresql(url: str) -> None:
    if find_spec("psycopg") is None:
        raise ConfigError(
            f"TRAINER_DATABASE_URL begins with {_POSTGRESQL}, whose driver isn't installed. "
            "Install the trainer with its extra 'postgres'."
        )
    try:
        _ = urlsplit(url).port
    except ValueError as error:
        raise ConfigError(
            "TRAINER_DATABASE_URL can't be read as an address with a port. "
            f"Write it like {_POSTGRESQL}name:password@host:5432/database."
        ) from error


def find_zone(environment: Mapping[str, str], instance: Path) -> ZoneInfo | None:
    """Return the zone that was set, or kept in the instance folder, or None."""
    if environment.get("TRAINER_ZONE"):
        return zone_named(environment["TRAINER_ZONE"], "TRAINER_ZONE: ")
    file = instance / _ZONE_FILE
    kept = _text_of(file)
    return zone_named(kept, f"{file}: ") if kept else None


def read_https(environment: Mapping[str, str]) -> bool:
    """Return whether the pages are served over TLS; raise ConfigError unless it is yes or no."""
    answer = environment.get("TRAINER_HTTPS") or "no"
    if answer not in ("yes", "no"):
        raise ConfigError(f"TRAINER_HTTPS is '{answer[:_REPEATED]}'. Write yes or no.")
    return answer == "yes"


def zone_named(name: str, where: str = "") -> ZoneInfo:
    """Return the time zone of this name; raise ConfigError for an unknown one, saying where."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError) as error:
        raise ConfigError(
            f"{where}There is no time zone '{name[:_REPEATED]}'. "
            "Write it like Europe/London or UTC."
        ) from error


def keep_zone(instance: Path, zone: ZoneInfo) -> None:
    """Write the zone into the instance folder; raise ConfigError where that can't be done."""
    make_instance(instance)
    (instance / _ZONE_FILE).write_text(f"{zone.key}\n")


def make_instance(instance: Path) -> None:
    """Make the instance folder; raise ConfigError where it can't be written."""
    try:
        instance.mkdir(parents=True, exist_ok=True)
        probe = instance / f".probe-{secrets.token_hex(4)}"
        probe.touch()
        probe.unlink()
    except OSError as error:
        raise ConfigError(
            f"The instance folder {instance} can't be written ({error.strerror}). "
            "Give yourself the right to, or set TRAINER_INSTANCE to a folder that you own."
        ) from error


def read_secret(instance: Path) -> str:
    """Return the installation's secret, made at the first call; raise ConfigError."""
    file = instance / _SECRET_FILE
    if not file.is_file():
        make_instance(instance)
        _make_secret(file)
    for _ in range(_PATIENCE):
        secret = _text_of(file)
        if secret:
            return secret
        # Another server has made the file and is about to write into it.
        time.sleep(0.05)
    raise ConfigError(f"The file {file} is empty. Delete it, and a new one is made.")


def _make_secret(file: Path) -> None:
    """Make the file, unless another server that starts together was first: both must agree."""
    try:
        handle = os.open(file, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    except FileExistsError:
        return
    with os.fdopen(handle, "w") as opened:
        opened.write(secrets.token_hex(32))


def _text_of(file: Path) -> str:
    """Return what stands in a file, or nothing where there is none; raise ConfigError."""
    try:
        return file.read_text("utf-8").strip()
    except (FileNotFoundError, NotADirectoryError):
        return ""
    except (OSError, UnicodeError) as error:
        reason = getattr(error, "strerror", None) or "it isn't text"
        raise ConfigError(f"The file {file} can't be read ({reason}).") from error


def _folder(environment: Mapping[str, str], name: str) -> Path | None:
    """Return the folder that a variable names, or None; raise ConfigError where none can be."""
    text = environment.get(name)
    if not text:
        return None
    try:
        folder = Path(text).expanduser().resolve()
        folder.is_dir()
    except (OSError, RuntimeError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error).rstrip(".")
        raise ConfigError(
            f"{name} is {text[:_REPEATED]}, which can't be used ({reason})."
        ) from error
    return folder


def _is_checkout() -> bool:
    return (_CHECKOUT / "pyproject.toml").is_file() and (_CHECKOUT / "content").is_dir()
