"""A tiny content folder: a coal shed's roof, its lesson, and everything that the lesson leans on.

Each text is small enough to be worked by hand: at 4 m of joint and 450 g/m² the bandage is
0.3 m², which is 135 g of glass, 337.5 g of resin at 2.5 to 1, and 371.25 g with 10 % on top.
"""

from pathlib import Path
from typing import Any

from trainer.lessons.block import Block
from trainer.lessons.calculate import CalculateQuestion, Variant
from trainer.lessons.errors import AuthorError
from trainer.lessons.question import Question
from trainer.lessons.reading import read_question

FILE = "content/lessons/01-shed.md"
NO_PICTURES = Path("nowhere")

RESIN = """\
id = "shed-resin"
title = "Resin for the joint"
calculate = "resin_for_bandage"
ask = "A joint {length_m} long, {mat_g_per_m2} mat, {width_mm} wide, {ratio} to 1. How much resin?"
skill = "resin-for-mat"
line = "resin"
unit = "g"
tolerance = "2 %"
given.length_m = {from = 2.4, to = 6.0, step = 0.4}
given.mat_g_per_m2 = [300, 450]
given.ratio = 2.5
given.allowance_percent = 10
[[slips]]
name = "the whole roll, not the strip"
cue = "Which width did you put in?"
given.width_mm = 1000
[[slips]]
name = "the allowance left out"
cue = "What stays on the roller?"
answer = "net"
"""

CHAIN = """\
id = "shed-chain"
title = "From the joint to the bucket"
calculate = "resin_for_bandage"
ask = "A joint {length_m} long under {mat_g_per_m2} mat. Work it through to the bucket."
given.length_m = {from = 2.4, to = 6.0, step = 0.4}
given.mat_g_per_m2 = [300, 450]
given.ratio = 2.5
given.allowance_percent = 10
[[asks]]
ask = "How much glass is in the strip?"
line = "bandage.glass"
unit = "g"
tolerance = "2 %"
skill = "bandage-glass"
[[asks]]
ask = "How much resin do you mix?"
line = "resin"
unit = "g"
tolerance = "2 %"
skill = "resin-for-mat"
safe = [0.5, 1.5]
[[slips]]
name = "the whole roll, not the strip"
cue = "Which width did you put in?"
on = "bandage.glass"
given.width_mm = 1000
[[slips]]
name = "the allowance left out"
cue = "What stays on the roller?"
on = "resin"
answer = "net"
"""

FRONT = """\
slug = "shed"
title = "The coal shed"
competency = "bandaging"
minutes = 10
order = 1
scenario = "A coal shed, a dry morning, and one joint to close before the rain."
cautions = ["eyes", "height"]
"""

WORKED = """\
title = "The shed's own joint"
calculate = "resin_for_bandage"
text = "The joint is {length_m} long."
given.length_m = 4
given.ratio = 2.5
given.allowance_percent = 10
"""

_PICTURE = """\
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 300" role="img" class="picture">
<title id="NAME-t">A strip</title><desc id="NAME-d">A strip over a joint.</desc>
<path class="ink" d="M20 20h600"/>
</svg>
"""

COMPETENCIES = """\
[[competency]]
slug = "bandaging"
title = "Bandaging"
safety_critical = false
signer_must_hold = true
part = "bandage"
must_steps = ["Swept.", "Dry.", "Centred.", "Wetted.", "Left alone."]
why = ["Why wet it from below?"]

[[competency.skill]]
slug = "bandage-glass"
title = "Finding the glass in a bandage"
weight = 1

[[competency.skill]]
slug = "resin-for-mat"
title = "Finding the resin that mat needs"
weight = 2.5

[rules.retries]
value = 1
reason = "One more look at the same numbers."
"""

CAUTIONS = """\
[[caution]]
slug = "eyes"
title = "Eyes first"
text = "Goggles on before the bottle is opened."
source = "common practice"

[[caution]]
slug = "height"
title = "Mind the edge"
text = "Rails first."
source = "common practice"
"""

STOCK = """\
[tape]
standing = "common practice"
roll_m = [20, 25, 50]
"""


def lesson_text(*questions: str, front: str = FRONT, worked: str = WORKED) -> str:
    """Return a lesson with these questions, or with the four that a whole one has besides."""
    asked = questions or (RESIN, *(another(RESIN, f"shed-resin-{n}") for n in "bcd"), CHAIN)
    return "\n".join(
        [
            "+++",
            front + "+++",
            "",
            "The cloud is coming up over the hill.",
            "",
            "## The strip",
            "",
            "![The strip lies centred on the joint.](pictures/shed-strip.svg)",
            "",
            '!!! caution "Eyes"',
            "    Goggles on.",
            "",
            f"```worked\n{worked}```",
            "",
            "Now you.",
            "",
            "![The strip lies off the joint.](pictures/shed-wrong.svg)",
            "",
            *(f"```question\n{question}```\n" for question in asked),
        ]
    )


def another(question: str, question_id: str) -> str:
    """Return a question's text under another id."""
    return question.replace(question.splitlines()[0], f'id = "{question_id}"')


def write_content(folder: Path) -> Path:
    """Write the tiny content below a folder, which is returned."""
    for name in ("lessons", "pictures"):
        (folder / name).mkdir(parents=True)
    (folder / "lessons/01-shed.md").write_text(lesson_text(), "utf-8")
    for name in ("shed-strip", "shed-wrong"):
        (folder / f"pictures/{name}.svg").write_text(_PICTURE.replace("NAME", name), "utf-8")
    texts = {"competencies": COMPETENCIES, "cautions": CAUTIONS, "stock": STOCK}
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, "utf-8")
    return folder


def question(text: str = RESIN) -> CalculateQuestion:
    """Return the sum in a block's text."""
    read = asked(text)
    assert isinstance(read, CalculateQuestion)
    return read


def asked(text: str, folder: Path = NO_PICTURES) -> Question:
    """Return the question of any kind in a block's text; its pictures lie below `folder`."""
    return read_question(Block(FILE, 1, text), "shed", folder)


def on_four_metres(text: str = RESIN, **others: Any) -> Variant:
    """Return a question on 4 m of joint and 450 g/m² mat, at 2.5 to 1 with 10 % on top."""
    givens = {"length_m": 4.0, "mat_g_per_m2": 450, "ratio": 2.5, "allowance_percent": 10}
    return Variant(question(text), "seed", 0, {**givens, **others})


def edited(text: str, old: str, new: str) -> str:
    """Return a text with the one place where `old` stands put wrong."""
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
    return text.replace(old, new)


def line_of(text: str, piece: str) -> int:
    """Return the line, counted from 1, on which a piece of text first begins."""
    return text.count("\n", 0, text.index(piece)) + 1


def mistake_in(text: str) -> AuthorError:
    """Return the mistake for which a question's text is refused."""
    mistake = mistake_or_none(text)
    assert mistake is not None, "The question was read."
    return mistake


def mistake_or_none(text: str) -> AuthorError | None:
    """Return the mistake for which a question's text is refused, if it is."""
    try:
        question(text)
    except AuthorError as mistake:
        return mistake
    return None
