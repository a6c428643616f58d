"""`trainer work`: a sum in a terminal, from values as people type them."""

import json
from typing import Any

import pytest
from cli_terminal import said, trainer

from trainer.engine import METHODS, Method

BUCKET = ("catalyst_by_mass", "resin_kg=1.32", "percent=3")


def data(*words: str) -> dict[str, Any]:
    """Return a working as JSON."""
    read: dict[str, Any] = json.loads(said("work", *words, "--json"))
    return read


def sentence(*words: str) -> str:
    """Return the one sentence, and nothing besides, that a sum is refused with."""
    result = trainer("work", *words)
    assert isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code in (1, 2)
    assert result.stdout == ""
    assert result.stderr.startswith("Error: ")
    assert result.stderr.endswith((".\n", "?\n"))
    assert result.stderr.count("\n") == 1
    assert len(result.stderr) < 300
    return result.stderr.removeprefix("Error: ").strip()


def lines_of(method: str) -> list[str]:
    """Return what the list of all calculations says of one of them."""
    blocks = said("work").strip().split("\n\n")
    return next(block.splitlines() for block in blocks if block.startswith(f"{method}\n"))


# What is answered.


def test_a_bucket_of_resin_gets_its_catalyst() -> None:
    """1320 g × 3 % is 39.6 g, and 39.6 g ÷ 1.17 is 33.846 ml."""
    assert said("work", *BUCKET).splitlines() == [
        "mass of catalyst",
        "    = resin × grams in a kilogram × dose by mass ÷ 100",
        "    = 1.32 kg × 1000 g/kg × 3 % ÷ 100 = 39.6 g",
        "volume of catalyst",
        "    = mass of catalyst ÷ density of catalyst",
        "    = 39.6 g ÷ 1.17 kg/L = 33.85 ml",
        "",
        "33.85 ml",
        "",
        "Assumed, until the data sheet says otherwise:",
        "    density of catalyst 1.17 kg/L (from memory)",
    ]


def test_a_dose_off_the_usual_band_is_warned_of() -> None:
    """5 % by mass can be worked, and still must not be laid without the data sheet's word."""
    told = said("work", "catalyst_by_mass", "resin_kg=1.32", "percent=5")
    assert "Caution: That is 5 % by mass, over the usual 4 %." in told
    assert "Caution" not in said("work", *BUCKET)


def test_json_has_the_same_figures_in_full() -> None:
    """They are not rounded, and each line has its key, words, figure and unit."""
    bucket = data(*BUCKET)
    mass, volume = bucket["lines"]
    assert bucket["calculation"] == "catalyst_by_mass"
    assert bucket["given"] == {"resin_kg": 1.32, "percent": 3, "catalyst_kg_per_l": 1.17}
    assert (mass["key"], mass["words"], mass["unit"]) == ("mass", "mass of catalyst", "g")
    assert mass["value"] == pytest.approx(39.6)
    assert mass["shown"].endswith("39.6\u00a0g")
    assert (volume["key"], volume["unit"]) == ("volume", "ml")
    assert volume["value"] == bucket["value"] == pytest.approx(33.846154)
    assert bucket["unit"] == "ml"


def test_json_has_these_keys_and_no_others() -> None:
    """Whoever reads it with a program can rest on them."""
    bucket = data(*BUCKET)
    assert set(bucket) == {"calculation", "given", "lines", "value", "unit"}
    for line in bucket["lines"]:
        assert set(line) == {"key", "words", "shown", "value", "unit"}


@pytest.mark.parametrize("typed", ["1.3", "1.3kg", "1300g", "1300 g", "1 300 g", "1,3 kg", " 1.3 "])
def test_a_mass_may_be_typed_in_many_ways(typed: str) -> None:
    """All of these are 1.3 kg."""
    assert data("catalyst_by_mass", f"resin_kg={typed}")["given"]["resin_kg"] == pytest.approx(1.3)


def test_feet_and_inches_are_understood() -> None:
    """12'6" is 12.5 ft of 0.3048 m, which is 3.81 m."""
    bandage = data("bandage_glass", "length_m=12'6\"")
    assert bandage["given"]["length_m"] == pytest.approx(3.81)


def test_equal_joints_are_counted_with_a_colon() -> None:
    """Three of 2.4 m and one of 3.6 m are 10.8 m; one end carried 50 mm makes it 10.85 m."""
    tape = data("tape_length", "joints_m=2.4:3,3.6", "meeting_ends=1")
    assert tape["given"]["joints_m"] == [2.4, 2.4, 2.4, 3.6]
    assert tape["value"] == pytest.approx(10.85)


def test_each_of_a_list_may_have_its_unit() -> None:
    """240 cm and 8 ft, which is 2.4384 m."""
    tape = data("tape_length", "joints_m=240 cm, 8ft", "meeting_ends=0")
    assert tape["given"]["joints_m"] == pytest.approx([2.4, 2.4384])


def test_keys_come_in_any_order() -> None:
    """They have names, so that nobody has to remember which comes first."""
    assert said("work", "catalyst_by_mass", "percent=3", "resin_kg=1.32") == said("work", *BUCKET)


# What is listed.


def test_alone_it_lists_every_calculation() -> None:
    """Each by its name, with a sentence on what comes out of what."""
    listed = [block.splitlines()[0] for block in said("work").strip().split("\n\n")]
    assert listed == list(METHODS)
    for name in listed:
        assert lines_of(name)[1].strip().startswith("Return the ")


