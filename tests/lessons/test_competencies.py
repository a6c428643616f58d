"""content/competencies.toml: competencies, skills and the rules."""

from pathlib import Path

import pytest
from lessons_specimens import COMPETENCIES, edited, line_of

from trainer.lessons.competencies import Competencies, Rule, Skill, read_competencies
from trainer.lessons.errors import AuthorError

SKILLS = COMPETENCIES[COMPETENCIES.index("[[competency.skill]]") : COMPETENCIES.index("[rules")]


def read(text: str, folder: Path) -> Competencies:
    """Return what a text says as a file of a content folder."""
    (folder / "competencies.toml").write_text(text, "utf-8")
    return read_competencies(folder)


def mistake_in(text: str, folder: Path) -> AuthorError:
    """Return the mistake for which a text is refused."""
    with pytest.raises(AuthorError) as refused:
        read(text, folder)
    assert refused.value.file == "content/competencies.toml"
    return refused.value


def test_a_competency_is_read(tmp_path: Path) -> None:
    """With its must-steps, its questions, its part of the roof and its skills."""
    (bandaging,) = read(COMPETENCIES, tmp_path).competencies
    assert (bandaging.slug, bandaging.title, bandaging.part) == (
        "bandaging",
        "Bandaging",
        "bandage",
    )
    assert (bandaging.safety_critical, bandaging.signer_must_hold) == (False, True)
    assert bandaging.must_steps == ("Swept.", "Dry.", "Centred.", "Wetted.", "Left alone.")
    assert bandaging.why == ("Why wet it from below?",)
    assert [skill.slug for skill in bandaging.skills] == ["bandage-glass", "resin-for-mat"]


def test_skills_are_found_by_slug(tmp_path: Path) -> None:
    """Whichever competency they belong to."""
    assert read(COMPETENCIES, tmp_path).skills["resin-for-mat"] == Skill(
        "resin-for-mat", "Finding the resin that mat needs", 2.5
    )


def test_a_rule_has_its_reason(tmp_path: Path) -> None:
    """No threshold stands without one."""
    assert read(COMPETENCIES, tmp_path).rules == {
        "retries": Rule(1, "One more look at the same numbers.")
    }


@pytest.mark.parametrize("steps", [4, 10])
def test_must_steps_are_five_to_nine(steps: int, tmp_path: Path) -> None:
    """Fewer say too little; more can't be watched."""
    line = 'must_steps = ["Swept.", "Dry.", "Centred.", "Wetted.", "Left alone."]'
    text = edited(COMPETENCIES, line, f"must_steps = {['x'] * steps}")
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == f"'bandaging' has {steps} must-steps; it takes 5 to 9."
    assert mistake.line == line_of(text, "must_steps")


@pytest.mark.parametrize(
    ("old", "new", "sentence", "mend"),
    [
        (
            "safety_critical = false",
            "safety_crticial = false",
            "A competency has no key 'safety_crticial'.",
            "Did you mean 'safety_critical'?",
        ),
        (
            "signer_must_hold = true",
            'signer_must_hold = "yes"',
            "'signer_must_hold' must be true or false.",
            "",
        ),
        ("weight = 2.5", 'weight = "2.5"', "'weight' must be a number.", ""),
        ("weight = 2.5", "weight = true", "'weight' must be a number.", ""),
        ("weight = 2.5", "wieght = 2.5", "A skill has no key 'wieght'.", "Did you mean 'weight'?"),
        ('why = ["Why', 'why = [1, "Why', "'why' must be a list of texts in quotes.", ""),
        (
            "[rules.retries]",
            "[rule.retries]",
            "The file has no key 'rule'.",
            "Did you mean 'rules'?",
        ),
    ],
)
def test_a_mistake_points_at_its_line(
    old: str, new: str, sentence: str, mend: str, tmp_path: Path
) -> None:
    """In a competency, in its second skill, and below."""
    text = edited(COMPETENCIES, old, new)
    mistake = mistake_in(text, tmp_path)
    assert (mistake.sentence, mistake.mend) == (sentence, mend)
    assert mistake.line == line_of(text, new)


def test_a_missing_key_points_at_its_table(tmp_path: Path) -> None:
    """The second skill without a weight is missed at the second skill."""
    text = edited(COMPETENCIES, "weight = 2.5\n", "")
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == "resin-for-mat has no 'weight'."
    assert mistake.line == text[: text.rindex("[[competency.skill]]")].count("\n") + 1


def test_a_skill_twice_is_refused(tmp_path: Path) -> None:
    """It points at the second."""
    text = edited(COMPETENCIES, 'slug = "resin-for-mat"', 'slug = "bandage-glass"')
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == "The skill 'bandage-glass' stands here twice."
    assert mistake.line == text[: text.rindex('"bandage-glass"')].count("\n") + 1


def test_a_competency_twice_is_refused(tmp_path: Path) -> None:
    """Slugs stand in the records: one means one thing."""
    once = COMPETENCIES[: COMPETENCIES.index("[[competency.skill]]")]
    mistake = mistake_in(once + once, tmp_path)
    assert mistake.sentence == "The competency 'bandaging' stands here twice."
    assert mistake.line == once.count("\n") + 2


@pytest.mark.parametrize(
    "rule",
    ["value = 1", 'reason = "Why not?"', 'value = 1\nreason = "x"\nsince = 2026'],
)
def test_a_rule_is_a_value_and_a_reason(rule: str, tmp_path: Path) -> None:
    """No more and no less."""
    text = COMPETENCIES[: COMPETENCIES.index("[rules.retries]")] + f"[rules.retries]\n{rule}\n"
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == "The rule 'retries' has a value and a reason, and no more."
    assert mistake.line == line_of(text, "[rules.retries]")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "competency = 3",
        'competency = ["bandaging"]',
        COMPETENCIES.replace("[rules.retries]\nvalue = 1\n", "[rules]\nretries = 1\n"),
        'rules = "none"\n' + COMPETENCIES[: COMPETENCIES.index("[rules")],
        edited(COMPETENCIES, SKILLS, 'skill = "bandage-glass"\n\n'),
    ],
)
def test_another_shape_is_refused_with_a_sentence(text: str, tmp_path: Path) -> None:
    """Whatever the file holds, its author reads a sentence and no traceback."""
    assert mistake_in(text, tmp_path).sentence.endswith(".")
