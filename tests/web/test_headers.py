"""What stands in the head of every answer, and what no page has in it."""

from dataclasses import replace

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_page import Page
from web_visitor import Visitor

ALWAYS = (
    "Content-Security-Policy",
    "X-Content-Type-Options",
    "Referrer-Policy",
    "Cross-Origin-Opener-Policy",
    "Permissions-Policy",
)


def policy(page: Page) -> dict[str, str]:
    """The content policy, by directive."""
    parts = [part.split(maxsplit=1) for part in page.headers["Content-Security-Policy"].split(";")]
    return {name: sources.strip() for name, sources in parts}


def test_every_answer_has_each_header_once(every_page: dict[str, Page]) -> None:
    """Pages, refusals and redirects alike."""
    for name, page in every_page.items():
        for header in ALWAYS:
            assert len(page.headers.getlist(header)) == 1, (name, header)


def test_the_policy_lets_in_nothing_but_our_own_files(every_page: dict[str, Page]) -> None:
    """Nothing by default; style, script, picture and type from this host; no frames, no base."""
    for page in every_page.values():
        told = policy(page)
        assert (told["default-src"], told["base-uri"], told["frame-ancestors"]) == ("'none'",) * 3
        assert told["form-action"] == "'self'"
        assert {told[name] for name in ("script-src", "style-src", "img-src", "font-src")} == {
            "'self'"
        }
        assert "unsafe" not in page.headers["Content-Security-Policy"]


def test_no_page_has_a_script_or_a_style_of_its_own(every_page: dict[str, Page]) -> None:
    """No style element, no style attribute, no handler, and no script but from a file."""
    for name, page in every_page.items():
        for element in page.root.walk():
            assert element.tag != "style", name
            own = [each for each in element.attributes if each == "style" or each.startswith("on")]
            assert own == [], (name, element.tag)
            if element.tag == "script":
                assert element["src"].startswith("/static/"), name
                assert element.words == "", name
            for link in (element["href"], element["src"], element["action"]):
                assert not link.startswith(("javascript:", "data:", "//")), name


def test_nothing_is_loaded_from_another_host(every_page: dict[str, Page]) -> None:
    """Style, type, pictures and scripts are files of this site."""
    for name, page in every_page.items():
        for element in page.root.walk():
            if element.tag in ("link", "script", "img", "use", "image"):
                where = element["href"] or element["src"]
                assert where.startswith(("/static/", "#")), (name, where)


def test_pages_are_never_kept_by_a_browser(every_page: dict[str, Page]) -> None:
    """The back button of a shared phone doesn't show the last person's pages."""
    for name, page in every_page.items():
        assert "no-store" in page.headers["Cache-Control"], name
        assert "private" in page.headers["Cache-Control"], name


def test_kinds_are_not_guessed(every_page: dict[str, Page]) -> None:
    """nosniff, and every page says that it is HTML in UTF-8."""
    for name, page in every_page.items():
        assert page.headers["X-Content-Type-Options"] == "nosniff", name
        assert page.headers["Content-Type"] == "text/html; charset=utf-8", name


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("face.css", "text/css"),
        ("answer.js", "text/javascript"),
        ("favicon.svg", "image/svg+xml"),
        ("shapes.svg", "image/svg+xml"),
        ("fonts/atkinson-next-latin.woff2", "font/woff2"),
    ],
)
def test_files_may_be_kept_for_a_while(tiny: Bench, path: str, kind: str) -> None:
    """They are the same for everybody, set no cookie, and say what they are."""
    with tiny.app.test_client().get(f"/static/{path}") as response:
        assert response.status_code == 200
        assert response.content_type.startswith(kind)
        assert response.headers["X-Content-Type-Options"] == "nosniff"
        assert "Content-Security-Policy" in response.headers
        assert "max-age" in response.headers["Cache-Control"]
        assert "no-store" not in response.headers["Cache-Control"]
        assert "Set-Cookie" not in response.headers


@pytest.mark.parametrize("path", ["nothing.css", "../signing_in.py", "%2e%2e/signing_in.py", ""])
def test_nothing_but_the_files_is_served(tiny: Bench, path: str) -> None:
    """A file that isn't there is 404, and so is one that lies beside the folder."""
    assert Visitor(tiny.app.test_client()).open(f"/static/{path}").status == 404


def test_over_tls_a_browser_keeps_to_tls(tiny: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """For a year, where TLS is served; over plain HTTP it would mean nothing and isn't sent."""
    assert "Strict-Transport-Security" not in tiny.visit().open("/help").headers
    served = replace(tiny.installation, config=replace(tiny.config, https=True))
    monkeypatch.setitem(tiny.app.extensions, "installation", served)
    secure = tiny.visit().open("/help")
    assert secure.headers["Strict-Transport-Security"] == "max-age=31536000"


def test_the_server_says_nothing_of_what_it_is_made(tiny: Bench) -> None:
    """No header names a program."""
    headers = tiny.visit(NOOR).open("/").headers
    assert not {"Server", "X-Powered-By"} & set(headers.keys())