def test_the_list_gives_units_ranges_and_defaults() -> None:
    """A figure that need not be given says what is taken for it."""
    resin, percent, density = (line.split(maxsplit=1) for line in lines_of("catalyst_by_mass")[2:])
    assert resin == ["resin_kg", "resin, 0.05 to 200 kg"]
    assert "0.5 to 6 %; 2 if not given, published: Univ. of Southern Mississippi" in percent[1]
    told = "density of catalyst, 1 to 1.3 kg/L; 1.17 if not given, from memory"
    assert density == ["catalyst_kg_per_l", told]


def test_the_list_says_how_several_are_typed() -> None:
    """A list of joints shows what one looks like."""
    joints = next(line for line in lines_of("tape_length") if "joints_m" in line)
    assert joints.endswith("0.1 to 100 m, one or more, as 2.4:3,3.6")


def typed(example: Any) -> str:
    """Return a figure, or a list of figures, as somebody types it."""
    figures = example if isinstance(example, tuple) else (example,)
    return ",".join(f"{figure:.10g}" for figure in figures)


@pytest.mark.parametrize("method", METHODS.values(), ids=lambda method: method.name)
def test_every_calculation_can_be_worked_by_its_list(method: Method[...]) -> None:
    """Each parameter stands there, and what is needed is enough."""
    needed = [each for each in method.parameters.values() if each.required]
    example = [f"{each.name}={typed(each.example())}" for each in needed]
    listed = [line.split()[0] for line in lines_of(method.name)[2:]]
    assert listed == list(method.parameters)
    assert data(method.name, *example)["calculation"] == method.name


# What is refused.


def test_an_unknown_calculation_gets_a_guess() -> None:
    """A letter left out is found again."""
    assert sentence("catalyst_by_mas") == (
        "There is no calculation 'catalyst_by_mas'. Did you mean 'catalyst_by_mass'?"
    )


def test_an_unknown_key_is_told_the_known_ones() -> None:
    """`resin` isn't `resin_kg`."""
    assert sentence("catalyst_by_mass", "resin=1.3") == (
        "'catalyst_by_mass' takes no 'resin'. It takes resin_kg, percent, catalyst_kg_per_l."
    )


def test_a_missing_key_is_named() -> None:
    """What has no default must be given."""
    assert sentence("catalyst_by_mass", "percent=3") == "'catalyst_by_mass' needs resin_kg too."
    assert "joints_m, meeting_ends" in sentence("tape_length")


def test_a_key_given_twice_is_refused() -> None:
    """Nobody can know which of them is meant."""
    assert sentence("catalyst_by_mass", "resin_kg=1", "resin_kg=2").startswith("resin_kg: ")


@pytest.mark.parametrize("word", ["resin_kg", "1.3", ""])
def test_a_word_without_an_equals_sign_is_refused(word: str) -> None:
    """It is shown how one is written."""
    assert sentence("catalyst_by_mass", word) == (
        f"'{word}' isn't KEY=VALUE, such as resin_kg=1.3."
    )


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("900", "The resin is 900 kg; it must lie between 0.05 and 200 kg."),
        ("0", "The resin is 0 kg; it must lie between 0.05 and 200 kg."),
        ("-1", "A figure here cannot be below zero."),
        ("nan", "can't be read as one figure"),
        ("inf", "can't be read as one figure"),
        ("1e400", "no unit known here"),
        ("1,300", "Is that 1.300 or 1300?"),
        ("lots", "can't be read as one figure"),
        ("", "Type a figure first, such as 1.3."),
        ("1.3 L", "You wrote L; this is asked in kg."),
        ("9" * 10_000, "too long for one figure"),
    ],
)
def test_a_bad_value_names_its_key(typed: str, told: str) -> None:
    """The sentence begins with the key and says what is wrong with its value."""
    refusal = sentence("catalyst_by_mass", f"resin_kg={typed}", "percent=3")
    assert refusal.startswith("resin_kg: ")
    assert told in refusal


@pytest.mark.parametrize("typed", ["2.4:", "2.4:x", "2.4:0", "2.4:1.5", "2.4:-1", "2.4:9999999"])
def test_a_count_of_joints_is_a_whole_number(typed: str) -> None:
    """Half a joint, or none, is a slip of the keyboard."""
    refusal = sentence("tape_length", f"joints_m={typed}", "meeting_ends=0")
    assert refusal.startswith("joints_m: The count after '2.4:' is ")


@pytest.mark.parametrize("typed", ["2.4:999", "1," * 4_000, "9" * 10_000, "2.4:" + "9" * 10_000])
def test_a_list_has_its_limits(typed: str) -> None:
    """No roof has a thousand joints, and no figure ten thousand digits."""
    assert sentence("tape_length", f"joints_m={typed}", "meeting_ends=0").startswith("joints_m: ")


def test_a_count_is_whole() -> None:
    """Two and a half ends meet nothing."""
    refusal = sentence("tape_length", "joints_m=2.4", "meeting_ends=2.5")
    assert refusal.startswith("meeting_ends: ")
    assert refusal.endswith("a whole number.")


@pytest.mark.parametrize(
    "words", [["a" * 10_000], [BUCKET[0], "a" * 10_000], [BUCKET[0], "a" * 10_000 + "=1"]]
)
def test_what_is_too_long_is_not_repeated(words: list[str]) -> None:
    """The sentence stays one that can be read."""
    assert "aaa…" in sentence(*words)
