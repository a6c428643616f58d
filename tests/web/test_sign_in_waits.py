"""A growing wait after wrong passwords, name by name."""

from web_bench import Bench


def test_after_five_failures_a_name_waits(tiny: Bench) -> None:
    """The fifth wrong password brings a wait of thirty seconds, and even the right one waits."""
    noor = tiny.visit()
    pages = [noor.knock("noor", "another bucket") for _ in range(5)]
    assert [page.status for page in pages] == [422, 422, 422, 422, 429]
    assert pages[-1].headers["Retry-After"] == "30"
    assert pages[-1].notes == "That was wrong too often. Wait 30 seconds, then try again."
    assert noor.knock("noor").status == 429
    tiny.clock.wait(seconds=30)
    assert noor.knock("noor").status == 303


def test_a_longer_wait_is_told_in_minutes(tiny: Bench) -> None:
    """The sixth failure brings one minute, the seventh two."""
    noor = tiny.visit()
    for _ in range(5):
        noor.knock("noor", "another bucket")
    tiny.clock.wait(seconds=30)
    sixth = noor.knock("noor", "another bucket")
    assert sixth.notes == "That was wrong too often. Wait 1 minute, then try again."
    assert sixth.headers["Retry-After"] == "60"
    tiny.clock.wait(minutes=1)
    seventh = noor.knock("noor", "another bucket")
    assert seventh.notes == "That was wrong too often. Wait 2 minutes, then try again."
    assert seventh.headers["Retry-After"] == "120"


def test_the_wait_is_of_one_name(tiny: Bench) -> None:
    """Nobody else is kept out, though they stand at the same browser."""
    browser = tiny.visit()
    for _ in range(5):
        browser.knock("noor", "another bucket")
    assert browser.knock("sam").status == 303


def test_signing_in_forgets_the_failures(tiny: Bench) -> None:
    """Four failures before a success don't count afterwards."""
    for _ in range(4):
        tiny.visit().knock("noor", "another bucket")
    assert tiny.visit().knock("noor").status == 303
    assert tiny.visit().knock("noor", "another bucket").status == 422
