"""A page as a test reads it: its words, its forms, and whatever in it isn't closed."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

from werkzeug.test import TestResponse

_VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}
_UNSEEN = {"script", "style", "title", "desc"}


@dataclass
class Element:
    """A tag with its attributes, and what stands inside it."""

    tag: str
    attributes: dict[str, str] = field(default_factory=dict)
    inside: list["Element | str"] = field(default_factory=list)

    def __getitem__(self, name: str) -> str:
        """Return an attribute, or nothing where it isn't set."""
        return self.attributes.get(name, "")

    def walk(self) -> Iterator["Element"]:
        """Yield this element and each one below it, in order."""
        yield self
        for each in self.inside:
            if isinstance(each, Element):
                yield from each.walk()

    def all(self, tag: str = "", **attributes: str) -> list["Element"]:
        """Return the elements of this tag with these attributes; `class_` asks for one class."""
        class_ = attributes.pop("class_", "")
        return [
            each
            for each in self.walk()
            if (not tag or each.tag == tag)
            and (not class_ or class_ in each["class"].split())
            and all(each[name] == value for name, value in attributes.items())
        ]

    @property
    def words(self) -> str:
        """What can be read in it, with single spaces."""
        return " ".join(" ".join(self._texts()).split())

    @property
    def words_as_typed(self) -> str:
        """What stands in a field of several lines."""
        return "".join(self._texts()).removeprefix("\n")

    def _texts(self) -> Iterator[str]:
        for each in self.inside:
            if isinstance(each, str):
                yield each
            elif each.tag not in _UNSEEN:
                yield from each._texts()


class _Reader(HTMLParser):
    """Builds the elements, and notes each tag that is closed out of turn."""

    def __init__(self) -> None:
        super().__init__()
        self.root = Element("")
        self.open = [self.root]
        self.out_of_turn: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_startendtag(tag, attrs)
        if tag not in _VOID:
            self.open.append([e for e in self.open[-1].inside if isinstance(e, Element)][-1])

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].inside.append(Element(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if self.open[-1].tag == tag:
            self.open.pop()
        else:
            self.out_of_turn.append(tag)

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)


@dataclass(frozen=True)
class Form:
    """Where a form leads, and what a browser would send without anybody typing."""

    action: str
    fields: dict[str, str]


class Page:
    """What came back for a request."""

    def __init__(self, response: TestResponse) -> None:
        self.status = response.status_code
        self.headers = response.headers
        self.path = response.request.path
        self.html = response.get_data(as_text=True)
        self.set_cookies = response.headers.getlist("Set-Cookie")
        response.close()
        reader = _Reader()
        reader.feed(self.html)
        reader.close()
        self.root = reader.root
        self.unclosed = [*reader.out_of_turn, *(each.tag for each in reader.open[1:])]

    @property
    def main(self) -> Element:
        """What is between the header and the footer."""
        return self.root.all("main")[0]

    @property
    def words(self) -> str:
        """What can be read in the main part."""
        return self.main.words

    @property
    def heading(self) -> str:
        """The words of the heading."""
        return self.root.all("h1")[0].words

    @property
    def leads_to(self) -> str:
        """Where a redirect leads."""
        return self.headers["Location"]

    @property
    def notes(self) -> str:
        """What the page says about itself: notes, and messages above it."""
        told = [*self.root.all(class_="note"), *self.root.all(class_="messages")]
        return " ".join(each.words for each in told).strip()

    @property
    def question(self) -> str:
        """The question as it is put, with its numbers."""
        return self.main.all(class_="ask")[0].words

    @property
    def mark(self) -> str:
        """The word that stands over a marked answer."""
        return self.main.all(class_="mark-word")[0].words

    @property
    def form(self) -> Form:
        """The form of the main part."""
        return _form(self.main.all("form")[0])

    def form_to(self, action: str) -> Form:
        """Return the form of the main part that changes something at an address."""
        return _form(self.main.all("form", action=action, method="post")[0])

    @property
    def sign_out_form(self) -> Form:
        """The form in the header."""
        return _form(self.root.all("form", action="/sign-out")[0])

    @property
    def has_form(self) -> bool:
        """Whether the main part has a form."""
        return bool(self.main.all("form"))

    def error_of(self, name: str) -> str:
        """Return the sentence that stands by a field, or nothing."""
        told = self.main.all(id=f"{name}-error")
        return told[0].words if told else ""

    def links(self) -> list[str]:
        """Return where the links of the main part lead."""
        return [link["href"] for link in self.main.all("a")]


def _form(element: Element) -> Form:
    fields: dict[str, str] = {}
    for each in element.all("input"):
        picked = each["type"] not in ("radio", "checkbox") or "checked" in each.attributes
        if picked and each["name"]:
            fields[each["name"]] = each["value"]
    for each in element.all("textarea"):
        fields[each["name"]] = each.words_as_typed
    return Form(element["action"], fields)
