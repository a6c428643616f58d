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
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import platformdirs

PACKAGE = Path(__file__).resolve().parent
_CHECKOUT = PACKAGE.parent
_ZONE_FILE = "zone"
_SECRET_FILE = "secret"  # noqa: S105 - the name of a file


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
    url = environment.get("TRAINER_DATABASE_URL") or f"sqlite:///{instance / 'trainer.sqlite'}"
    if not url.startswith(("sqlite:///", "postgresql+psycopg://")):
        raise ConfigError(
            "TRAINER_DATABASE_URL must begin with sqlite:/// or postgresql+psycopg://, "
            f"not with {url.partition(':')[0]}:."
        )
    zone = find_zone(environment, instance)
    return Config(find_content(environment), instance, url, zone, read_https(environment))


def find_content(environment: Mapping[str, str]) -> Path:
    """Return the folder of lessons; raise ConfigError where the one that was set isn't there."""
    if environment.get("TRAINER_CONTENT"):
        folder = Path(environment["TRAINER_CONTENT"]).expanduser()
        if not (folder / "lessons").is_dir():
            raise ConfigError(f"TRAINER_CONTENT is {folder}, where there is no folder 'lessons'.")
        return folder.resolve()
    if _is_checkout():
        return _CHECKOUT / "content"
    return PACKAGE / "packaged_content"


def find_instance(environment: Mapping[str, str]) -> Path:
    """Return the folder of the database and the secret, which need not be there yet."""
    if environment.get("TRAINER_INSTANCE"):
        return Path(environment["TRAINER_INSTANCE"]).expanduser().resolve()
    if _is_checkout():
        return _CHECKOUT / "instance"
    return Path(platformdirs.user_data_dir("trainer", appauthor=False))


def find_zone(environment: Mapping[str, str], instance: Path) -> ZoneInfo | None:
    """Return the zone that was set, or kept in the instance folder, or None."""
    kept = instance / _ZONE_FILE
    name = environment.get("TRAINER_ZONE") or (kept.read_text().strip() if kept.is_file() else "")
    return zone_named(name) if name else None


def read_https(environment: Mapping[str, str]) -> bool:
    """Return whether the pages are served over TLS; raise ConfigError unless it is yes or no."""
    answer = environment.get("TRAINER_HTTPS", "no")
    if answer not in ("yes", "no"):
        raise ConfigError(f"TRAINER_HTTPS is '{answer}'. Write yes or no.")
    return answer == "yes"


def zone_named(name: str) -> ZoneInfo:
    """Return the time zone of this name; raise ConfigError for an unknown one."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError) as error:
        raise ConfigError(
            f"There is no time zone '{name}'. Write it like Europe/London or UTC."
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
        # Two servers that start together must agree: the first to make the file has it.
        try:
            handle = os.open(file, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
        except FileExistsError:
            return read_secret(instance)
        with os.fdopen(handle, "w") as opened:
            opened.write(secrets.token_hex(32))
    secret = file.read_text().strip()
    if not secret:
        raise ConfigError(f"The file {file} is empty. Delete it, and a new one is made.")
    return secret


def _is_checkout() -> bool:
    return (_CHECKOUT / "pyproject.toml").is_file() and (_CHECKOUT / "content").is_dir()
