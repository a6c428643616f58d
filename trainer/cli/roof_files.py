"""Files that are written whole or not at all."""

import os
import secrets
from collections.abc import Mapping
from pathlib import Path

import click


def write_all(files: Mapping[Path, str], *, replace: bool) -> None:
    """Write each text to its file in UTF-8; nothing is replaced unless that was asked for.

    All are written beside their places first, so that none is ever there by half. Raises
    ClickException where a file is there already or its folder isn't, and OSError.
    """
    _refuse(files, replace=replace)
    drafts = {path: path.with_name(f".{path.name}.{secrets.token_hex(4)}") for path in files}
    try:
        for path, text in files.items():
            _write(drafts[path], text)
        for path, draft in drafts.items():
            draft.replace(path)
    finally:
        for draft in drafts.values():
            draft.unlink(missing_ok=True)


def _refuse(files: Mapping[Path, str], *, replace: bool) -> None:
    for path in files:
        if not path.parent.is_dir():
            raise click.ClickException(f"There is no folder {path.parent}. Make it first.")
    there = [path for path in files if path.exists()]
    if there and not replace:
        more = f", and so are {len(there) - 1} more" if len(there) > 1 else ""
        raise click.ClickException(
            f"{there[0]} is there already{more}. Add --replace to write over what is there."
        )


def _write(draft: Path, text: str) -> None:
    # Line ends are the text's own: a comma-separated list has those of its standard.
    with draft.open("x", encoding="utf-8", newline="") as opened:
        opened.write(text)
        opened.flush()
        os.fsync(opened.fileno())
