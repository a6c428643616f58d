"""Signing in and out."""

from pathlib import Path

import pytest
from web_bench import Bench, set_up
from web_cast import BERTIL, NOOR, NOW, PASSWORD, SAM, Who
from web_content import write_content
from web_page import Page

from trainer.records import crews, people, writing
from trainer.web.signing_in import WRONG

NOWHERE_ELSE = [
    "//[",
    "http://[",
    "//evil.example",
    "https://evil.example",
    "/\\evil.example",
    "\\\\evil.example",
    "/\t/evil.example",
    "/\n/evil.example",
    "///evil.example",
    "javascript:alert(1)",
    "evil.example",
    "http:evil.example",
]


def cookie(page: Page, name: str) -> str:
    """Return the header that sets a cookie."""
    return next(each for each in page.set_cookies if each.startswith(f"{name}="))


def test_name_and_password_open_today(tiny: Bench) -> None:
    """After signing in Today comes, with one's name on it."""
    noor = tiny.visit()
    page = noor.knock("noor")
    assert (page.status, page.leads_to) == (303, "/")
    assert "Noor" in noor.go_on(page).root.all("header")[0].words


@pytest.mark.parametrize("name", ["NOOR", "  noor ", "Ｎoor"])
def test_a_name_counts_however_it_is_typed(tiny: Bench, name: str) -> None:
    """Capitals, stray spaces and wide letters don't matter in a name."""
    assert tiny.visit().knock(name).status == 303


@pytest.mark.parametrize(
    ("name", "password"), [("noor", "another bucket"), ("nobody", PASSWORD), ("noor", "x" * 2000)]
)
def test_what_is_wrong_is_told_in_the_same_words(tiny: Bench, name: str, password: str) -> None:
    """A wrong password and an unknown name look alike; the name stays, the password goes."""
    page = tiny.visit().knock(name, password)
    assert page.status == 422
    assert page.notes == WRONG
    assert page.form.fields["name"] == name
    assert page.form.fields["password"] == ""
    assert not any(each.startswith("bench=") for each in page.set_cookies)


def test_an_empty_field_is_asked_for(tiny: Bench) -> None:
    """Nothing typed is no failure: each field says what it wants."""
    page = tiny.visit().send(tiny.visit().open("/sign-in"))
    assert page.status == 400  # another browser's token
    visitor = tiny.visit()
    page = visitor.send(visitor.open("/sign-in"))
    assert page.status == 422
    assert page.error_of("name") == "Type your sign-in name."
    assert page.error_of("password") == "Type your password."


def test_html_in_a_name_stays_text(tiny: Bench) -> None:
    """What is typed into the name comes back as it was typed, and as nothing else."""
    page = tiny.visit().knock('"><script>alert(1)</script>', "another bucket")
    assert page.form.fields["name"] == '"><script>alert(1)</script>'
    assert "<script>" not in page.html


def test_html_in_somebodys_own_name_stays_text(tiny: Bench) -> None:
    """A name that looks like HTML is printed in the header and in the crew table as it is."""
    name = "<img src=x onerror=alert(1)>"
    with tiny.records() as session:
        writing(session)
        alder = next(each for each in crews.crews(session) if each.name == "Alder")
        people.add_person(
            session,
            name=name,
            sign_in_name="img",
            password=PASSWORD,
            roles=["trainee"],
            now=NOW,
            crew_id=alder.crew_id,
        )
        session.commit()
    page = tiny.visit(Who("img", "trainee")).open("/")
    assert name in page.root.all("header")[0].words
    assert name in tiny.visit(BERTIL).open("/crew").words


def test_a_token_planted_before_is_worth_nothing_after(tiny: Bench) -> None:
    """Whoever knew this browser's cookies before the sign-in knows nothing of those after it."""
    noor = tiny.visit()
    noor.client.set_cookie("bench", "planted")
    before = noor.open("/sign-in").form.fields["csrf_token"]
    page = noor.knock("noor")
    assert "bench=planted" not in cookie(page, "bench")
    thief = tiny.visit()
    thief.client.set_cookie("bench", "planted")
    assert thief.open("/").leads_to.startswith("/sign-in")
    old_token = noor.post("/lessons/before-the-lid/read", {"csrf_token": before})
    assert old_token.status == 400


def test_each_sign_in_has_a_token_of_its_own(tiny: Bench) -> None:
    """Signing in again gives another token."""
    one, other = (cookie(tiny.visit().knock("noor"), "bench").split(";")[0] for _ in range(2))
    assert one != other


