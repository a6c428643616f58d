"""What the check proves of figures: no constant of the trade is typed in prose."""

from dataclasses import replace
from pathlib import Path

import pytest
from lessons_specimens import FILE, lesson_text

from trainer.engine.materials import NAMED
from trainer.lessons.errors import AuthorError
from trainer.lessons.figures_check import CALLED, typed_figures
from trainer.lessons.lesson import read_lesson

SHED = read_lesson(lesson_text(), FILE, Path("nowhere"))


def found_in(prose: str) -> list[AuthorError]:
    """Return the typed constants in a lesson whose prose begins on line 4."""
    return list(typed_figures(replace(SHED, text=f"+++\nslug = 'a'\n+++\n{prose}\n")))


def test_a_figure_that_differs_is_named_with_the_constant() -> None:
    """Both figures, the line, and both ways out."""
    prose = "Sweep first.\nLay it with a lap of 40 mm on the next."
    (mistake,) = found_in(prose)
    assert (mistake.file, mistake.line) == (FILE, 5)
    assert mistake.text == "Lay it with a lap of 40 mm on the next."
    told = mistake.sentence.replace("\u00a0", " ")
    assert told == "Here stand 40 mm, and the lap of mat on mat is 50 mm."
    assert mistake.mend == "Write {mat-lap}, or {as-written 40 mm} if the scenario sets it."


def test_a_figure_that_agrees_is_to_be_a_placeholder() -> None:
    """It would stay behind when the constant changes."""
    (mistake,) = found_in("Lay it with a lap of 50 mm on the next.")
    told = mistake.sentence.replace("\u00a0", " ")
    assert told == "Here 50 mm is typed, which is the lap of mat on mat."
    assert mistake.mend == (
        "Write {mat-lap}, which follows the constant; or {as-written 50 mm} for the scenario's own."
    )


def test_another_unit_of_the_kind_is_seen_through() -> None:
    """5 cm is 50 mm, and its placeholder prints centimetres; 2 inches are 50.8 mm."""
    (agrees,), (differs,) = found_in("laps of 5 cm"), found_in("laps of 2 inches")
    assert agrees.mend.startswith("Write {mat-lap:cm}, which")
    assert differs.sentence.replace("\u00a0", " ").startswith("Here stand 2 inches, and")


@pytest.mark.parametrize(
    ("prose", "name"),
    [
        ("The strips lap at least 60 mm.", "mat-lap"),
        ("a 60 mm lap", "mat-lap"),
        ("laps are\nstaggered by 80 mm", "stagger"),
        ("It **wraps 40 mm** on to every face.", "wrap"),
        ("The bandage is 80 mm wide.", "bandage-width"),
        ("a 100 mm bandage", "bandage-width"),
        ("With 60 mm tape below it", "tape-width"),
        ("60 mm of tape", "tape-width"),
        ("the tape goes 40 mm past", "tape-carry"),
        ("At least 12 mm must show.", "least-bare-board"),
        ("turned up 120 mm above the finished roof", "upstand"),
        ("An allowance of 12 % goes on.", "allowance"),
        ("Put 15 % on top.", "allowance"),
        ("take off 3 minutes for mixing", "mixing-time"),
        ("A beginner mixes 2 litres.", "beginner-batch"),
        ("and never more than 3 litres", "beginner-most"),
        ("Two 60 mm brushes.", "brush-width"),
        ("They stand in warm water, up to about 35 °C.", "warm-water"),
        ("Spread it 3 mm deep or less.", "spread-depth"),
        ("Tape lies across a 4 mm gap.", "board-gap"),
        ("The tape turns 12 mm on to each face.", "tape-turn"),
        ("It may turn on to a face by 12 mm at the most.", "tape-turn"),
        ("50 ppm over eight hours", "styrene-limit"),
        ("200 ppm over fifteen minutes", "styrene-short-limit"),
        ("Topcoat goes on at 0.6 kg/m².", "topcoat-rate"),
        ("The resin has 1.2 kg/L.", "resin-density"),
        ("Reckon the cured resin at 1.25 kg/L.", "cured-resin-density"),
        ("glass at 2.5 kg/L", "glass-density"),
        ("Catalyst weighs 1.2 kg/L.", "catalyst-density"),
        ("Keep 4 °C above the dew point.", "dew-margin"),
        ("![Right: laps of 40 mm.](pictures/a.svg)", "mat-lap"),
        ("[^a]: Laps of 40 mm.", "mat-lap"),
    ],
)
def test_a_constant_is_known_by_its_words(prose: str, name: str) -> None:
    """In prose, in captions and in footnotes, bold or not."""
    (mistake,) = found_in(prose)
    assert f"the {NAMED[name].words} is" in mistake.sentence
    assert mistake.mend.startswith(f"Write {{{name}")


@pytest.mark.parametrize(
    "prose",
    [
        "Lap it by {mat-lap}.",
        "Here they lap {as-written 40 mm}, for once.",
        "A bandage 3.6 m long.",
        "A bandage is 300 g/m² as a rule.",
        "12.5 mm of bare board shows on each side.",
        "The tape lies 5 mm off.",
        "Let the tape wander 5 mm.",
        "The end is 80 by 100 mm, and its lap is good.",
        "Lap it. Then 40 mm is left.",
        "Lap it well, 40 mm from the edge.",
        "A test cup at 2 % by mass gelled.",
        "Resin stands at 17 °C.",
        "Put a lap in the fold.\n\n40 mm further on it ends.",
        "It takes 5 in the laps.",
        "```question\nask = 'A lap of 40 mm.'\n```",
    ],
)
def test_other_figures_are_left_alone(prose: str) -> None:
    """Placeholders, the scenario's own, other things, other sentences, questions."""
    assert found_in(prose) == []


def test_every_name_that_is_looked_for_is_a_constant() -> None:
    """One that was renamed would be looked for no more."""
    assert sorted(set(CALLED) - set(NAMED)) == []


def test_mistakes_come_in_the_order_of_their_lines() -> None:
    """As somebody mends them, from the top."""
    lines = [each.line for each in found_in("60 mm tape\n\nlaps of 40 mm, 60 mm tape\nwraps 40 mm")]
    assert lines == [4, 6, 6, 7]
