"""content/cautions.toml: each caution once, named by the lessons and pages that need it."""

from dataclasses import dataclass
from pathlib import Path

from trainer.lessons.block import Block
from trainer.lessons.prose import kept_together

_FILE = "cautions.toml"
_KEYS = ("slug", "title", "text", "source")
#: What the plan of any roof says besides what its own figures warn of.
ON_A_ROOF = (
    *("eyes", "catalyst-acetone", "vapours", "left-over"),
    *("peroxide-spills", "skin", "fumes", "height", "data-sheet"),
)


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt, what to do about it, and where that is known from."""

    slug: str
    title: str
    text: str
    source: str


def read_cautions(folder: Path) -> dict[str, Caution]:
    """Return the cautions by slug in the order of the file; raise AuthorError."""
    block = Block(f"content/{_FILE}", 1, (folder / _FILE).read_text("utf-8"))
    cautions: dict[str, Caution] = {}
    table = block.read()
    block.want(table, "caution", list, "The file")
    for part, each in block.tables(table, "caution"):
        part.refuse_unknown(each, _KEYS, "A caution")
        caution = Caution(*(kept_together(part.want(each, key, str, "A caution")) for key in _KEYS))
        if caution.slug in cautions:
            raise part.mistake("slug", f"The caution '{caution.slug}' stands here twice.")
        cautions[caution.slug] = caution
    return cautions
