"""The tiny content folder, written anew for each test."""

from pathlib import Path

import pytest
from lessons_specimens import write_content


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """A folder with one lesson, two pictures, and the files that the lesson leans on."""
    return write_content(tmp_path / "content")
