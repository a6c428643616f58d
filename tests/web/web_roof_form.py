"""The form of a roof as somebody fills it in, and what is read off the page that comes back."""

from web_page import Element, Page
from web_visitor import Visitor

#: A garage as somebody types it who leaves everything else alone.
GARAGE = {
    "title": "Garage behind the yard",
    "outline.shape": "rectangle",
    "outline.length_m": "5.2",
    "outline.width_m": "2.9",
    "edge.1.kind": "drip",
    "edge.2.kind": "raised",
    "edge.3.kind": "wall",
    "edge.4.kind": "raised",
}


def planned(visitor: Visitor, **typed: str) -> Page:
    """Return what comes back when the garage, with this typed besides, is to be planned."""
    blank = visitor.open("/roofs/new").form.fields
    return visitor.post("/roofs/new", {**blank, **GARAGE, **typed, "press": "plan"})


def field(page: Page, name: str) -> Element:
    """Return a field, or the choices of one."""
    return page.main.all(id=name)[0]


def summary(page: Page) -> dict[str, str]:
    """Return the sentences over the form, by the place on the page that each leads to."""
    box = page.main.all(class_="errors")
    links = box[0].all("a") if box else []
    return {link["href"].removeprefix("#"): link.words for link in links}


def verdict(page: Page) -> str:
    """Return the verdict of the plan under the form, or nothing where there is no plan."""
    found = page.main.all(id="verdict-word")
    return found[0].words if found else ""
