"""Two installations, each as on its first morning in every test.

`bench` teaches the real lessons; `tiny` has lessons of four lines whose sums are plain.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from web_bench import Bench, set_up
from web_cast import PASSWORD
from web_content import write_content
from web_kinds import write_kinds
from web_page import Page
from web_walk import walk

from trainer.records import passwords

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="session")
def password_hash() -> str:
    """Everybody's password, hashed once, since hashing takes long on purpose."""
    return passwords.hash_password(PASSWORD)


@pytest.fixture(scope="session")
def real_installation(
    tmp_path_factory: pytest.TempPathFactory, password_hash: str
) -> Iterator[Bench]:
    """The real lessons, read once."""
    bench = set_up(CONTENT, tmp_path_factory.mktemp("real"), password_hash)
    yield bench
    bench.close()


@pytest.fixture(scope="session")
def tiny_installation(
    tmp_path_factory: pytest.TempPathFactory, password_hash: str
) -> Iterator[Bench]:
    """The tiny lessons, read once."""
    folder = tmp_path_factory.mktemp("tiny")
    bench = set_up(write_content(folder / "content"), folder / "instance", password_hash)
    yield bench
    bench.close()


@pytest.fixture(scope="session")
def kinds_installation(
    tmp_path_factory: pytest.TempPathFactory, password_hash: str
) -> Iterator[Bench]:
    """The tiny lessons with a question of each kind, read once."""
    folder = tmp_path_factory.mktemp("kinds")
    bench = set_up(write_kinds(folder / "content"), folder / "instance", password_hash)
    yield bench
    bench.close()


@pytest.fixture
def kinds(kinds_installation: Bench) -> Bench:
    """The installation with a question of each kind, on its first morning."""
    kinds_installation.renew()
    return kinds_installation


@pytest.fixture
def bench(real_installation: Bench) -> Bench:
    """The installation with the real lessons, on its first morning."""
    real_installation.renew()
    return real_installation


@pytest.fixture
def tiny(tiny_installation: Bench) -> Bench:
    """The installation with the tiny lessons, on its first morning."""
    tiny_installation.renew()
    return tiny_installation


@pytest.fixture(scope="session")
def every_page(
    real_installation: Bench, tiny_installation: Bench, kinds_installation: Bench
) -> dict[str, Page]:
    """Every page there is, by name."""
    return walk(real_installation, tiny_installation, kinds_installation)
