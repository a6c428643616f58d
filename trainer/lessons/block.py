"""A piece of TOML inside a content file, with errors that point into that file."""

import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from trainer.lessons.errors import AuthorError, did_you_mean

_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)")


@dataclass(frozen=True, slots=True)
class Block:
    """TOML text and where it begins."""

    file: str
    #: The file's line on which the first line of the text stands.
    line: int
    text: str

    def read(self) -> dict[str, Any]:
        """Return the block's tables; raise AuthorError at the line where TOML breaks off."""
        try:
            return tomllib.loads(self.text)
        except tomllib.TOMLDecodeError as error:
            found = _AT_LINE.search(str(error))
            within = int(found[1]) if found else self.text.count("\n") + 1
            reason = _AT_LINE.sub("", str(error)).strip().rstrip(".")
            raise AuthorError(
                self.file,
                self.line + within - 1,
                f"This is not TOML: {reason}.",
                self._text_at(within),
                "Texts stand in double quotes, a key has one =, a table one [ ].",
            ) from error

    def mistake(self, key: str, sentence: str, mend: str = "") -> AuthorError:
        """Return the error that points at a key's line, or at the block's first line."""
        within = self._line_of(key)
        return AuthorError(self.file, self.line + within - 1, sentence, self._text_at(within), mend)

    def refuse_unknown(self, table: Mapping[str, Any], known: Iterable[str], what: str) -> None:
        """Raise AuthorError for the first key that `what` doesn't have."""
        known = set(known)
        for key in table:
            if key not in known:
                raise self.mistake(key, f"{what} has no key '{key}'.", did_you_mean(key, known))

    def want(self, table: Mapping[str, Any], key: str, kind: type, what: str) -> Any:  # noqa: ANN401
        """Return a key's value; raise AuthorError when it is missing or of another kind."""
        if key not in table:
            raise self.mistake("", f"{what} has no '{key}'.", f"Add a line {key} = …")
        value = table[key]
        fits = isinstance(value, kind) and (kind is bool or not isinstance(value, bool))
        if not fits and not (kind is float and isinstance(value, int)):
            raise self.mistake(key, f"'{key}' must be {_KINDS.get(kind, kind.__name__)}.")
        return value

    def _line_of(self, key: str) -> int:
        """Return the line, counted from 1, on which a key or a `table.key` is first set."""
        if not key:
            return 1
        pattern = re.compile(rf'^\s*\[*\s*"?{re.escape(key)}"?\s*[\].=]', re.MULTILINE)
        loose = re.compile(rf"^.*{re.escape(key)}", re.MULTILINE)
        found = pattern.search(self.text) or loose.search(self.text)
        return self.text.count("\n", 0, found.end()) + 1 if found else 1

    def _text_at(self, within: int) -> str:
        lines = self.text.splitlines()
        return lines[within - 1] if 0 < within <= len(lines) else ""


_KINDS = {
    str: "a text in quotes",
    int: "a whole number",
    float: "a number",
    bool: "true or false",
    list: "a list",
    dict: "a table",
}
