"""A piece of TOML inside a content file, with errors that point into that file."""

import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from trainer.lessons.errors import AuthorError, did_you_mean

_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)")
#: The matcher of a line that opens a table: [name] or [[name]].
_header = re.compile(r"\s*\[\[?\s*(?P<name>[\w.-]+)\s*\]\]?\s*(#.*)?").fullmatch

#: What a word processor makes of quotes and decimals, where a value begins.
_CURLY = re.compile(r"[=\[]\s*[“”„‘’]")
_COMMA = re.compile(r"=\s*-?\d+,\d")


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
                _mend(self._text_at(within)),
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
        if not fits and not (kind is float and _is_whole(value)):
            raise self.mistake(key, f"'{key}' must be {_KINDS.get(kind, kind.__name__)}.")
        return value

    def texts(self, table: Mapping[str, Any], key: str, what: str) -> tuple[str, ...]:
        """Return a list of texts; raise AuthorError when it is missing or holds anything else."""
        values = self.want(table, key, list, what)
        if not all(isinstance(value, str) for value in values):
            raise self.mistake(key, f"'{key}' must be a list of texts in quotes.")
        return tuple(values)

    def tables(
        self, table: Mapping[str, Any], key: str, header: str = ""
    ) -> Iterator[tuple["Block", dict[str, Any]]]:
        """Yield each table of a list with the part of the block that it takes up.

        A mistake in the third [[slips]] then points at the third. `header` is the name between
        the brackets where it isn't the key. Tables that are written in one line, as in
        key = [{…}], each come with the whole block. Raises AuthorError where they are no tables.
        """
        values = table.get(key, [])
        header = header or key
        if not isinstance(values, list) or not all(isinstance(value, dict) for value in values):
            mend = f"Begin each with a line [[{header}]]."
            raise self.mistake(key, f"'{key}' must be tables.", mend)
        parts = self._parts(header)
        parts = parts if len(parts) == len(values) else [self] * len(values)
        yield from zip(parts, values, strict=True)

    def part(self, header: str, number: int = 1) -> "Block | None":
        """Return what [header] takes up, or the so-manyth [[header]]; None where there is none."""
        parts = self._parts(header)
        return parts[number - 1] if number <= len(parts) else None

    def _parts(self, header: str) -> list["Block"]:
        lines = self.text.splitlines()
        headers = [(n, found["name"]) for n, each in enumerate(lines) if (found := _header(each))]
        starts = [n for n, name in headers if name == header]
        others = [n for n, name in headers if not name.startswith(f"{header}.")]
        ends = [min((n for n in others if n > start), default=len(lines)) for start in starts]
        return [
            Block(self.file, self.line + start, "\n".join(lines[start:end]))
            for start, end in zip(starts, ends, strict=True)
        ]

    def _line_of(self, key: str) -> int:
        """Return the line, counted from 1, on which a key or a `table.key` is first set."""
        if not key:
            return 1
        last = key.rpartition(".")[2]
        for pattern in (_setting(key), rf"^.*{re.escape(key)}", _setting(last)):
            found = re.search(pattern, self.text, re.MULTILINE)
            if found:
                return self.text.count("\n", 0, found.end()) + 1
        return 1

    def _text_at(self, within: int) -> str:
        lines = self.text.splitlines()
        return lines[within - 1] if 0 < within <= len(lines) else ""


def _mend(line: str) -> str:
    """Return how a line that isn't TOML is mended, as near to its mistake as can be told."""
    if _CURLY.search(line):
        return 'Texts stand in straight quotes ("), not in curly ones (“ ”).'
    if _COMMA.search(line):
        return "A decimal has a point, not a comma: 0.6."
    return "Texts stand in double quotes, a key has one =, a table one [ ]."


def _setting(key: str) -> str:
    return rf'^\s*\[*\s*"?{re.escape(key)}"?\s*[\].=]'


def _is_whole(value: object) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


_KINDS = {
    str: "a text in quotes",
    int: "a whole number",
    float: "a number",
    bool: "true or false",
    list: "a list",
    dict: "a table",
}
