"""Which questions a sitting asks, and in what order. Nothing here knows a database or a lesson.

What is due comes first, what is still at its first meeting after it, each as often as its tries
would count. From the second meeting on a skill comes back only after some questions on others,
and no two neighbours need the same method. Where too few others are wanted, questions on skills
that were met already fill the gap; where none fits, the try is left for another day.
"""

from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date

from .reviews import recall
from .rules import SittingRules, SkillRules
from .running import Progress
from .standing import DUE_AGAIN, standing, tries_that_count

__all__ = ["Askable", "Candidate", "Turn", "candidate_for", "plan_sitting"]

_FIRST_MEETING = ("", "started")
_CURED = "cured"


@dataclass(frozen=True, slots=True)
class Askable:
    """A question that may be asked today."""

    question_id: str
    skills: frozenset[str]
    method: str
    """What has to be worked, or how it is answered where there is nothing to work."""
    numberless: bool = False
    last_done: date | None = None


@dataclass(frozen=True, slots=True)
class Candidate:
    """A skill that somebody has met, as it stands today."""

    skill: str
    wanted: int
    """How many tries of today would count; 0 for one that only fills a gap."""
    urgency: tuple[float, ...]
    """What sorts the wanted ones, the smallest first."""
    recall: float
    first_meeting: bool
    is_cured: bool
    takes_numberless: bool = True
    """Whether a question without numbers would say anything of it today."""
    confused_with: frozenset[str] = frozenset()


def candidate_for(
    skill: str,
    progress: Progress,
    today: date,
    rules: SkillRules,
    confused_with: Collection[str] = (),
) -> Candidate:
    """Return a skill that was met as the plan of a day's practice sees it.

    What is Due again comes first, since it was there already; then the oldest, then the weakest.
    """
    share = recall(progress.card, today, rules)
    first_meeting, cured = progress.reached in _FIRST_MEETING, progress.reached == _CURED
    stands = standing(progress, today, rules)
    due = stands.next_date or today
    return Candidate(
        skill,
        wanted=tries_that_count(progress, today, rules),
        urgency=(first_meeting, stands.state != DUE_AGAIN, due.toordinal(), share),
        recall=share,
        first_meeting=first_meeting,
        is_cured=cured,
        takes_numberless=not cured and progress.numberless < rules.numberless_tries,
        confused_with=frozenset(confused_with),
    )


@dataclass(frozen=True, slots=True)
class Turn:
    """One question of a sitting, and the skill for whose sake it is asked."""

    question_id: str
    skill: str


def plan_sitting(
    candidates: Collection[Candidate],
    askables: Collection[Askable],
    rules: SittingRules,
    most: int | None = None,
) -> tuple[Turn, ...]:
    """Return the turns of a sitting in order, `most` at most (None: as the rules say).

    The same people, skills and questions make the same sitting. What doesn't fit is wanted again
    on another day, and more urgently.
    """
    plan = _Plan(candidates, askables, rules)
    for _ in range(rules.sitting_questions if most is None else most):
        if not plan.take_next():
            break
    return plan.turns()


class _Plan:
    """A sitting as it grows, turn by turn."""

    def __init__(
        self,
        candidates: Collection[Candidate],
        askables: Collection[Askable],
        rules: SittingRules,
    ) -> None:
        self.by_skill = {each.skill: each for each in candidates}
        self.askables = sorted(askables, key=lambda each: each.question_id)
        self.apart = rules.returns_after
        self.left = {each.skill: each.wanted for each in candidates}
        self.taken: list[tuple[Askable, Candidate, bool]] = []

    def turns(self) -> tuple[Turn, ...]:
        """Return what was taken, without what only fills the end."""
        wanted = [place for place, (_, _, is_wanted) in enumerate(self.taken, 1) if is_wanted]
        kept = self.taken[: max(wanted, default=0)]
        return tuple(Turn(asked.question_id, each.skill) for asked, each, _ in kept)

    def take_next(self) -> bool:
        """Take the next question; return False where nothing more is wanted, or nothing fits."""
        if not any(self.left.values()):
            return False
        return any(map(self._take, (*self._wanted(), *self._fillers())))

    def _wanted(self) -> list[Candidate]:
        """Return the skills that want another try: due before new, then the least asked first.

        One that is easily confused with the one just asked comes before others asked as often.
        """
        before = self.taken[-1][1] if self.taken else None
        close = before.confused_with if before else frozenset()
        return sorted(
            (each for each in self.by_skill.values() if self.left[each.skill]),
            key=lambda each: (
                each.first_meeting,
                self._times(each.skill),
                each.skill not in close,
                each.urgency,
                each.skill,
            ),
        )

    def _fillers(self) -> list[Candidate]:
        """Return skills that may fill a gap: one that is Cured only where nothing else is left.

        At a first meeting one more try does no harm, once it was asked as often as it lacks.
        """
        return sorted(
            (
                each
                for each in self.by_skill.values()
                if not each.wanted or (each.first_meeting and not self.left[each.skill])
            ),
            key=lambda each: (each.is_cured, self._times(each.skill), each.recall, each.skill),
        )

    def _take(self, candidate: Candidate) -> bool:
        asked = next(self._fitting(candidate), None)
        if asked is None:
            return False
        is_wanted = any(self.left.get(skill) for skill in asked.skills)
        self.taken.append((asked, candidate, is_wanted))
        for skill in asked.skills & self.left.keys():
            self.left[skill] = max(0, self.left[skill] - 1)
        return True

    def _fitting(self, candidate: Candidate) -> Iterator[Askable]:
        """Yield the questions on a skill that may come now, the longest not done first.

        One without numbers comes only once for a skill: its run may have no room for a second. To
        fill a gap it comes last, since it then is out of sight for nothing.
        """
        asked = Counter(each.question_id for each, _, _ in self.taken)
        fills = not self.left[candidate.skill]
        fitting = (
            each
            for each in self.askables
            if candidate.skill in each.skills
            and (not each.numberless or self._takes_numberless(candidate))
            and self._may_come(each, candidate)
        )
        yield from sorted(
            fitting,
            key=lambda each: (
                fills and each.numberless,
                asked[each.question_id],
                each.last_done or date.min,
                each.numberless,
                each.question_id,
            ),
        )

    def _takes_numberless(self, candidate: Candidate) -> bool:
        had = any(each.numberless and candidate.skill in each.skills for each, _, _ in self.taken)
        return candidate.takes_numberless and not had

    def _may_come(self, asked: Askable, candidate: Candidate) -> bool:
        if self.taken and asked.method == self.taken[-1][0].method:
            before = self.taken[-1][1]
            if not (candidate.first_meeting and before.first_meeting):
                return False
        lately = self.taken[-self.apart :]
        again = {skill for each, _, _ in lately for skill in each.skills & asked.skills}
        return not any(map(self._spaced, again))

    def _spaced(self, skill: str) -> bool:
        """Whether a skill has to wait before it comes back: from its second meeting on."""
        return skill in self.by_skill and not self.by_skill[skill].first_meeting

    def _times(self, skill: str) -> int:
        return sum(skill in asked.skills for asked, _, _ in self.taken)
