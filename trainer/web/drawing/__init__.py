"""A roof drawn to scale in two pictures, and told in sentences.

It needs no application, so that the command line draws the same.
"""

import re
from functools import cache

from jinja2 import Environment, PackageLoader, Template

from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.picture import TITLES, picture_of
from trainer.web.drawing.sentences import describe_roof, summary_of
from trainer.web.drawing.standalone import style

__all__ = ["TITLES", "describe_roof", "draw_roof"]

#: What XML can't hold, however it is written.
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def draw_roof(plan: RoofPlan, part: str = "deck", *, standalone: bool = False) -> str:
    """Return a picture of a roof as SVG: "deck" with tape and bandage, or "mat" and fall.

    One that stands alone has the face's style in it, for a file. Raises KeyError for another part.
    """
    title = f"{plan.description.title}: {TITLES[part]}"
    return _template().render(
        picture=picture_of(plan, part),
        title=_NOT_XML.sub(" ", title),
        desc=_NOT_XML.sub(" ", summary_of(plan, part)),
        style=style() if standalone else "",
    )


@cache
def _template() -> Template:
    loader = PackageLoader("trainer.web", "templates")
    # The template escapes its texts itself: asking that of each of a thousand figures takes a
    # third of the time.
    environment = Environment(loader=loader, autoescape=False, trim_blocks=True)  # noqa: S701
    environment.globals["patterns"] = {"hatch-wall": "wall", "hatch-lap": "lap"}
    return environment.get_template("roofs/_drawing.svg")
