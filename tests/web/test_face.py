"""The face: what can be read, by day, at night and in the typeface it is set in.

Contrast is the ratio of WCAG 2.2, success criterion 1.4.3, from its definitions of
"contrast ratio" and "relative luminance".
"""

import re
import string
from itertools import product
from pathlib import Path
from typing import Any

import jinja2
import pytest
from web_bench import Bench

WEB = Path(__file__).parents[2] / "trainer" / "web"
FACE = (WEB / "static" / "face.css").read_text(encoding="utf-8")
TEMPLATES = sorted((WEB / "templates").rglob("*.html"))
SHAPES = (WEB / "static" / "shapes.svg").read_text(encoding="utf-8")
#: What every browser asks for.
PACKED = {"Accept-Encoding": "gzip, deflate, br"}

WORDS = ("ink", "soft", "link", "good", "bad", "care")
GROUNDS = ("page", "sheet", "wash-good", "wash-bad", "wash-care")
FILLS = (
    *("board", "board-edge", "glass", "glass-wet", "resin", "resin-pool", "tape"),
    *("trim", "steel", "skin", "water", "hot", "page"),
)
EDGES = ("line", "lead", "glass-line", "resin-line", "water-line", "hot-line")
IN_PICTURES = (
    *("ink", "thin", "board", "board-edge", "glass", "glass-wet", "resin", "resin-pool"),
    *("tape", "trim", "steel", "skin", "water", "hot", "paper", "strand", "small", "lead"),
    *("good", "bad", "good-mark", "bad-mark", "part-none", "part-grey", "part-colour"),
    "part-inked",
)
# Looked up in the typeface's own character map.  µ and the signs ≤ ≥ ≈ → ✓ are not in it.
LATIN_1 = {chr(code) for code in range(0xA0, 0x100)} - {"µ", "\xad"}
IN_THE_TYPEFACE = {*string.printable, *LATIN_1, *"–—‘’‚“”„•…‹›⁄€™−"}


def colours(opening: str) -> dict[str, str]:
    """The colours of the first block after `opening`, by name."""
    block = FACE.split(opening, 1)[1].split("}", 1)[0]
    return dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6});", block))


DAY = colours("\n:root {")
NIGHT = DAY | colours("(prefers-color-scheme: dark) {")
PRINT = DAY | colours("@media print {")


def luminance(colour: str) -> float:
    """The relative luminance of a colour such as "#1c2220", from 0 to 1."""
    channels = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, from 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def parts() -> Any:
    """The parts that pages are built from, without an application."""
    loader = jinja2.FileSystemLoader(WEB / "templates")
    environment = jinja2.Environment(loader=loader, autoescape=True)
    environment.globals["static_file"] = lambda name: f"/static/{name}"
    return environment.get_template("_parts.html").module


times = pytest.mark.parametrize(
    "palette", [DAY, NIGHT, PRINT], ids=["by day", "at night", "on paper"]
)


def test_black_on_white_is_21_to_1() -> None:
    """The ratio is the standard's: 21 at the most, 1 at the least."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#85806b", "#85806b") == 1


@times
def test_words_stand_out_7_to_1_on_every_ground(palette: dict[str, str]) -> None:
    """Words and coloured words can be read in bright light, which the level AAA asks."""
    weak = [p for p in product(WORDS, GROUNDS) if contrast(*(palette[n] for n in p)) < 7]
    assert weak == []


@pytest.mark.parametrize("palette", [DAY, NIGHT], ids=["by day", "at night"])
def test_the_amber_button_can_be_read_and_found(palette: dict[str, str]) -> None:
    """Its word stands out 7 to 1 from the amber, and its edge or amber 3 to 1 from the page."""
    assert contrast(palette["press-ink"], palette["press"]) >= 7
    assert contrast(palette["press-ink"], palette["press-over"]) >= 7
    assert contrast(palette["press-edge"], palette["page"]) >= 3
    assert contrast(palette["press-edge"], palette["sheet"]) >= 3


@times
def test_edges_stand_out_3_to_1(palette: dict[str, str]) -> None:
    """The edge of a field, and the outline of a wet thing, can be seen on page and sheet."""
    for edge, ground in product(EDGES, ("page", "sheet")):
        assert contrast(palette[edge], palette[ground]) >= 3, (edge, ground)


@times
def test_a_label_can_be_read_on_every_material(palette: dict[str, str]) -> None:
    """Ink stands out 4.5 to 1 from whatever a picture is filled with."""
    weak = [fill for fill in FILLS if contrast(palette["ink"], palette[fill]) < 4.5]
    assert weak == []


def test_only_tokens_have_colours() -> None:
    """Below the tokens no colour is written down."""
    rules = FACE.split("/* ---------- Typeface", 1)[1]
    assert re.findall(r"#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(", rules) == []


def test_every_token_used_is_named() -> None:
    """No rule leans on a token that isn't there."""
    named = set(re.findall(r"(--[\w-]+):", FACE))
    assert set(re.findall(r"var\((--[\w-]+)", FACE)) <= named


