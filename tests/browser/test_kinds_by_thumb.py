"""Each kind of question in a real browser: by thumb, from the keyboard, and with scripts off."""

import re

import pytest
from browsing import Served, sign_in
from playwright.sync_api import Locator, Page, expect

from trainer.lessons import ChooseDrawn, LocateDrawn, OrderDrawn

RIGHT, WRONG = ".mark-right", ".mark-wrong"


def opened(page: Page, served: Served, kind: str) -> str:
    """Open the first question of a kind as somebody who has read the first lesson."""
    sign_in(page, "lena")
    path = f"/questions/{served.one_of_kind(kind).id}"
    page.goto(path)
    return path


def check(page: Page) -> None:
    """Press the one amber button."""
    page.get_by_role("button", name="Check it").click()


def tab_to(page: Page, target: Locator) -> None:
    """Press Tab until something is in focus."""
    for _ in range(60):
        page.keyboard.press("Tab")
        if target.evaluate("each => each === document.activeElement"):
            return
    pytest.fail("Tab never came there.")


def chosen(served: Served, page: Page) -> ChooseDrawn:
    """Return the decision on a page."""
    drawn = served.asked(page)
    assert isinstance(drawn, ChooseDrawn)
    return drawn


def ordered(served: Served, page: Page) -> OrderDrawn:
    """Return the order on a page."""
    drawn = served.asked(page)
    assert isinstance(drawn, OrderDrawn)
    return drawn


def located(served: Served, page: Page) -> LocateDrawn:
    """Return the picture on a page."""
    drawn = served.asked(page)
    assert isinstance(drawn, LocateDrawn)
    return drawn


# Decisions.


def test_a_decision_is_taken_by_thumb(phone: Page, served: Served) -> None:
    """It can be changed until it is checked; then what comes of it is told, and of the others."""
    opened(phone, served, "choose")
    drawn = chosen(served, phone)
    wrong = next(place for place, _ in drawn.choices() if place != drawn.right_place())
    for place in (drawn.right_place(), wrong):
        phone.locator(".choice").nth(int(place) - 1).tap()
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(WRONG)).to_be_visible()
    then = dict(drawn.choices())[wrong].then
    expect(phone.locator(".outcome-wrong")).to_contain_text(then)
    expect(phone.locator(".outcome-right")).to_be_visible()
    phone.locator(".others summary").tap()
    expect(phone.locator(".others dt").first).to_be_visible()
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360


def test_a_decision_is_taken_from_the_keyboard(desk: Page, served: Served) -> None:
    """Tab to the choices, arrows among them, Enter to check."""
    opened(desk, served, "choose")
    right = int(chosen(served, desk).right_place())
    tab_to(desk, desk.locator("input[name=answer_0]").first)
    desk.keyboard.press("Space")
    for _ in range(right - 1):
        desk.keyboard.press("ArrowDown")
    desk.keyboard.press("Enter")
    expect(desk.locator(RIGHT)).to_be_visible()


def test_a_decision_is_taken_without_scripts(plain_phone: Page, served: Served) -> None:
    """A form with radio buttons needs none."""
    opened(plain_phone, served, "choose")
    right = chosen(served, plain_phone).right_place()
    plain_phone.locator(f"input[name=answer_0][value='{right}']").check()
    check(plain_phone)
    expect(plain_phone.locator(RIGHT)).to_be_visible()


# Orders.


def put_right(page: Page, drawn: OrderDrawn) -> None:
    """Move each step up by its button until all are in order; any way of pressing will do."""
    for row, place in enumerate(drawn.right_places()):
        while page.locator(".step").nth(row).get_attribute("data-place") != place:
            page.locator(f"#step-{place} button[data-by='-1']").click()


def test_an_order_is_put_right_by_thumb(phone: Page, served: Served) -> None:
    """Each press moves a step on the page itself, and says where it went."""
    path = opened(phone, served, "order")
    drawn = ordered(served, phone)
    first = phone.locator(".step").first
    words = first.locator(".step-words").inner_text()
    first.locator("button[data-by='1']").tap()
    expect(phone.locator(".step").nth(1).locator(".step-words")).to_have_text(words)
    expect(phone.locator("[data-told]")).to_have_text(re.compile(rf"^2 of \d: {re.escape(words)}$"))
    assert phone.url.endswith(path)
    put_right(phone, drawn)
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(RIGHT)).to_be_visible()
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360


def test_a_step_can_be_dragged_as_well(desk: Page, served: Served) -> None:
    """By its handle: the last one is drawn to the top."""
    opened(desk, served, "order")
    last, first = desk.locator(".step").last, desk.locator(".step").first
    words = last.locator(".step-words").inner_text()
    last.scroll_into_view_if_needed()
    handle, top = last.locator(".step-handle").bounding_box(), first.bounding_box()
    assert handle
    assert top
    desk.mouse.move(handle["x"] + 5, handle["y"] + handle["height"] / 2)
    desk.mouse.down()
    desk.mouse.move(handle["x"] + 5, top["y"] + 4, steps=8)
    desk.mouse.up()
    expect(desk.locator(".step").first.locator(".step-words")).to_have_text(words)
    put = desk.locator("input[name=answer_0]").input_value().split()
    shown = [each.get_attribute("data-place") for each in desk.locator(".step").all()]
    assert put == shown


