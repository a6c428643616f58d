"""A bucket and a test cup as somebody types them, and what a page says of them."""

from collections.abc import Mapping
from urllib.parse import urlencode

from web_page import Page
from web_visitor import Visitor

#: 2 kg at 2 % by mass: 40 g of catalyst, whatever its density.
BUCKET = {"resin": "2", "resin_unit": "kg", "dose": "2", "dose_as": "by mass"}
#: The same on a day and with a resin that can be timed.
NAMED = {**BUCKET, "at": "18", "at_unit": "°C", "product": "Own brew"}
#: A cup that was timed elsewhere: 26 minutes at 18 °C and 2 % by mass.
CUP = {
    "product": "Own brew",
    "dose": "2",
    "dose_as": "by mass",
    "at": "18",
    "at_unit": "°C",
    "minutes": "26",
}


def path_of(fields: Mapping[str, str] = BUCKET, **more: str) -> str:
    """Return the address of a bucket."""
    return f"/mix?{urlencode({**fields, **more})}"


def mixed(visitor: Visitor, fields: Mapping[str, str] = BUCKET, **more: str) -> Page:
    """Return the page of a bucket."""
    return visitor.open(path_of(fields, **more))


def timed_cup(visitor: Visitor, **more: str) -> Page:
    """Return what comes back for a cup whose minutes are typed."""
    form = visitor.open("/mix/cups").form_to("/mix/cups")
    return visitor.post("/mix/cups", {**form.fields, **CUP, **more})


def figure(page: Page, key: str) -> str:
    """Return a figure as it is shown, without its words and its working."""
    return page.main.all(id=f"figure-{key}")[0].all(class_="known-value")[0].words


def label(page: Page, key: str) -> str:
    """Return the words that stand at a figure."""
    return page.main.all(id=f"figure-{key}")[0].all(class_="known-words")[0].words


def fields_to_ask(page: Page) -> dict[str, str]:
    """Return what stands in the form that works a bucket out."""
    form = page.main.all("form", method="get")[0]
    return {
        each["name"]: each["value"]
        for each in form.all("input")
        if each["type"] != "radio" or "checked" in each.attributes
    }


def clock(page: Page) -> str:
    """Return what a running clock says; nothing where none runs."""
    running = [each for each in page.main.all(id="clock") if "hidden" not in each.attributes]
    return running[0].all(class_="clock-words")[0].words if running else ""


def phase(page: Page) -> str:
    """Return what a running clock says it is time for."""
    phases = page.main.all(id="clock")[0].all(class_="phase")
    (shown,) = [each for each in phases if "hidden" not in each.attributes]
    return shown.all(class_="phase-word")[0].words
