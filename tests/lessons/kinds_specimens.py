"""A question of each kind without numbers, about the coal shed's roof."""

from pathlib import Path

from lessons_specimens import asked

from trainer.lessons.kinds.choose import ChooseQuestion
from trainer.lessons.kinds.locate import LocateQuestion
from trainer.lessons.kinds.order import OrderQuestion

CHOOSE = """\
id = "shed-strings"
kind = "choose"
title = "The bucket pulls strings"
ask = "The roller pulls strings, and a third of the bucket is left. What now?"
skill = "left-over"
[[choices]]
text = "Roll on while it spreads."
then = "It never bonds, and you grind it out tomorrow."
[[choices]]
text = "Stop, and spread it thin on the waste board."
right = true
then = "Thin resin stays cool, and the roof gets none that is too late."
[[choices]]
text = "Stir in some fresh resin."
then = "It gels all the same, and now there is more of it."
[[choices]]
text = "Set the bucket aside with its lid on."
then = "It heats through, and smokes under the lid."
"""

ORDER = """\
id = "shed-mix"
kind = "order"
title = "One mix"
ask = "Put the steps of one mix in order."
skill = "catalyst-dose"
[[steps]]
text = "Read the thermometer."
[[steps]]
text = "Work out the dose."
early = "Without a temperature the dose is a guess."
[[steps]]
text = "Draw up the catalyst."
early = "What is drawn up without a dose is put back, or wasted."
[[steps]]
text = "Stir it in."
early = "There is nothing to stir in yet."
"""

LOCATE = """\
id = "shed-leak"
kind = "locate"
title = "The leak"
ask = "Where will it leak?"
skill = "left-over"
picture = "pictures/shed-ends.svg"
[[regions]]
name = "left"
then = "This flap lies flat."
[[regions]]
name = "top"
right = true
then = "The mat bridges, and air is behind it."
[[regions]]
name = "right"
then = "This corner was snipped, and laps."
[[regions]]
name = "foot"
then = "It turns out on to the deck."
"""

PICTURE = """\
<svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 640 400" role="img"
  aria-labelledby="shed-ends-t shed-ends-d">
<title id="shed-ends-t">An end</title><desc id="shed-ends-d">Four places on a wrapped end.</desc>
<g id="shed-ends-left" class="region"><title>The left flap</title><path d="M0 0h9v9z"/></g>
<g id="shed-ends-top" class="region ink"><title>The top</title><path d="M20 0h9v9z"/></g>
<g id="shed-ends-right" class="region"><title>The right corner</title><path d="M40 0h9v9z"/></g>
<g id="shed-ends-foot" class="region"><title>The foot</title><path d="M60 0h9v9z"/></g>
<g id="shed-ends-mute" class="region"><path d="M80 0h9v9z"/></g>
</svg>
"""


def choose(text: str = CHOOSE) -> ChooseQuestion:
    """Return the decision in a block's text."""
    read = asked(text)
    assert isinstance(read, ChooseQuestion)
    return read


def order(text: str = ORDER) -> OrderQuestion:
    """Return the order in a block's text."""
    read = asked(text)
    assert isinstance(read, OrderQuestion)
    return read


def locate(folder: Path, text: str = LOCATE, picture: str = PICTURE) -> LocateQuestion:
    """Return the question about a picture, which is written below `folder`."""
    (folder / "pictures").mkdir(exist_ok=True)
    (folder / "pictures/shed-ends.svg").write_text(picture, "utf-8")
    read = asked(text, folder)
    assert isinstance(read, LocateQuestion)
    return read
