"""content/stock.toml: rolls, trims, tins and bottles as sold."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from trainer.lessons.block import Block

_FILE = "stock.toml"


@dataclass(frozen=True, slots=True)
class Sizes:
    """The sizes in which one thing is sold, by the name of each list, and their standing."""

    standing: str
    sizes: Mapping[str, tuple[float, ...]]


def read_stock(folder: Path) -> dict[str, Sizes]:
    """Return the sizes sold by material; raise AuthorError."""
    block = Block(f"content/{_FILE}", 1, (folder / _FILE).read_text("utf-8"))
    stock: dict[str, Sizes] = {}
    tables = block.read()
    for name in tables:
        table = block.want(tables, name, dict, "The file")
        standing = block.want(table, "standing", str, f"[{name}]")
        lists = {key: value for key, value in table.items() if key != "standing"}
        for key, value in lists.items():
            if not isinstance(value, list) or not all(_is_size(each) for each in value):
                raise block.mistake(key, f"'{key}' must be a list of sizes above zero.")
        stock[name] = Sizes(standing, {key: tuple(value) for key, value in lists.items()})
    return stock


def _is_size(value: object) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value > 0
