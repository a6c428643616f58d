"""Where a figure comes from: its words, how well it is known, and who says so."""

import re
from dataclasses import dataclass

from trainer.engine import Parameter, show
from trainer.engine.materials import CONSTANTS, Constant
from trainer.lessons.draws import printed
from trainer.lessons.stock import Sizes

#: The unit at the end of a list's name in stock.toml.
_UNITS = {"_mm": "mm", "_m": "m", "_kg": "kg", "_ml": "ml", "_g_per_m2": "g/m²", "_l": "L"}
_INVENTED = "invented"
_MERCHANTS = "invented sizes, put in your merchant's"
_BY_WORDS = {(each.words, each.value): each for each in CONSTANTS}
#: A mark is one letter that nobody types, the first of them for the first figure.
_FIRST = 0xE100
_MARK = re.compile("[\ue100-\uf8ff]")


@dataclass(frozen=True, slots=True)
class KnownFigure:
    """A default, as a page lists it."""

    words: str
    figure: str
    standing: str
    #: A published source, or a remark on it; empty where there is nothing to say.
    source: str = ""

    @property
    def told(self) -> str:
        """How a page tells it: "Lap of mat on mat: 50 mm. Published: …"."""
        known = ": ".join(filter(None, (self.standing, self.source)))
        return f"{_begun(self.words)}: {self.figure}. {_begun(known)}."


def _begun(text: str) -> str:
    """Return a text with a capital at its beginning; names inside keep theirs."""
    return text[:1].upper() + text[1:]


def of_constant(constant: Constant) -> KnownFigure:
    """Return how a constant of the trade is known."""
    figure = show(constant.value, constant.unit)
    return KnownFigure(constant.words, figure, constant.standing, constant.source)


def of_parameter(parameter: Parameter) -> KnownFigure:
    """Return how the default of a parameter is known."""
    constant = _BY_WORDS.get((parameter.words, parameter.default))
    if constant:
        return of_constant(constant)
    return KnownFigure(parameter.words, show(parameter.default, parameter.unit), parameter.standing)


def of_stock(material: str, key: str, sizes: Sizes) -> KnownFigure:
    """Return how the sizes in one list of stock.toml are known."""
    ending = max((each for each in _UNITS if key.endswith(each)), key=len, default="")
    standing = _MERCHANTS if sizes.standing == _INVENTED else sizes.standing
    words = f"{material}, {key.removesuffix(ending).replace('_', ' ')} as sold"
    return KnownFigure(words, printed(sizes.sizes[key], _UNITS.get(ending, ""), None), standing)


class Notes:
    """The figures of one page, in the order in which they first stand there."""

    def __init__(self) -> None:
        self.figures: list[KnownFigure] = []
        self._marked: set[KnownFigure] = set()

    def note(self, figure: KnownFigure, *, marked: bool) -> str:
        """Keep a figure; return its mark, one character, where it has none yet."""
        if figure not in self.figures:
            self.figures.append(figure)
        if not marked or figure in self._marked:
            return ""
        self._marked.add(figure)
        return chr(_FIRST + self.figures.index(figure))

    @staticmethod
    def without_marks(text: str) -> str:
        """Return a text that can hold no link, such as a picture's description."""
        return _MARK.sub("", text)

    def drawn(self, html: str) -> str:
        """Return a page with a link to the list for each mark."""
        # Not translate(), which looks each letter of the drawings up.
        return _MARK.sub(self._link, html)

    def _link(self, mark: re.Match[str]) -> str:
        place = ord(mark[0]) - _FIRST
        return _link(place + 1, self.figures[place]) if place < len(self.figures) else ""


def _link(number: int, figure: KnownFigure) -> str:
    return (
        f'<sup class="figure-note"><a id="figure-mark-{number}" href="#figure-{number}"'
        f' aria-label="{number}, where {figure.figure} comes from">{number}</a></sup>'
    )
