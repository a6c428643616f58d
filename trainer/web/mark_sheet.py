"""A stored answer as a page tells it: the mark, the asked lines, and the working."""

from dataclasses import dataclass

from trainer.engine import ENGINE_VERSION, Line, Verdict, Working, mark, show
from trainer.lessons import Ask, Question, Variant, variant
from trainer.records.attempts import AnswerFacts, StoredAttempt

ENGINE_DIFFERS = (
    "The sums have been revised since this was answered. The mark stands as it was given."
)
STARTED_AFRESH = (
    "Your first figure can't be worked on, so the lines below it were marked by the right one."
)
SENT_LATER = "This was sent later, and counts for the day that you pressed the button."


@dataclass(frozen=True, slots=True)
class AnswerLine:
    """One asked line: what was written, how it was read, and its mark."""

    label: str
    typed: str
    read_as: str
    mark: str
    #: What the person's own figure above should have led to, where that isn't the right figure.
    expected: str


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line of the working."""

    words: str
    in_words: str
    sum: str
    answer: str
    mark: str = ""
    own: str = ""


@dataclass(frozen=True, slots=True)
class MarkSheet:
    """Everything that the page of a mark says."""

    banner: str
    words: str
    cue: str
    text: str
    answers: tuple[AnswerLine, ...]
    working: tuple[WorkingLine, ...]
    notes: tuple[str, ...]
    finished: bool
    wrong_line: str | None


def mark_sheet(question: Question, stored: StoredAttempt) -> MarkSheet:
    """Return the sheet of a stored answer to a question as it was asked."""
    drawn = variant(question, stored.seed, stored.redraws)
    working = drawn.working()
    wrong = next((each for each in stored.answers if each.verdict == "wrong"), None)
    return MarkSheet(
        banner=_banner(stored, wrong),
        words=_words(drawn, stored, wrong),
        cue=wrong.cue if wrong and not stored.finished else "",
        text=drawn.text(),
        answers=tuple(_answer_line(drawn, each) for each in stored.answers),
        working=working_lines(working, question, stored),
        notes=tuple(_notes(question, stored, working)),
        finished=stored.finished,
        wrong_line=wrong.line if wrong else None,
    )


def plain_working(working: Working) -> tuple[WorkingLine, ...]:
    """Return a working that nobody was asked about."""
    return tuple(_working_line(line) for line in working.lines)


def working_lines(
    working: Working, question: Question, stored: StoredAttempt
) -> tuple[WorkingLine, ...]:
    """Return the working with the asked lines' marks and the person's own figures in it."""
    answers = {each.line: each for each in stored.answers}
    asks = {ask.line: ask for ask in question.asks}
    return tuple(
        _working_line(line, asks[line.key], answers[line.key])
        if line.key in answers
        else _working_line(line)
        for line in working.lines
    )


def _working_line(
    line: Line, ask: Ask | None = None, answer: AnswerFacts | None = None
) -> WorkingLine:
    answered = show(line.value, line.unit)
    if ask is None or answer is None:
        return WorkingLine(line.words, line.in_words(), line.in_figures(), answered)
    if ask.unit != line.unit:
        answered = f"{answered} = {show(ask.in_asked_unit(line.value), ask.unit)}"
    own = "" if answer.read_value is None else show(answer.read_value, answer.unit)
    return WorkingLine(
        line.words, line.in_words(), line.in_figures(), answered, answer.verdict, own
    )


def _banner(stored: StoredAttempt, wrong: AnswerFacts | None) -> str:
    if wrong is None:
        return "right"
    return "wrong" if stored.finished else "slip"


def _words(drawn: Variant, stored: StoredAttempt, wrong: AnswerFacts | None) -> str:
    if wrong is None:
        that_was_it = "" if stored.try_no == 1 else "That was it. "
        return f"{that_was_it}The working is below."
    if not stored.finished:
        return f"{wrong.slip[:1].upper()}{wrong.slip[1:]}."
    if len(stored.answers) == 1:
        return "The working is below, with your numbers."
    label = drawn.text(drawn.question.ask_for(wrong.line))
    return f"The first wrong line is: {label} The working is below, with your numbers."


def _answer_line(drawn: Variant, answer: AnswerFacts) -> AnswerLine:
    ask = drawn.question.ask_for(answer.line)
    verdict: Verdict = answer.verdict  # type: ignore[assignment]
    value, expected = answer.read_value, answer.expected_value
    return AnswerLine(
        label=drawn.text(ask) or "Your answer",
        typed=answer.typed,
        read_as="" if value is None else show(value, answer.unit),
        mark=verdict,
        expected=""
        if expected is None or expected == answer.right_value
        else show(expected, answer.unit),
    )


def _notes(question: Question, stored: StoredAttempt, working: Working) -> list[str]:
    notes = []
    if stored.engine_version != ENGINE_VERSION and not _same(stored, working):
        notes.append(ENGINE_DIFFERS)
    if _started_afresh(question, stored):
        notes.append(STARTED_AFRESH)
    if stored.sent_later:
        notes.append(SENT_LATER)
    return notes


def _same(stored: StoredAttempt, working: Working) -> bool:
    then = {line["key"]: line["value"] for line in stored.lines}
    now = {line.key: line.value for line in working.lines}
    return then.keys() == now.keys() and all(
        abs(then[key] - now[key]) <= 1e-9 * abs(then[key]) for key in then
    )


def _started_afresh(question: Question, stored: StoredAttempt) -> bool:
    asks = [question.ask_for(each.line) for each in stored.answers]
    figures = {
        ask.line: ask.in_line_unit(each.read_value)
        for ask, each in zip(asks, stored.answers, strict=True)
        if each.read_value is not None
    }
    if len(figures) < 2:  # one line has nothing below it
        return False
    givens = variant(question, stored.seed, stored.redraws).givens
    return mark(question.method, givens, [ask.asked() for ask in asks], figures).started_afresh