def test_an_order_is_put_right_from_the_keyboard(desk: Page, served: Served) -> None:
    """The button keeps the focus while its step moves, so that it is pressed again at once."""
    opened(desk, served, "order")
    steps = desk.locator(".step").count()
    later = desk.locator(".step").first.locator("button[data-by='1']")
    place = desk.locator(".step").first.get_attribute("data-place")
    tab_to(desk, later)
    for _ in range(steps - 1):
        desk.keyboard.press("Enter")
    assert desk.locator(".step").last.get_attribute("data-place") == place
    # At the end it can't go on; the other button of the same step is in focus.
    assert desk.evaluate("document.activeElement.dataset.by") == "-1"
    tab_to(desk, desk.get_by_role("button", name="Check it"))
    desk.keyboard.press("Enter")
    expect(desk.locator(".mark")).to_be_visible()


def test_an_order_is_put_right_without_scripts(plain_phone: Page, served: Served) -> None:
    """Each press comes back with the step moved, in focus, and still to be checked."""
    opened(plain_phone, served, "order")
    drawn = ordered(served, plain_phone)
    put_right(plain_phone, drawn)
    expect(plain_phone.locator(".mark")).to_have_count(0)
    check(plain_phone)
    expect(plain_phone.locator(RIGHT)).to_be_visible()


def test_steps_are_read_at_twice_the_size_on_a_small_phone(desk: Page, served: Served) -> None:
    """320 px at 200 %: words keep most of a row, the buttons go below, nothing leaves the page."""
    desk.set_viewport_size({"width": 160, "height": 370})
    opened(desk, served, "order")
    assert desk.evaluate("document.documentElement.scrollWidth") <= 160
    for words in desk.locator(".step-words").all():
        box = words.bounding_box()
        assert box is not None
        assert box["width"] >= 60


def test_arrows_point_up_and_down_in_forced_colours(desk: Page, served: Served) -> None:
    """Their clear sides stay clear, so that neither is a square; the rest is in a button's ink."""
    opened(desk, served, "order")
    desk.emulate_media(forced_colors="active")
    moves = desk.locator(".step").nth(1).locator(".move")
    sides = "each => ['Left', 'Right'].map(side => getComputedStyle(each)[`border${side}Color`])"
    for arrow in moves.locator(".up, .down").all():
        assert arrow.evaluate(sides) == ["rgba(0, 0, 0, 0)"] * 2
    ink = moves.first.evaluate("each => getComputedStyle(each).color")
    up, down = moves.locator(".up"), moves.locator(".down")
    assert up.evaluate("each => getComputedStyle(each).borderBottomColor") == ink
    assert down.evaluate("each => getComputedStyle(each).borderTopColor") == ink


def test_a_wrong_order_says_which_step_is_too_early(phone: Page, served: Served) -> None:
    """As it is first shown it is never right."""
    opened(phone, served, "order")
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(WRONG)).to_be_visible()
    expect(phone.locator(".step-wrong")).to_have_count(1)
    expect(phone.locator(".outcome-wrong")).to_contain_text("Before it comes:")


# Places.


def test_a_place_is_tapped_in_the_picture(phone: Page, served: Served) -> None:
    """It is picked in the list too, and told, without another page; a second tap changes it."""
    path = opened(phone, served, "locate")
    drawn = located(served, phone)
    names = [region.name for region in drawn.question.regions]
    for name in (next(each for each in names if each != drawn.question.right_name), names[0]):
        phone.locator(f"[data-picks='{name}']").tap()
        expect(phone.locator(f"input[value='{name}']")).to_be_checked()
        expect(phone.locator(".region-picked")).to_have_count(1)
        words = phone.locator(f"[data-picks='{name}']").get_attribute("aria-label")
        expect(phone.get_by_role("status").last).to_have_text(f"Picked: {words}")
    assert phone.url.endswith(path)
    phone.locator(f"[data-picks='{drawn.question.right_name}']").tap()
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(RIGHT)).to_be_visible()
    expect(phone.locator(".region-right")).to_have_count(1)
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360


def test_a_place_is_picked_from_the_keyboard(desk: Page, served: Served) -> None:
    """In the list, which says the same as the picture; the picture follows."""
    opened(desk, served, "locate")
    drawn = located(served, desk)
    tab_to(desk, desk.locator("input[name=answer_0]").first)
    desk.keyboard.press("Space")
    for region in drawn.question.regions:
        if region.name == drawn.question.right_name:
            break
        desk.keyboard.press("ArrowDown")
    picked = desk.locator(f"[data-picks='{drawn.question.right_name}'] .region-picked")
    expect(picked).to_have_count(1)
    desk.keyboard.press("Enter")
    expect(desk.locator(RIGHT)).to_be_visible()


def test_a_place_is_tapped_without_scripts(plain_phone: Page, served: Served) -> None:
    """The tap follows a link, and the page comes back with it picked."""
    opened(plain_phone, served, "locate")
    drawn = located(served, plain_phone)
    plain_phone.locator(f"[data-picks='{drawn.question.right_name}']").click()
    expect(plain_phone.locator(f"input[value='{drawn.question.right_name}']")).to_be_checked()
    check(plain_phone)
    expect(plain_phone.locator(RIGHT)).to_be_visible()


def test_every_place_is_large_enough_for_a_thumb(phone: Page, served: Served) -> None:
    """48 px on a side on a phone of 360 px, in every picture of the lessons."""
    sign_in(phone, "lena")
    for question in served.library.questions.values():
        if question.kind != "locate":
            continue
        phone.goto(f"/questions/{question.id}")
        for link in phone.locator("[data-picks]").all():
            box = link.bounding_box()
            assert box
            small = f"{question.id}: {link.get_attribute('data-picks')} {box}"
            assert min(box["width"], box["height"]) >= 47.5, small