def test_cookies_are_kept_from_scripts_and_other_sites(tiny: Bench) -> None:
    """Both cookies are HttpOnly and SameSite; the one that opens the door lasts thirty days."""
    page = tiny.visit().knock("noor")
    bench = cookie(page, "bench")
    assert {"HttpOnly", "SameSite=Lax", "Path=/", "Max-Age=2592000"} <= set(bench.split("; "))
    form = cookie(tiny.visit().open("/sign-in"), "form")
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= set(form.split("; "))


def test_over_tls_cookies_are_held_to_this_host(tmp_path: Path, password_hash: str) -> None:
    """Where TLS serves, both cookies are Secure and their names begin with __Host-."""
    bench = set_up(write_content(tmp_path / "c"), tmp_path / "i", password_hash, https=True)
    noor, over_tls = bench.visit(), {"base_url": "https://localhost"}
    asked = noor.open("/sign-in", **over_tls)
    fields = {**asked.form.fields, "name": "noor", "password": PASSWORD}
    from_here = {"Referer": "https://localhost/sign-in"}
    page = noor.post("/sign-in", fields, headers=from_here, **over_tls)
    assert page.status == 303
    for set_cookie in (cookie(asked, "__Host-form"), cookie(page, "__Host-bench")):
        assert {"Secure", "Path=/"} <= set(set_cookie.split("; "))
        assert "Domain" not in set_cookie
    bench.close()


def test_a_sign_in_lasts_thirty_days_and_not_thirty_one(tiny: Bench) -> None:
    """It still stands just short of the thirtieth day, and has ended on the thirty-first."""
    noor = tiny.visit(NOOR)
    tiny.clock.wait(days=29, hours=23)
    assert noor.open("/").status == 200
    tiny.clock.wait(days=1, hours=1)
    assert noor.open("/").leads_to == "/sign-in?then=/"


def test_signing_out_ends_it_on_the_server(tiny: Bench) -> None:
    """A copy of the cookie is worth nothing once its owner has signed out."""
    noor, copy = tiny.visit(NOOR), tiny.visit()
    kept = noor.client.get_cookie("bench")
    assert kept is not None
    copy.client.set_cookie("bench", kept.value)
    assert copy.open("/").status == 200
    page = noor.sign_out()
    assert (page.status, page.leads_to) == (303, "/sign-in")
    assert "Max-Age=0" in cookie(page, "bench")
    assert noor.open("/").status == 303
    assert copy.open("/").status == 303


def test_signing_out_leaves_ones_other_phone_alone(tiny: Bench) -> None:
    """Only this sign-in ends."""
    phone, desk = tiny.visit(NOOR), tiny.visit(NOOR)
    phone.sign_out()
    assert desk.open("/").status == 200


def test_signing_out_takes_its_token(tiny: Bench) -> None:
    """Another site can't sign anybody out."""
    noor = tiny.visit(NOOR)
    assert noor.post("/sign-out", {}).status == 400
    assert noor.open("/").status == 200


def test_signing_in_takes_its_token(tiny: Bench) -> None:
    """Another site can't sign anybody in; the form comes back with the name in it."""
    page = tiny.visit().post("/sign-in", {"name": "noor", "password": PASSWORD})
    assert page.status == 400
    assert page.form.fields["name"] == "noor"
    assert page.form.fields["password"] == ""


def test_somebody_signed_in_is_led_past_the_form(tiny: Bench) -> None:
    """Opening the sign-in page again leads to Today."""
    assert tiny.visit(NOOR).open("/sign-in").leads_to == "/"


def test_after_signing_in_one_goes_on_where_one_wanted(tiny: Bench) -> None:
    """The page asked for first comes after the sign-in, with what stood behind its mark."""
    noor = tiny.visit()
    asked = noor.open("/progress?from=mail")
    page = noor.send(noor.go_on(asked), name="noor", password=PASSWORD)
    assert page.leads_to == "/progress?from=mail"


@pytest.mark.parametrize("elsewhere", NOWHERE_ELSE)
def test_nobody_is_led_off_this_site(tiny: Bench, elsewhere: str) -> None:
    """A link to the sign-in page can't send people on to another host."""
    noor = tiny.visit()
    asked = noor.open("/sign-in", query_string={"then": elsewhere})
    assert "then" not in asked.form.fields
    page = noor.send(asked, name="noor", password=PASSWORD, then=elsewhere)
    assert page.leads_to == "/"


def test_the_wrong_method_is_told(tiny: Bench) -> None:
    """Signing out is no link: GET is refused, and the answer names what is allowed."""
    page = tiny.visit(SAM).open("/sign-out")
    assert page.status == 405
    assert "POST" in page.headers["Allow"]


def test_asking_for_the_headers_alone_signs_nobody_in_or_out(tiny: Bench) -> None:
    """A HEAD is answered like the GET it stands for."""
    client = tiny.visit().client
    assert client.head("/sign-in").status_code == 200
    assert client.head("/").status_code == 303
