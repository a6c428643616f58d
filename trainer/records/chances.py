"""How many people the running rule lets through, exactly, from the rule as it stands."""

from .rules import SkillRules

__all__ = ["chance_of_a_pass", "chance_within"]


def chance_of_a_pass(share_right: float, rules: SkillRules) -> float:
    """Return the chance, 0 to 1, that one run ends with Cured for somebody always as good.

    `share_right` is the share of their tries that are right, 0 to 1, each independent of the
    others. The run is walked try by try: by its number of wrongs so far, how likely it is to be
    there and still running. Source: Wald's sequential test in steps (1945); the figures computed.
    """
    looks = dict(zip(rules.cured_looks, rules.cured_wrongs, strict=True))
    running, passed = {0: 1.0}, 0.0
    for tries in range(1, rules.cured_looks[-1] + 1):
        running = _one_more_try(running, share_right, rules.run_ends_at_wrong)
        allowed = looks.get(tries, -1)
        passed += sum(chance for wrong, chance in running.items() if wrong <= allowed)
        running = {wrong: chance for wrong, chance in running.items() if wrong > allowed}
    return passed


def chance_within(runs: int, share_right: float, rules: SkillRules) -> float:
    """Return the chance, 0 to 1, that one of so many runs ends with Cured."""
    return 1 - (1 - chance_of_a_pass(share_right, rules)) ** runs


def _one_more_try(running: dict[int, float], share_right: float, ends: int) -> dict[int, float]:
    after: dict[int, float] = {}
    for wrong, chance in running.items():
        after[wrong] = after.get(wrong, 0.0) + chance * share_right
        if wrong + 1 < ends:
            after[wrong + 1] = after.get(wrong + 1, 0.0) + chance * (1 - share_right)
    return after
