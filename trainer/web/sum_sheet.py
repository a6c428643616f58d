"""A stored answer to a sum as a page tells it: the mark, the asked lines, and the working."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from trainer.engine import cautions_for, show
from trainer.engine.measures import convert
from trainer.lessons import Variant
from trainer.records.attempts import AnswerFacts, StoredAttempt
from trainer.web.mark_sheet import MarkSheet, notes_of
from trainer.web.working_lines import WorkingLine

TEXT_GONE = "The question's text can't be drawn any more. These were its figures: {givens}."
REST_WRONG = "The line you tried again is right now. Another line is still wrong. "
HARM = "A figure this far off could hurt somebody. On the roof, ask before anybody mixes by it."
WORKING_BELOW = "The working is below, with your numbers."


@dataclass(frozen=True, slots=True)
class AnswerLine:
    """One asked line: what was written, how it was read, and its mark."""

    label: str
    typed: str
    read_as: str
    mark: str
    #: What the person's own figure above should have led to, where that isn't the right figure.
    expected: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SumSheet(MarkSheet):
    """The page of the mark of a sum."""

    answers: tuple[AnswerLine, ...]
    working: tuple[WorkingLine, ...]
    #: What the right figures warn of, whoever worked them.
    cautions: tuple[str, ...]


def sum_sheet(
    stored: StoredAttempt, first: StoredAttempt | None, drawn: Variant | None
) -> SumSheet:
    """Return the sheet of a stored answer.

    `first` is the first try where `stored` is the second: its other lines are told beside it.
    `drawn` is the question as it was shown, for its words; None where it can't be read today.
    """
    answers = _all_answers(stored, first)
    wrong = next((each for each in stored.answers if each.verdict == "wrong"), None)
    labels = _labels(stored, drawn)
    return SumSheet(
        banner="right" if stored.right else "wrong" if stored.finished else "slip",
        words=_words(stored, wrong, labels),
        cue=wrong.cue if wrong and not stored.finished else "",
        text=drawn.text() if drawn else TEXT_GONE.format(givens=_givens(stored)),
        answers=tuple(_answer_line(each, labels[each.line]) for each in answers),
        working=tuple(_working_lines(stored, answers)),
        notes=(*notes_of(stored), *([HARM] if _could_harm(answers, drawn) else [])),
        cautions=cautions_for(drawn.question.method, drawn.givens, drawn.working())
        if drawn
        else (),
        finished=stored.finished,
        wrong_line=wrong.line if wrong else "",
        rest_right=all(each.verdict != "wrong" for each in answers if each is not wrong),
    )


def _all_answers(stored: StoredAttempt, first: StoredAttempt | None) -> tuple[AnswerFacts, ...]:
    """Return the first try's answers with those of the second in their places."""
    again = {each.line: each for each in stored.answers}
    if first is None:
        return stored.answers
    return tuple(again.get(each.line, each) for each in first.answers)


def _could_harm(answers: tuple[AnswerFacts, ...], drawn: Variant | None) -> bool:
    """Return whether a figure lies outside the band that its line declares to be safe."""
    bands = {ask.line: ask.safe for ask in drawn.asks if ask.safe} if drawn else {}
    for answer in answers:
        figure, right = answer.read_value, answer.right_value
        if answer.line not in bands or figure is None or right is None:
            continue
        low, high = bands[answer.line]
        if not low * right <= figure <= high * right:
            return True
    return False


def _labels(stored: StoredAttempt, drawn: Variant | None) -> dict[str, str]:
    """Return what each line is called: as it was asked, else in the words of the working."""
    labels = {str(line["key"]): str(line["words"]).capitalize() for line in stored.lines}
    for ask in drawn.asks if drawn else ():
        labels[ask.line] = (drawn and drawn.text(ask)) or "Your answer"
    return labels


def _working_lines(
    stored: StoredAttempt, answers: tuple[AnswerFacts, ...]
) -> Iterator[WorkingLine]:
    by_line = {each.line: each for each in answers}
    for line in stored.lines:
        answered = show(line["value"], line["unit"])
        answer = by_line.get(line["key"])
        if answer is None:
            yield WorkingLine(line["words"], line["shown"], answered)
            continue
        if answer.unit != line["unit"]:
            asked = convert(line["value"], line["unit"], answer.unit)
            answered = f"{answered} = {show(asked, answer.unit)}"
        yield WorkingLine(line["words"], line["shown"], answered, answer.verdict, _own(answer))


def _own(answer: AnswerFacts) -> str:
    return "" if answer.read_value is None else show(answer.read_value, answer.unit)


def _words(stored: StoredAttempt, wrong: AnswerFacts | None, labels: Mapping[str, str]) -> str:
    if stored.right:
        that_was_it = "" if stored.try_no == 1 else "That was it. "
        return f"{that_was_it}The working is below."
    if wrong is None:
        return REST_WRONG + WORKING_BELOW
    if not stored.finished:
        return f"{wrong.slip[:1].upper()}{wrong.slip[1:]}."
    if len(stored.answers) == 1:
        return WORKING_BELOW
    return f"The first wrong line is: {labels[wrong.line]} {WORKING_BELOW}"


def _answer_line(answer: AnswerFacts, label: str) -> AnswerLine:
    differs = answer.expected_value not in (None, answer.right_value)
    expected = show(answer.expected_value or 0, answer.unit) if differs else ""
    return AnswerLine(label, answer.typed, answer.read_as, answer.verdict, expected)


def _givens(stored: StoredAttempt) -> str:
    return ", ".join(f"{name} {_plainly(value)}" for name, value in stored.givens.items())


def _plainly(value: Any) -> str:  # noqa: ANN401 - a figure, a list of them, or a word
    if isinstance(value, list):
        return " and ".join(_plainly(each) for each in value)
    return f"{value:g}" if isinstance(value, (int, float)) else str(value)