def test_every_picture_class_has_a_rule() -> None:
    """Whatever class the drawings may use, the stylesheet knows."""
    selectors = " ".join(re.findall(r"^\.picture [^{]*", FACE, re.MULTILINE))
    known = set(re.findall(r"\.([a-z][\w-]*)", selectors))
    assert set(IN_PICTURES) <= known


def test_nothing_is_fetched_from_another_host() -> None:
    """Each url() is a file beside the stylesheet, and none is data."""
    urls = re.findall(r"url\(\s*[\"']?([^\"')]+)", FACE)
    assert urls
    assert [url for url in urls if not (WEB / "static" / url).is_file()] == []
    assert "@import" not in FACE


def test_the_face_leaves_words_room_on_the_first_page(tiny: Bench) -> None:
    """As they are sent, stylesheet, typeface, shapes and icon take 60 of a first page's 100 kB."""
    sent = 0
    for name in ("face.css", "fonts/atkinson-next-latin.woff2", "shapes.svg", "favicon.svg"):
        with tiny.app.test_client().get(f"/static/{name}", headers=PACKED) as answer:
            assert answer.status_code == 200
            sent += len(answer.data)
    assert sent <= 60_000


def test_the_typeface_has_its_licence_beside_it() -> None:
    """The Open Font License asks to be kept with the files."""
    licence = (WEB / "static" / "fonts" / "LICENSE").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.name)
def test_templates_use_only_signs_the_typeface_has(template: Path) -> None:
    """A sign that is missing would come from another face, or as an empty box."""
    assert set(template.read_text(encoding="utf-8")) - IN_THE_TYPEFACE == set()


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.name)
def test_templates_have_no_styles_or_scripts_of_their_own(template: Path) -> None:
    """The content policy forbids them, so a browser would drop them."""
    text = template.read_text(encoding="utf-8")
    assert re.findall(r"<style|\sstyle=|\son[a-z]+=|<script(?![^>]*\ssrc=)", text) == []


def test_shapes_stand_in_the_row_in_the_order_of_their_symbols() -> None:
    """The stylesheet finds a shape by its place, so the row must keep to the order."""
    symbols = re.findall(r'<symbol id="([\w-]+)"', SHAPES)
    assert re.findall(r'<use href="#([\w-]+)" x="(\d+)"', SHAPES) == [
        (name, str(24 * place)) for place, name in enumerate(symbols)
    ]


def test_every_state_has_a_shape_and_a_word() -> None:
    """No state is told by colour alone."""
    module = parts()
    for kind, words in module.WORDS.items():
        drawn = str(module.state(kind))
        assert f'<symbol id="{kind}"' in SHAPES
        assert f"#{kind}" in drawn
        assert words in drawn


def test_an_error_is_tied_to_its_field() -> None:
    """A screen reader hears hint and error with the field, and that it is wrong."""
    asked = parts().answer_field(
        "mass", "Resin", "x", ["kg", "g"], "g", "Type a figure, such as 1.3 kg.", "By mass."
    )
    assert 'aria-describedby="mass-hint mass-error" aria-invalid="true"' in asked
    assert '<p class="error" id="mass-error">' in asked
    assert 'value="g" checked' in asked


def test_one_unit_is_a_word_and_still_sent() -> None:
    """With nothing to choose there is no button, and the form sends the unit all the same."""
    asked = parts().answer_field("dose", "Catalyst", units=["ml"])
    assert '<input type="hidden" name="dose_unit" value="ml">' in asked
    assert "radio" not in asked
