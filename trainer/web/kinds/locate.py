"""The kind `locate` on a page: a picture to tap, and the same places in a list."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from xml.etree import ElementTree as ET

from markupsafe import Markup

from trainer.lessons import LocateDrawn, Mark, mark_place
from trainer.records.attempts import StoredAttempt
from trainer.web.kinds.kind import Fields, Kind, QuestionForm
from trainer.web.kinds.picked import ANSWER, PickedForm, PickedSheet, picked_sheet
from trainer.web.mark_sheet import MarkSheet
from trainer.web.shown import Shown

_SVG = "http://www.w3.org/2000/svg"


class LocateForm(PickedForm[LocateDrawn]):
    """A picture whose places can be tapped, and a button for each in the list below it."""

    template = "questions/locate/_fields.html"
    script = "locate.js"

    def places(self) -> tuple[str, ...]:
        """Return the names of the places."""
        return tuple(region.name for region in self.drawn.question.regions)

    def options(self) -> list[tuple[str, str]]:
        """Return each place's name and words."""
        return [(region.name, region.words) for region in self.drawn.question.regions]

    def picture(self) -> Markup:
        """Return the picture; a tap on a place picks it, with scripts and without."""
        return tappable(self.drawn, self.picked)

    def mark(self, try_no: int) -> Mark:
        """Return the mark of the place."""
        del try_no
        return mark_place(self.drawn, self.picked)


@dataclass(frozen=True, slots=True, kw_only=True)
class LocateSheet(PickedSheet):
    """The page of the mark of a place."""

    #: With the place that was picked and the right one marked; nothing where it is gone.
    picture: Markup


class Locate(Kind[LocateDrawn]):
    """Places in a picture."""

    template = "questions/locate/_marked.html"
    again = "Again"

    def form(self, drawn: LocateDrawn, was: Shown, fields: Fields | None = None) -> QuestionForm:
        """Return the picture and the list."""
        del was
        return LocateForm(drawn, fields)

    def sheet(
        self, stored: StoredAttempt, first: StoredAttempt | None, drawn: LocateDrawn | None
    ) -> MarkSheet:
        """Return what can be said of the place that was picked, and of the right one."""
        del first
        told = picked_sheet(stored, drawn)
        names = {"region-picked": told.picked.place}
        names["region-right"] = told.instead.place if told.instead else told.picked.place
        picture = with_classes(drawn, names) if drawn else Markup()
        each = {name: getattr(told, name) for name in PickedSheet.__dataclass_fields__}
        return LocateSheet(**each, picture=picture)


def tappable(drawn: LocateDrawn, picked: str) -> Markup:
    """Return the picture with a link round each place, which picks it."""
    root = ET.fromstring(drawn.question.drawing)  # noqa: S314 - the firm's own file
    # Its places are told one by one, so that it is no single image any more.
    root.set("role", "group")
    parents = {child: parent for parent in root.iter() for child in parent}
    words = {region.name: region.words for region in drawn.question.regions}
    for name, region in _regions(drawn, root).items():
        _add_class(region, "region-picked" if name == picked else "")
        link = ET.Element(f"{{{_SVG}}}a", {"href": f"?{ANSWER}={name}#{ANSWER}"})
        link.set("data-picks", name)
        link.set("aria-label", words[name])
        link.set("tabindex", "-1")
        parent = parents[region]
        parent[list(parent).index(region)] = link
        link.append(region)
    return _written(root)


def with_classes(drawn: LocateDrawn, classes: Mapping[str, str]) -> Markup:
    """Return the picture with each class on the place of that name."""
    root = ET.fromstring(drawn.question.drawing)  # noqa: S314 - the firm's own file
    regions = _regions(drawn, root)
    for class_, name in classes.items():
        if name in regions:
            _add_class(regions[name], class_)
    return _written(root)


def _regions(drawn: LocateDrawn, root: ET.Element) -> dict[str, ET.Element]:
    question = drawn.question
    by_id = {element.get("id"): element for element in root.iter()}
    names: Iterable[str] = (region.name for region in question.regions)
    return {name: by_id[question.region_id(name)] for name in names}


def _add_class(element: ET.Element, class_: str) -> None:
    element.set("class", " ".join(filter(None, (element.get("class"), class_))))


def _written(root: ET.Element) -> Markup:
    ET.register_namespace("", _SVG)
    return Markup(ET.tostring(root, encoding="unicode"))  # noqa: S704 - checked when it was read
