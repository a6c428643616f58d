"""A question of each kind without numbers, and answers to questions of any kind."""

from pathlib import Path

from web_bench import Bench
from web_content import BARE_CHAIN, DOSE_CHAIN, MIXING, write_content
from web_page import Page
from web_visitor import Visitor

from trainer.engine import show
from trainer.lessons import ChooseDrawn, Drawn, LocateDrawn, OrderDrawn, Variant
from trainer.web.shown import opened

STRINGS, STEPS, LEAK = "/questions/strings", "/questions/steps", "/questions/leak"
SYRINGE = "/questions/drum-syringe"

_CHOOSE = """
```question
id = "strings"
kind = "choose"
title = "The bucket pulls strings"
ask = "The roller pulls strings. What now?"
skill = "dose"
[[choices]]
text = "Roll on."
then = "It never bonds."
[[choices]]
text = "Stop."
right = true
then = "The roof gets none that is too late."
[[choices]]
text = "Stir in fresh resin."
then = "It gels all the same."
[[choices]]
text = "Put the lid on."
then = "It smokes under the lid."
```
"""

_ORDER = """
```question
id = "steps"
kind = "order"
title = "One mix"
ask = "Put the steps of one mix in order."
skill = "dose"
[[steps]]
text = "Read the thermometer."
[[steps]]
text = "Work out the dose."
early = "Without a temperature the dose is a guess."
[[steps]]
text = "Draw up the catalyst."
early = "Without a dose it is a guess."
[[steps]]
text = "Stir it in."
early = "There is nothing to stir in yet."
```
"""

_LOCATE = """
```question
id = "leak"
kind = "locate"
title = "The leak"
ask = "Where will it leak?"
skill = "dose"
picture = "pictures/ends.svg"
[[regions]]
name = "left"
then = "This flap lies flat."
[[regions]]
name = "top"
right = true
then = "The mat bridges here."
[[regions]]
name = "right"
then = "This corner laps."
[[regions]]
name = "foot"
then = "It turns out on to the deck."
```
"""

#: Forty sets of numbers, of two lines each: the mass, and from it the volume that is asked.
_SYRINGE = """
```question
id = "drum-syringe"
title = "A syringe for a drum"
calculate = "catalyst_by_mass"
ask = "A drum holds {resin_kg}, and takes {percent} of {catalyst_kg_per_l} catalyst."
skill = "dose"
line = "volume"
unit = "ml"
tolerance = "1 %"
given.resin_kg = {from = 0.5, to = 20, step = 0.5}
given.percent = 2
given.catalyst_kg_per_l = 1.25
[[slips]]
name = "the grams drawn up as millilitres"
cue = "Is a millilitre of it heavier than a gram, or lighter?"
answer = "mass"
```
"""

_PLACE = (
    '<g id="ends-{0}" class="region"><title>The {0} flap</title>'
    '<rect class="region-touch" x="{1}" y="10" width="120" height="120"/></g>'
)
_PICTURE = (
    '<svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 640 140" role="img"'
    ' aria-labelledby="ends-t ends-d"><title id="ends-t">An end</title>'
    '<desc id="ends-d">Four flaps of a wrapped end.</desc>'
    + "".join(
        _PLACE.format(name, 10 + 160 * place)
        for place, name in enumerate(("left", "top", "right", "foot"))
    )
    + "</svg>"
)


def write_kinds(folder: Path) -> Path:
    """Return the tiny content with a question of each kind in its lesson on mixing."""
    kinds = _SYRINGE + _CHOOSE + _ORDER + _LOCATE
    write_content(folder, mixing=MIXING + DOSE_CHAIN + kinds + BARE_CHAIN)
    (folder / "pictures").mkdir(exist_ok=True)
    (folder / "pictures/ends.svg").write_text(_PICTURE, "utf-8")
    return folder


def right_fields(drawn: Drawn) -> dict[str, str]:
    """Return what stands in the form of a question that is answered right."""
    match drawn:
        case Variant():
            figures = drawn.working().figures
            return {
                f"answer_{number}": show(ask.in_asked_unit(figures[ask.line]), ask.unit)
                for number, ask in enumerate(drawn.asks)
            }
        case ChooseDrawn():
            return {"answer_0": drawn.right_place()}
        case OrderDrawn():
            return {"answer_0": " ".join(drawn.right_places())}
        case LocateDrawn():
            return {"answer_0": drawn.question.right_name}
    raise AssertionError(drawn)


def answer_right(bench: Bench, visitor: Visitor, page: Page) -> Page:
    """Return the mark of a question that is answered right, on the numbers that its page shows."""
    return visitor.go_on(visitor.send(page, **right_on(bench, page)))


def right_on(bench: Bench, page: Page) -> dict[str, str]:
    """Return what answers a question right, on the numbers that its page shows."""
    with bench.app.test_request_context("/"):
        was = opened(page.form.fields["shown"])
    assert was is not None
    question = bench.library.questions[was.question_id]
    return right_fields(question.drawn(was.seed, was.redraws).at_stage(was.stage))


def wrong_fields(page: Page) -> dict[str, str]:
    """Return something wrong, or at least something, for each field of a question's page.

    An order stands as it is shown, which is never the right one; of places the first is picked.
    """
    radios = [each["value"] for each in page.main.all("input", name="answer_0", type="radio")]
    if radios:
        return {"answer_0": radios[0]}
    typed = [each["name"] for each in page.main.all("input", type="text")]
    return dict.fromkeys(typed, "0.123")
